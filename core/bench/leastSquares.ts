/** Robust least squares around a damped Gauss-Newton step. */

import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import type { FactorName } from '../design/calibrate.ts';
import { countMoved, slopeStep } from './determined.ts';
import type { FitModel } from './fitModel.ts';
import { huberWeight, mayReject, residualScale, surestScale, tukeyWeight } from './robust.ts';

/** State of the search. */
export interface Search {
  /** ln of the factors */
  readonly theta: Float64Array;
  readonly scale: number;
  readonly weights: Float64Array;
  readonly rounds: number;
  readonly converged: boolean;
  /** whether figures could lose all their weight */
  readonly rejects: boolean;
}

/** Factors stay between 1/20 and 20. */
export const widest = Math.log(20);
/** Rounds with Huber's weights before Tukey's, whose minimum must be near. */
const huberRounds = 3;
/** Change of ln factor that counts as none: 0.1 %. */
const stillness = 1e-3;
/** A figure that vanishes, as ln: far off, but finite. */
const vanished = -60;

const finite = (value: number): number => (Number.isFinite(value) ? value : vanished);

/** Residuals in units of the bench's scatter. */
export function residuals(model: FitModel, theta: ArrayLike<number>, names: readonly FactorName[]): Float64Array {
  const predicted = model.predict(theta, names);
  return predicted.map((value, i) => (model.observations[i].measured - finite(value)) / model.observations[i].scatter);
}

/** One-sided slopes for the search: half the calls of central ones. */
function forwardSlopes(model: FitModel, theta: ArrayLike<number>, names: readonly FactorName[]): Float64Array[] {
  const here = model.predict(theta, names);
  return names.map((_, factor) => {
    const moved = Float64Array.from(theta);
    moved[factor] += moved[factor] > 0 ? -slopeStep : slopeStep;
    const step = moved[factor] - theta[factor];
    return model.predict(moved, names).map((value, i) => {
      const slope = (value - here[i]) / step;
      return Number.isFinite(slope) ? slope : 0;
    });
  });
}

/** Slopes are taken anew where a factor has moved by more than this since, as ln. */
const stale = 0.03;

const farthest = (p: ArrayLike<number>, q: ArrayLike<number>): number =>
  Array.from(p).reduce((most, value, i) => Math.max(most, Math.abs(value - q[i])), 0);

/**
 * One damped step. The package takes a function of one variable: here the number of the observation, with data and
 * model already weighted, since its own weights enter its step and its error in opposite ways.
 */
function stepFrom(
  model: FitModel,
  names: readonly FactorName[],
  theta: Float64Array,
  columns: readonly Float64Array[],
  weights: Float64Array,
  damping: number,
): Float64Array {
  const { observations } = model;
  const root = observations.map(({ scatter }, i) => Math.sqrt(weights[i]) / scatter);
  const found = levenbergMarquardt(
    { x: observations.map((_, i) => i), y: observations.map(({ measured }, i) => root[i] * measured) },
    (parameters) => {
      const predicted = model.predict(parameters, names);
      return (i) => root[i] * finite(predicted[i]);
    },
    {
      initialValues: Array.from(theta),
      jacobianFunction: () => (i) => columns.map((column) => root[i] * column[i]),
      damping,
      maxIterations: 1,
      errorTolerance: 1e-12,
      minValues: names.map(() => -widest),
      maxValues: names.map(() => widest),
    },
  );
  return Float64Array.from(found.parameterValues);
}

/** Scatter and weights at a place; Tukey's weights only where there are figures enough, and near the minimum. */
function weighed(
  model: FitModel,
  theta: Float64Array,
  names: readonly FactorName[],
  columns: readonly Float64Array[],
  early: boolean,
): Pick<Search, 'scale' | 'weights' | 'rejects'> {
  const rest = residuals(model, theta, names);
  const rejects = mayReject(countMoved(model, columns), names.length);
  const scale = residualScale(rest, names.length, rejects ? undefined : surestScale);
  const weightOf = rejects && !early ? tukeyWeight : huberWeight;
  return { scale, weights: rest.map((value) => weightOf(value / scale)), rejects };
}

/**
 * Searches the factors.
 * @param start ln of the factors to begin with
 * @param rounds most rounds
 * @returns factors with scatter and weights; `converged` false where the rounds did not suffice
 * Needs at least two observations and one factor. A round costs one call per trial, and one per trial and factor while
 * the factors still move.
 */
export function robustSearch(
  model: FitModel,
  names: readonly FactorName[],
  start: ArrayLike<number>,
  rounds: number,
): Search {
  let theta = Float64Array.from(start);
  let damping = 1e-2;
  let converged = false;
  let round = 0;
  let known = { theta, columns: forwardSlopes(model, theta, names) };
  const weighing = () => weighed(model, theta, names, known.columns, round < huberRounds);
  let state = weighing();
  for (; round < rounds && !converged; round++) {
    if (farthest(theta, known.theta) > stale) known = { theta, columns: forwardSlopes(model, theta, names) };
    const next = stepFrom(model, names, theta, known.columns, state.weights, damping);
    const moved = farthest(next, theta);
    damping = moved > 0 ? Math.max(1e-2, damping / 10) : damping * 100;
    theta = Float64Array.from(next);
    const before = state.weights;
    state = weighing();
    const settled = state.weights.every((weight, i) => Math.abs(weight - before[i]) < 0.02);
    converged = round >= huberRounds && moved < stillness && settled && (moved > 0 || damping > 1e4);
  }
  return { theta, ...state, rounds: round, converged };
}
