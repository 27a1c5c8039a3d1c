/** Named factors of the model from weighed trials. */

import { type FactorName, factorNames } from '../design/calibrate.ts';
import { median } from '../doubt/statistics.ts';
import { slopes, type Undetermined, undetermined } from './determined.ts';
import { halfWidths, withoutItself } from './fitLimits.ts';
import { type FitModel, factorsAt, fitModel } from './fitModel.ts';
import type { CalibrationFit, FitError, FitOptions, FitTrial, FittedFactor, TrialModel } from './fitTypes.ts';
import { residuals, robustSearch, type Search, widest } from './leastSquares.ts';
import { huberWeight, residualScale } from './robust.ts';

/** Why a factor is held. */
type Reason = { readonly unseen: boolean; readonly reason: string };

/** What is known when the search is over. */
interface Outcome {
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
});

/** As many factors as there are figures to spare, the first ones. */
function affordable(model: FitModel, names: readonly FactorName[], reasons: Map<FactorName, Reason>): FactorName[] {
  const most = Math.max(0, model.observations.length - 1);
  for (const name of names.slice(most))
    reasons.set(name, { unseen: true, reason: 'There are not more figures than factors.' });
  return names.slice(0, most);
}

/** Searches, drops what turns out untold at the solution, and searches again. */
function find(model: FitModel, wanted: readonly FactorName[], rounds: number): Outcome {
  const reasons = new Map<FactorName, Reason>();
  const zero = new Float64Array(wanted.length);
  const idle: Undetermined = wanted.length > 0 ? undetermined(model, slopes(model, zero, wanted), wanted) : new Map();
  const start = startOf(model, wanted, idle);
  const first =
    idle.size > 0 && start.some((value) => value !== 0)
      ? undetermined(model, slopes(model, start, wanted), wanted)
      : idle;
  for (const [name, reason] of first) reasons.set(name, reason);
  let names = affordable(
    model,
    wanted.filter((name) => !reasons.has(name)),
    reasons,
  );
  let theta = picked(Array.from(start), wanted, names);
  for (;;) {
    if (names.length === 0) return { names, search: still(model.observations.length), columns: [], reasons };
    const search = robustSearch(model, names, theta, rounds);
    const columns = slopes(model, search.theta, names);
    const lost = undetermined(model, columns, names, search.weights);
    if (lost.size === 0) return { names, search, columns, reasons };
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

function factorsOf(
  outcome: Outcome,
  half: ArrayLike<number>,
  wanted: readonly FactorName[],
): CalibrationFit['factors'] {
  const { names, search, reasons } = outcome;
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
    const reason = atEdge ? 'It stands at the edge of the search, 1/20 or 20.' : null;
    return { value: Math.exp(theta), low, high, fitted: true, reason, entangled: false };
  };
  const [feed, wallFriction, viscosity, colourRate] = factorNames.map(factor);
  return { feed, wallFriction, viscosity, colourRate };
}

function report(model: FitModel, outcome: Outcome, wanted: readonly FactorName[]): CalibrationFit {
  const { names, search, columns } = outcome;
  const rest = residuals(model, search.theta, names);
  const before = model.predict([], []);
  const after = model.predict(search.theta, names);
  const alone = names.length > 0 ? withoutItself(model, search.weights, rest, columns) : null;
  const half = names.length > 0 ? halfWidths(model, search, rest, columns) : [];
  const observations = model.observations.map(({ trial, kind, measured }, i) => ({
    trialId: model.trials[trial].trial.id,
    kind,
    measured: Math.exp(measured),
    predictedBefore: Math.exp(before[i]),
    predictedAfter: Math.exp(after[i]),
    before: measured - before[i],
    after: measured - after[i],
    leaveOneOut: alone !== null && Number.isFinite(alone[i]) ? alone[i] : null,
    weight: search.weights[i],
  }));
  const left = observations.flatMap(({ leaveOneOut }) => (leaveOneOut === null ? [] : [leaveOneOut]));
  const ids = (list: readonly { readonly trialId: string }[]) => [...new Set(list.map(({ trialId }) => trialId))];
  return {
    factors: factorsOf(outcome, half, wanted),
    observations,
    trialIds: ids(observations),
    skipped: model.skipped,
    outliers: ids(observations.filter(({ weight }) => weight < 0.3)),
    error: {
      before: errorOf(observations.map((each) => each.before)),
      after: errorOf(observations.map((each) => each.after)),
      leaveOneOut: left.length > 1 ? errorOf(left) : null,
    },
    scale: search.scale,
    freedom: observations.length - names.length,
    converged: search.converged,
    rounds: search.rounds,
    evaluations: model.evaluations(),
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
  const prepared = fitModel(trials, model);
  const outcome = find(prepared, prepared.observations.length > 1 ? wanted : [], options.rounds ?? 15);
  return report(prepared, outcome, wanted);
}

/** Factors of a fit, as a prediction takes them. */
export const fittedFactors = ({ factors }: CalibrationFit) =>
  factorsAt(
    factorNames.map((name) => Math.log(factors[name].value)),
    factorNames,
  );
