/** Measured against predicted, trial by trial, outliers flagged. */

import { median, medianDeviation } from '../doubt/statistics.ts';
import type { Trial } from '../project/schema.ts';
import { issueText, type Result } from '../result.ts';
import { formatNumber, toSi } from '../units.ts';
import type { FieldRatios, PredictedTrial } from './trialFigures.ts';

/** One trial against its prediction. SI. */
export interface BenchRow {
  readonly trialId: string;
  readonly date: string;
  readonly revisionId: string;
  readonly materialId: string;
  /** rev/s */
  readonly screwSpeed: number;
  /** K, from the feed to the nozzle */
  readonly setTemperatures: readonly number[];
  /** kg/s */
  readonly measured: number;
  /** kg/s; null where it cannot be predicted */
  readonly predicted: number | null;
  /** measured minus predicted, kg/s */
  readonly residual: number | null;
  /** measured over predicted */
  readonly ratio: number | null;
  /** distance of ln ratio from the median, in robust standard deviations; null with fewer than four trials */
  readonly robustZ: number | null;
  readonly outlier: boolean;
  /** left out by the user */
  readonly excluded: boolean;
  /** why it is an outlier, left out or not predicted, else null */
  readonly reason: string | null;
}

/** Beyond this many robust standard deviations a trial is flagged (Iglewicz and Hoaglin 1993). */
const outlierZ = 3.5;
/** Scatter below which a bench does not repeat, as ln ratio; common practice: keeps near-perfect series from flagging. */
const leastScatter = 0.02;
/** Fewer trials than this have no scatter of their own. */
const fewestTrials = 4;

type Ratio = Pick<BenchRow, 'predicted' | 'residual' | 'ratio' | 'reason'>;

function ratioOf(measured: number, predicted: Result<PredictedTrial>, solvedOver: number): Ratio {
  if (!predicted.ok) {
    return { predicted: null, residual: null, ratio: null, reason: predicted.issues.map(issueText).join(' ') };
  }
  const flow = predicted.value.massFlow * solvedOver;
  if (!(flow > 0))
    return { predicted: flow, residual: measured - flow, ratio: null, reason: 'No output is predicted.' };
  const reason = measured > 0 ? null : 'Nothing was weighed.';
  return { predicted: flow, residual: measured - flow, ratio: measured / flow, reason };
}

function plainRow(trial: Trial, predicted: Result<PredictedTrial>, solvedOver: number): BenchRow {
  const measured = toSi(trial.grams, 'g') / toSi(trial.seconds, 's');
  const found = ratioOf(measured, predicted, solvedOver);
  const excluded = trial.excluded === true;
  return {
    trialId: trial.id,
    date: trial.date,
    revisionId: trial.revisionId,
    materialId: trial.materialId,
    screwSpeed: toSi(trial.screwSpeedRpm, 'rpm'),
    setTemperatures: trial.setTempsC.map((value) => toSi(value, '°C')),
    measured,
    ...found,
    robustZ: null,
    outlier: found.ratio === 0 && !excluded,
    excluded,
    reason: excluded ? `Left out: ${trial.excludedWhy ?? 'no reason given'}.` : found.reason,
  };
}

const logRatio = ({ ratio, excluded }: BenchRow): number => (excluded || ratio === null ? Number.NaN : Math.log(ratio));

function flagged(row: BenchRow, centre: number, scale: number): BenchRow {
  if (row.excluded || row.ratio === null || row.ratio === 0) return row;
  const robustZ = (Math.log(row.ratio) - centre) / scale;
  if (!(Math.abs(robustZ) > outlierZ)) return { ...row, robustZ };
  const away = Math.abs(row.ratio / Math.exp(centre) - 1) * 100;
  const side = robustZ > 0 ? 'more' : 'less';
  const reason = `${formatNumber(away, 2)} % ${side} than the other trials suggest, ${Math.abs(robustZ).toFixed(1)} robust standard deviations.`;
  return { ...row, robustZ, outlier: true, reason };
}

/**
 * Trials against predictions.
 * @param trials any number
 * @param predictAt prediction of a trial, such as predictTrial with the calibration as it stands
 * @param ratios solved over formula, where predictAt goes by formulas and the solved figures are to be held against
 * @returns rows in the order of the trials. Outliers by the median and the median deviation of ln(measured / predicted)
 * over the trials that are not left out, from four trials on.
 */
export function benchRows(
  trials: readonly Trial[],
  predictAt: (trial: Trial) => Result<PredictedTrial>,
  ratios?: (trial: Trial) => FieldRatios | null,
): readonly BenchRow[] {
  const rows = trials.map((trial) => plainRow(trial, predictAt(trial), ratios?.(trial)?.massFlow ?? 1));
  const logs = rows.map(logRatio).filter(Number.isFinite);
  if (logs.length < fewestTrials) return rows;
  const centre = median(logs);
  const scale = Math.max(leastScatter, medianDeviation(logs, centre));
  return rows.map((row) => flagged(row, centre, scale));
}
