/** Which input moves an output: regression of ranks. */

import { solveSmall } from '../math/smallSolve.ts';
import { ranksOf } from './statistics.ts';

/** Strength of every input on one output. */
export interface Strengths {
  readonly method: 'rank regression' | 'rank correlation';
  /** one per input, order of the inputs; NaN for an input or output that never changes */
  readonly strength: Float64Array;
  /** strength that chance alone exceeds in one of twenty cases */
  readonly noiseFloor: number;
  /** share of the output ranks' variance that the regression explains; null for the correlation */
  readonly explained: number | null;
}

/** Two-sided 95 % limit of the normal distribution. */
const normalLimit = 1.959963984540054;

/** Ranks with mean 0 and length 1; null where all values are equal. */
function unitRanks(values: ArrayLike<number>): Float64Array | null {
  const ranks = ranksOf(values);
  const mean = (ranks.length + 1) / 2;
  const length = Math.hypot(...ranks.map((rank) => rank - mean));
  return length > 0 ? ranks.map((rank) => (rank - mean) / length) : null;
}

const dot = (p: Float64Array, q: Float64Array): number => p.reduce((sum, value, i) => sum + value * q[i], 0);

/** Samples beyond the inputs that a regression needs before its coefficients mean more than correlations do. */
const spareSamples = 10;

/** Coefficients of the ranks' regression, or null where the inputs' ranks are not independent. */
function coefficients(columns: readonly Float64Array[], target: Float64Array): Float64Array | null {
  const size = columns.length;
  const matrix = Float64Array.from({ length: size * size }, (_, at) =>
    dot(columns[Math.floor(at / size)], columns[at % size]),
  );
  const vector = Float64Array.from(columns, (column) => dot(column, target));
  return solveSmall(matrix, vector, size) ? vector : null;
}

function fromRegression(columns: readonly Float64Array[], target: Float64Array): Omit<Strengths, 'method'> | null {
  const beta = coefficients(columns, target);
  if (beta === null) return null;
  const fitted = target.map((_, row) => columns.reduce((sum, column, i) => sum + beta[i] * column[row], 0));
  const rest = target.reduce((sum, value, row) => sum + (value - fitted[row]) ** 2, 0);
  const explained = Math.min(1, Math.max(0, 1 - rest));
  const freedom = target.length - columns.length - 1;
  return { strength: beta, explained, noiseFloor: normalLimit * Math.sqrt((1 - explained) / freedom) };
}

/**
 * Strength of inputs on an output over samples.
 * @param inputs one column per input, any unit
 * @param output one value per sample, finite
 * @returns standardised regression coefficients of the ranks where there are samples enough, else rank correlations
 * (Spearman); both are 1 where the output rises with that input alone. They see monotone effects only: an output that
 * rises and falls with an input shows as a low explained share.
 * Source: Iman and Conover 1979 (rank regression); McKay, Beckman and Conover 1979 (its use with Latin hypercubes).
 */
export function strengthsOf(inputs: readonly ArrayLike<number>[], output: ArrayLike<number>): Strengths {
  const count = output.length;
  const target = count > 1 ? unitRanks(output) : null;
  const columns = inputs.map((values) => (count > 1 ? unitRanks(values) : null));
  const moving = columns.filter((column) => column !== null);
  const spread = (found: ArrayLike<number>): Float64Array => {
    let next = 0;
    return Float64Array.from(columns, (column) => (column === null ? Number.NaN : found[next++]));
  };
  if (target === null) {
    return {
      method: 'rank correlation',
      strength: spread(moving.map(() => Number.NaN)),
      noiseFloor: 1,
      explained: null,
    };
  }
  const fit = count >= moving.length + spareSamples ? fromRegression(moving, target) : null;
  if (fit !== null) return { ...fit, method: 'rank regression', strength: spread(fit.strength) };
  const noiseFloor = Math.min(1, normalLimit / Math.sqrt(count - 1));
  const strength = spread(moving.map((column) => dot(column, target)));
  return { method: 'rank correlation', strength, noiseFloor, explained: null };
}
