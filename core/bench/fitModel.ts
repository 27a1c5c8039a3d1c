/** The model as a least-squares fit sees it: logarithms of figures over logarithms of factors, each call made once. */

import { type FactorName, type Factors, plainFactors } from '../design/calibrate.ts';
import { benchScatter, type FitOptions, type FitTrial, type ObservationKind, type TrialModel } from './fitTypes.ts';
import type { FieldRatios, TrialFigures } from './trialFigures.ts';

/** One figure of one trial that can be compared. */
interface Observation {
  /** index into the trials */
  readonly trial: number;
  readonly kind: ObservationKind;
  /** ln of the measured figure, SI */
  readonly measured: number;
  readonly scatter: number;
}

/** Observations, model and what was left out. */
export interface FitModel {
  readonly trials: readonly FitTrial[];
  readonly observations: readonly Observation[];
  readonly skipped: readonly { readonly trialId: string; readonly reason: string }[];
  /** ln of the predicted figures at factors exp(theta); NaN where there is none */
  readonly predict: (theta: ArrayLike<number>, names: readonly FactorName[]) => Float64Array;
  /** calls of the model so far */
  readonly evaluations: () => number;
}

/**
 * The model without the colours, for fits that leave the rate of the colour alone: no factor is there to mend them, and
 * they would pull at all others.
 */
export function withoutColours(model: FitModel): FitModel {
  const kept = model.observations.map(({ kind }) => kind !== 'colour');
  return {
    ...model,
    observations: model.observations.filter((_, i) => kept[i]),
    predict: (theta, names) => model.predict(theta, names).filter((_, i) => kept[i]),
  };
}

/** Below this colour shift a reading is mostly its own scatter, dE00. */
const leastShift = 0.3;

const figureOf = (figures: TrialFigures, kind: ObservationKind): number | null =>
  kind === 'rate' ? figures.massFlow : kind === 'torque' ? figures.torque : figures.dE00;

/** A model by formulas with the ratios of solved fields on its figures; each trial's ratios are asked once. */
export function withRatios(model: TrialModel, ratios: FitOptions['ratios']): TrialModel {
  if (ratios === undefined) return model;
  const known = new Map<string, FieldRatios | null>();
  const times = (value: number | null, ratio: number | null) =>
    value === null || ratio === null ? null : value * ratio;
  return (factors, trial) => {
    const figures = model(factors, trial);
    const ratio = known.has(trial.id) ? known.get(trial.id) : ratios(trial);
    known.set(trial.id, ratio ?? null);
    if (!figures || !ratio || ratio.massFlow === null) return null;
    return {
      ...figures,
      massFlow: figures.massFlow * ratio.massFlow,
      torque: times(figures.torque, ratio.torque),
      dE00: times(figures.dE00, ratio.dE00),
    };
  };
}

/** Factors from logarithms of some of them. */
export function factorsAt(theta: ArrayLike<number>, names: readonly FactorName[]): Factors {
  const factors: Record<FactorName, number> = { ...plainFactors };
  names.forEach((name, i) => {
    factors[name] = Math.exp(theta[i]);
  });
  return factors;
}

const kindWords: Readonly<Record<ObservationKind, string>> = {
  rate: 'Its output',
  torque: 'Its torque',
  colour: 'Its colour',
};

/** Why a figure cannot be compared, or null; `undefined` where it was not measured and nothing need be said. */
function problemOf(
  kind: ObservationKind,
  measured: number | null,
  predicted: number | null,
): string | null | undefined {
  if (measured === null) return kind === 'rate' ? 'It was not weighed.' : undefined;
  if (!(measured > 0)) return `${kindWords[kind]} was nothing, of which no ratio can be taken.`;
  if (predicted === null || !(predicted > 0)) return `${kindWords[kind]} cannot be predicted.`;
  const small = kind === 'colour' && Math.min(measured, predicted) < leastShift;
  return small ? `Its colour shift is below ${leastShift}, which is mostly scatter of the reading.` : null;
}

/**
 * Prepares a fit: what can be compared, and the model with its memory.
 * @param trials measured; those left out by the user are skipped
 * @param model see TrialModel
 */
export function fitModel(trials: readonly FitTrial[], model: TrialModel): FitModel {
  const memory = new Map<string, TrialFigures | null>();
  let calls = 0;
  const asked = (factors: Factors, trial: number): TrialFigures | null => {
    const key = `${trial} ${Object.values(factors)
      .map((value) => value.toPrecision(12))
      .join(' ')}`;
    const known = memory.get(key);
    if (known !== undefined) return known;
    calls++;
    const found = model(factors, trials[trial].trial);
    memory.set(key, found);
    return found;
  };
  const skipped: { trialId: string; reason: string }[] = [];
  const observations = trials.flatMap(({ trial, measured }, at): Observation[] => {
    const skip = (reason: string) => skipped.push({ trialId: trial.id, reason });
    if (trial.excluded) {
      skip(`Left out: ${trial.excludedWhy ?? 'no reason given'}.`);
      return [];
    }
    const plain = asked(plainFactors, at);
    return (['rate', 'torque', 'colour'] as const).flatMap((kind): Observation[] => {
      const value = figureOf(measured, kind);
      const problem = problemOf(kind, value, plain && figureOf(plain, kind));
      if (problem === null) return [{ trial: at, kind, measured: Math.log(value ?? 1), scatter: benchScatter[kind] }];
      if (problem !== undefined) skip(problem);
      return [];
    });
  });
  const predict: FitModel['predict'] = (theta, names) => {
    const factors = factorsAt(theta, names);
    return Float64Array.from(observations, ({ trial, kind }) => {
      const figures = asked(factors, trial);
      const value = figures && figureOf(figures, kind);
      return value !== null && value > 0 ? Math.log(value) : Number.NaN;
    });
  };
  return { trials, observations, skipped, predict, evaluations: () => calls };
}
