/** The trials that would narrow the prediction most. */

import { type FactorName, type Factors, factorNames } from '../design/calibrate.ts';
import { factorDoubts } from '../doubt/modelDoubts.ts';
import { solveSmall } from '../math/smallSolve.ts';
import type { Trial } from '../project/schema.ts';
import { toSi } from '../units.ts';
import { slopes } from './determined.ts';
import { fittedFactors } from './fitCalibration.ts';
import { inverseDiagonal } from './fitLimits.ts';
import { type FitModel, fitModel } from './fitModel.ts';
import { type CalibrationFit, factorWords, type ObservationKind, type TrialModel } from './fitTypes.ts';
import type { PredictedTrial } from './trialFigures.ts';

/** What a planner may be told. */
export interface PlanOptions {
  /** what will be measured; output and torque where absent */
  readonly kinds?: readonly ObservationKind[];
  /** 1 to 10, default 4 */
  readonly count?: number;
}

/** A proposed trial. */
export interface PlannedTrial {
  /** settings; seconds long enough to weigh */
  readonly trial: Trial;
  /** at the factors known so far */
  readonly expected: PredictedTrial;
  /** standard deviation of ln of the predicted figures over all settings looked at, before and after this trial */
  readonly spreadBefore: number;
  readonly spreadAfter: number;
  /** standard deviations of ln of the factors that it narrows, most narrowed first */
  readonly narrows: readonly { readonly factor: FactorName; readonly before: number; readonly after: number }[];
  readonly reason: string;
}

/** The plan and what it cost. */
export interface TrialPlan {
  readonly trials: readonly PlannedTrial[];
  /** settings that were looked at, and those that were not and why */
  readonly candidates: number;
  readonly dropped: readonly { readonly trialId: string; readonly reason: string }[];
  readonly evaluations: number;
}

/** Standard deviations of a normal distribution between its 95 % limits. */
const limitsApart = 2 * 1.96;

/** A factor that another one stands for is taken as known. */
const heldScatter = 1e-3;

/** What is known of each factor, as standard deviation of its ln: from the fit's limits, else from the model's doubts. */
function priorScatter(fit: CalibrationFit | null, name: FactorName): number {
  const fitted = fit?.factors[name];
  if (fitted?.entangled) return heldScatter;
  const { low, high } = fitted?.fitted ? fitted : factorDoubts[name];
  const scatter = Math.log(high / low) / limitsApart;
  return Number.isFinite(scatter) && scatter > 1e-3
    ? scatter
    : Math.log(factorDoubts[name].high / factorDoubts[name].low) / limitsApart;
}

/** A setting with the slopes of its figures over the factors, one row per figure, over the bench's scatter. */
interface Candidate {
  readonly trial: Trial;
  readonly expected: PredictedTrial;
  readonly rows: readonly Float64Array[];
  /** the same without the scatter */
  readonly plain: readonly Float64Array[];
}

const added = (information: Float64Array, rows: readonly Float64Array[], size: number): Float64Array =>
  information.map(
    (value, at) => value + rows.reduce((sum, row) => sum + row[Math.floor(at / size)] * row[at % size], 0),
  );

/** Mean variance of ln of the figures of all candidates. */
function meanVariance(information: Float64Array, all: readonly Float64Array[]): number {
  const size = Math.round(Math.sqrt(information.length));
  const total = all.reduce((sum, row) => {
    const moved = row.slice();
    return solveSmall(information.slice(), moved, size)
      ? sum + row.reduce((dot, value, i) => dot + value * moved[i], 0)
      : sum;
  }, 0);
  return total / Math.max(1, all.length);
}

function candidateOf(
  at: number,
  model: FitModel,
  columns: readonly Float64Array[],
  expected: PredictedTrial,
  kinds: readonly ObservationKind[],
): Candidate {
  const own = model.observations
    .map((one, i) => ({ ...one, i }))
    .filter(({ trial, kind }) => trial === at && kinds.includes(kind));
  const row = (i: number, scatter: number) => Float64Array.from(columns, (column) => column[i] / scatter);
  return {
    trial: model.trials[at].trial,
    expected,
    rows: own.map(({ i, scatter }) => row(i, scatter)),
    plain: own.map(({ i }) => row(i, 1)),
  };
}

/** Grams that a common kitchen balance weighs within a per cent. */
const wantedGrams = 6;

/** Seconds that give enough to weigh, in whole tens from 60 to 600. */
function secondsFor({ massFlow }: PredictedTrial): number {
  const needed = massFlow > 0 ? toSi(wantedGrams, 'g') / massFlow : 600;
  return Math.min(600, Math.max(60, Math.ceil(needed / 10) * 10));
}

function planned(
  chosen: Candidate,
  before: Float64Array,
  after: Float64Array,
  all: readonly Float64Array[],
): PlannedTrial {
  const size = factorNames.length;
  const [wide, narrow] = [inverseDiagonal(before, size), inverseDiagonal(after, size)].map((d) => d.map(Math.sqrt));
  const narrows = factorNames
    .map((factor, i) => ({ factor, before: wide[i], after: narrow[i] }))
    .filter((one) => one.after < 0.95 * one.before)
    .sort((p, q) => p.after / p.before - q.after / q.before);
  const words = narrows.map(({ factor }) => factorWords[factor]);
  return {
    trial: { ...chosen.trial, seconds: secondsFor(chosen.expected) },
    expected: chosen.expected,
    spreadBefore: Math.sqrt(meanVariance(before, all)),
    spreadAfter: Math.sqrt(meanVariance(after, all)),
    narrows,
    reason: words.length > 0 ? `It shows ${words.join(' and ')}.` : 'It confirms what is known.',
  };
}

/** One after the other, each the best given those before it. */
function greedy(candidates: readonly Candidate[], information: Float64Array, count: number): PlannedTrial[] {
  const all = candidates.flatMap(({ plain }) => plain);
  const left = [...candidates];
  const chosen: PlannedTrial[] = [];
  let known = information;
  while (chosen.length < count && left.length > 0) {
    const after = left.map(({ rows }) => added(known, rows, factorNames.length));
    const spread = after.map((each) => meanVariance(each, all));
    const best = spread.indexOf(Math.min(...spread));
    chosen.push(planned(left[best], known, after[best], all));
    known = after[best];
    left.splice(best, 1);
  }
  return chosen;
}

/**
 * Proposes the next trials: of the settings given, one after the other those that most reduce the mean variance of ln
 * of the predicted figures over all of them.
 * @param candidates from planCandidates
 * @param model figures of a trial with factors, as for fitCalibration
 * @param fit what earlier trials told, or null; its limits are taken as independent of each other
 * @returns at most `count` trials, best first; settings that the drive cannot hold or where nothing flows are dropped with the reason
 * Costs 2 + 2 x 4 calls of the model per candidate. Holds near the factors known so far: after each few trials plan anew.
 * Source: greedy choice by integrated variance (Fedorov 1972; Atkinson and Donev 1992).
 */
export function planTrials(
  candidates: readonly Trial[],
  model: TrialModel,
  fit: CalibrationFit | null,
  { kinds = ['rate', 'torque'], count = 4 }: PlanOptions = {},
): TrialPlan {
  const factors: Factors | null = fit && fittedFactors(fit);
  const theta = Float64Array.from(factorNames, (name) => (factors ? Math.log(factors[name]) : 0));
  const at: Factors = factors ?? { feed: 1, wallFriction: 1, viscosity: 1, colourRate: 1 };
  const dropped: { trialId: string; reason: string }[] = [];
  const usable = candidates.flatMap((trial) => {
    const expected = model(at, trial);
    if (expected?.sound && expected.massFlow > 0) return [{ trial, expected }];
    const reason =
      !expected || !(expected.massFlow > 0) ? 'Nothing is predicted to come out.' : 'The drive could not hold it.';
    dropped.push({ trialId: trial.id, reason });
    return [];
  });
  const prepared = fitModel(
    usable.map(({ trial, expected }) => ({ trial, measured: expected })),
    model,
  );
  const columns = slopes(prepared, theta, factorNames);
  const ready = usable.map(({ expected }, i) => candidateOf(i, prepared, columns, expected, kinds));
  const size = factorNames.length;
  const information = new Float64Array(size * size);
  factorNames.forEach((name, i) => {
    information[i * size + i] = priorScatter(fit, name) ** -2;
  });
  return {
    trials: greedy(ready, information, Math.min(10, Math.max(1, Math.round(count)))),
    candidates: ready.length,
    dropped,
    evaluations: candidates.length + prepared.evaluations(),
  };
}
