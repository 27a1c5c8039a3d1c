/** Named factors of the model from weighed trials. */

import { type FactorName, factorNames } from '../design/calibrate.ts';
import { median } from '../doubt/statistics.ts';
import { countMoved, slopes, type Undetermined, undetermined } from './determined.ts';
import { halfWidths, withoutItself } from './fitLimits.ts';
import { type FitModel, factorsAt, fitModel, withoutColours, withRatios } from './fitModel.ts';
import type {
  CalibrationFit,
  FitError,
  FitObservation,
  FitOptions,
  FitTrial,
  FittedFactor,
  TrialModel,
} from './fitTypes.ts';
import { residuals, robustSearch, type Search, widest } from './leastSquares.ts';
import { huberWeight, residualScale } from './robust.ts';

/** Why a factor is held. */
type Reason = { readonly unseen: boolean; readonly reason: string };

/** What is known when the search is over. */
interface Outcome {
  /** with the figures that were used */
  readonly model: FitModel;
  readonly names: readonly FactorName[];
  readonly search: Search;
  readonly columns: readonly Float64Array[];
  readonly reasons: Undetermined;
}

/** Half the size of the step by which a factor without effect is tried elsewhere: halved and doubled. */
const probe = Math.log(2);

/** Huber's loss in units of the bench's scatter. */
function loss(model: FitModel, theta: ArrayLike<number>, names: readonly FactorName[], scale: number): number {
  return residuals(model, theta, names).reduce(
    (sum, value) => sum + huberWeight(value / scale) * (value / scale) ** 2,
    0,
  );
}

/** Where to begin: at 1, or beside it where a factor does nothing at 1 but half or double of it fits clearly better. */
function startOf(model: FitModel, names: readonly FactorName[], idle: Undetermined): Float64Array {
  const start = new Float64Array(names.length);
  const scale = Math.max(1, residualScale(residuals(model, start, names), names.length));
  names.forEach((name, i) => {
    if (!idle.get(name)?.unseen || name === 'colourRate') return;
    const here = loss(model, start, names, scale);
    const tried = [-probe, probe].map((step) => {
      const theta = start.slice();
      theta[i] = step;
      return { step, loss: loss(model, theta, names, scale) };
    });
    const best = tried[0].loss < tried[1].loss ? tried[0] : tried[1];
    if (best.loss < 0.8 * here) start[i] = best.step;
  });
  return start;
}

const picked = <T>(list: readonly T[], names: readonly FactorName[], kept: readonly FactorName[]): T[] =>
  list.filter((_, i) => kept.includes(names[i]));

const still = (count: number): Search => ({
  theta: new Float64Array(0),
  scale: Number.NaN,
  weights: new Float64Array(count).fill(1),
  rounds: 0,
  converged: true,
  rejects: false,
});

const tooFew: Reason = { unseen: true, reason: 'There are not more figures than factors: weigh more trials.' };

/** The figures that a fit of some factors uses. */
const usedBy = (model: FitModel, names: readonly FactorName[]): FitModel =>
  names.includes('colourRate') ? model : withoutColours(model);

/** As many factors as there are figures to spare, the first ones. */
function affordable(model: FitModel, names: readonly FactorName[], reasons: Map<FactorName, Reason>): FactorName[] {
  const kept = [...names];
  while (kept.length > 0 && usedBy(model, kept).observations.length <= kept.length) {
    const last = kept.pop();
    if (last) reasons.set(last, tooFew);
  }
  return kept;
}

/** Factors that what was found does not bear out, with the reasons. */
function unborne(model: FitModel, names: readonly FactorName[], columns: readonly Float64Array[], search: Search) {
  const lost = undetermined(model, columns, names, search.weights);
  if (lost.size > 0 || countMoved(model, columns) > names.length) return lost;
  return new Map([[names[names.length - 1], tooFew]]);
}

/** Factors worth a search, and where to begin. */
function begin(model: FitModel, wanted: readonly FactorName[], reasons: Map<FactorName, Reason>) {
  const zero = new Float64Array(wanted.length);
  const idle: Undetermined = wanted.length > 0 ? undetermined(model, slopes(model, zero, wanted), wanted) : new Map();
  const start = startOf(model, wanted, idle);
  const first =
    idle.size > 0 && start.some((value) => value !== 0)
      ? undetermined(model, slopes(model, start, wanted), wanted)
      : idle;
  for (const [name, reason] of first) reasons.set(name, reason);
  const told = wanted.filter((name) => !reasons.has(name));
  const names = affordable(model, told, reasons);
  return { names, theta: picked(Array.from(start), wanted, names) };
}

/** Searches, drops what turns out untold at the solution, and searches again. */
function find(whole: FitModel, wanted: readonly FactorName[], rounds: number): Outcome {
  const reasons = new Map<FactorName, Reason>();
  let { names, theta } = begin(usedBy(whole, wanted), wanted, reasons);
  for (;;) {
    const model = usedBy(whole, names);
    if (names.length === 0) return { model, names, search: still(model.observations.length), columns: [], reasons };
    const search = robustSearch(model, names, theta, rounds);
    const columns = slopes(model, search.theta, names);
    const lost = unborne(model, names, columns, search);
    if (lost.size === 0) return { model, names, search, columns, reasons };
    for (const [name, reason] of lost) reasons.set(name, reason);
    const kept = names.filter((name) => !lost.has(name));
    theta = picked(Array.from(search.theta), names, kept);
    names = kept;
  }
}

const errorOf = (values: readonly number[]): FitError => ({
  rms: Math.sqrt(values.reduce((sum, value) => sum + value ** 2, 0) / values.length),
  median: median(values.map(Math.abs)),
});

/** Whether the figures as a whole are met worse with the factors than without. */
const isWorse = ({ before, after }: Pick<CalibrationFit['error'], 'before' | 'after'>): boolean =>
  after.rms > before.rms * (1 + 1e-9);

const edgeWords = 'It stands at the edge of the search, 1/20 or 20.';
const worseWords =
  'The figures as a whole are met worse with these factors than without: look for a trial that is wrong.';

function factorsOf(
  { names, search, reasons }: Outcome,
  half: ArrayLike<number>,
  wanted: readonly FactorName[],
  worse: boolean,
): CalibrationFit['factors'] {
  const factor = (name: FactorName): FittedFactor => {
    const i = names.indexOf(name);
    const held = wanted.includes(name)
      ? (reasons.get(name)?.reason ?? 'There is nothing to compare.')
      : 'It was not asked for.';
    const entangled = reasons.get(name)?.unseen === false;
    if (i < 0) return { value: 1, low: 1, high: 1, fitted: false, reason: held, entangled };
    const theta = search.theta[i];
    const atEdge = Math.abs(theta) >= widest - 1e-6;
    const [low, high] = [Math.exp(Math.max(-9, theta - half[i])), Math.exp(Math.min(9, theta + half[i]))];
    const reason = atEdge ? edgeWords : worse ? worseWords : null;
    return { value: Math.exp(theta), low, high, fitted: true, reason, entangled: false };
  };
  const [feed, wallFriction, viscosity, colourRate] = factorNames.map(factor);
  return { feed, wallFriction, viscosity, colourRate };
}

/** All figures with and without the factors; those that the fit did not use have the weight 1 and nothing left out. */
function observed(whole: FitModel, outcome: Outcome, alone: ArrayLike<number>): FitObservation[] {
  const { model, names, search } = outcome;
  const before = whole.predict([], []);
  const after = whole.predict(search.theta, names);
  return whole.observations.map((observation, i) => {
    const { trial, kind, measured } = observation;
    const at = model.observations.indexOf(observation);
    return {
      trialId: whole.trials[trial].trial.id,
      kind,
      measured: Math.exp(measured),
      predictedBefore: Math.exp(before[i]),
      predictedAfter: Math.exp(after[i]),
      before: measured - before[i],
      after: measured - after[i],
      leaveOneOut: Number.isFinite(alone[at]) ? alone[at] : null,
      weight: search.weights[at] ?? 1,
    };
  });
}

function report(whole: FitModel, outcome: Outcome, wanted: readonly FactorName[]): CalibrationFit {
  const { model, names, search, columns } = outcome;
  const rest = residuals(model, search.theta, names);
  const found = names.length > 0;
  const observations = observed(whole, outcome, found ? withoutItself(model, search.weights, rest, columns) : []);
  const half = found ? halfWidths(model, search, rest, columns) : [];
  const left = observations.flatMap(({ leaveOneOut }) => (leaveOneOut === null ? [] : [leaveOneOut]));
  const ids = (list: readonly { readonly trialId: string }[]) => [...new Set(list.map(({ trialId }) => trialId))];
  const used = observations.filter((_, i) => model.observations.includes(whole.observations[i]));
  const error = {
    before: errorOf(used.map((each) => each.before)),
    after: errorOf(used.map((each) => each.after)),
    leaveOneOut: left.length > 1 ? errorOf(left) : null,
  };
  return {
    factors: factorsOf(outcome, half, wanted, isWorse(error)),
    observations,
    trialIds: ids(observations),
    skipped: whole.skipped,
    outliers: ids(observations.filter(({ weight }) => weight < 0.3)),
    error,
    scale: search.scale,
    freedom: countMoved(model, columns) - names.length,
    converged: search.converged,
    rounds: search.rounds,
    evaluations: whole.evaluations(),
  };
}

/**
 * Finds factors on feed, friction on the barrel, viscosity and rate of the colour from trials, by robust least squares
 * on ln(measured / predicted) of output, torque and colour shift, each over what a careful bench repeats within.
 * @param trials with what they measured; those left out by the user are not used
 * @param model figures of a trial with factors; it must be without the revision's calibration, as predictTrial is
 * @param options factors to find, rounds
 * @returns factors with 95 % limits (those that the trials do not tell stay at 1, with the reason), errors before, after
 * and leaving each trial out, outliers, and what it cost. Empty trials give no factors and errors that are not numbers.
 * Costs about 20 to 40 calls of the model per trial for two or three factors; `evaluations` says how many.
 * Method: iteratively reweighted least squares, Huber's then Tukey's weights (Holland and Welsch 1977), each step damped
 * after Levenberg 1944 and Marquardt 1963.
 */
export function fitCalibration(
  trials: readonly FitTrial[],
  model: TrialModel,
  options: FitOptions = {},
): CalibrationFit {
  const wanted = factorNames.filter((name) => (options.factors ?? factorNames).includes(name));
  const prepared = fitModel(trials, withRatios(model, options.ratios));
  const outcome = find(prepared, prepared.observations.length > 1 ? wanted : [], options.rounds ?? 15);
  return { ...report(prepared, outcome, wanted), fields: options.ratios === undefined ? 'formula' : 'solved' };
}

/** Factors of a fit, as a prediction takes them. */
export const fittedFactors = ({ factors }: CalibrationFit) =>
  factorsAt(
    factorNames.map((name) => Math.log(factors[name].value)),
    factorNames,
  );
