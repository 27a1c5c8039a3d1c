/** How sure fitted factors are, and what each trial would have been predicted as without itself. */

import { inverseSmall, solveSmall } from '../math/smallSolve.ts';
import { studentLimit } from '../math/studentT.ts';
import { movedFigures } from './determined.ts';
import type { FitModel } from './fitModel.ts';
import type { Search } from './leastSquares.ts';
import { huberSlope, huberWeight, surestScale, tukeySlope, tukeyWeight } from './robust.ts';

/** Sum over observations of weight times slope times slope, over the bench's scatter squared; row-major. */
function information(model: FitModel, columns: readonly Float64Array[], weights: ArrayLike<number>): Float64Array {
  const size = columns.length;
  const matrix = new Float64Array(size * size);
  model.observations.forEach(({ scatter }, at) => {
    for (let i = 0; i < size; i++) {
      for (let j = 0; j < size; j++) {
        matrix[i * size + j] += (weights[at] * columns[i][at] * columns[j][at]) / scatter ** 2;
      }
    }
  });
  return matrix;
}

/** Diagonal of the inverse; NaN where there is none. */
export function inverseDiagonal(matrix: Float64Array, size: number): Float64Array {
  const inverse = inverseSmall(matrix, size);
  return Float64Array.from({ length: size }, (_, i) => inverse[i * size + i]);
}

/**
 * Half widths of the factors' 95 % limits, as ln.
 * @param rest residuals in units of the bench's scatter at the solution
 * @param columns slopes there, one column per factor
 * @returns one per factor; Infinity where there are not more figures than factors
 * Source: Huber 1981, section 7.6, first of three forms (from memory), with Student's t. Holds for errors that do not
 * depend on each other; the error of the model's form is in them as far as it scatters from trial to trial. Only figures
 * that the factors move count; few that agree do not narrow the limits below 0.7 of what a careful bench repeats within.
 */
export function halfWidths(
  model: FitModel,
  search: Search,
  rest: Float64Array,
  columns: readonly Float64Array[],
): Float64Array {
  const moved = movedFigures(model, columns);
  const u = rest.filter((_, i) => moved[i]).map((value) => value / search.scale);
  const count = u.length;
  const size = columns.length;
  const [weight, slope] = search.rejects ? [tukeyWeight, tukeySlope] : [huberWeight, huberSlope];
  const influence = u.reduce((sum, value) => sum + (value * weight(value)) ** 2, 0) / Math.max(1, count - size);
  const bend = u.map(slope);
  const mean = bend.reduce((sum, value) => sum + value, 0) / count;
  const spread = bend.reduce((sum, value) => sum + (value - mean) ** 2, 0) / count;
  const correction = 1 + ((size / count) * spread) / mean ** 2;
  const deviation = (correction * search.scale * Math.sqrt(influence)) / mean;
  const floor = Math.max(search.scale, surestScale);
  const ones = new Float64Array(rest.length).fill(1);
  const diagonal = inverseDiagonal(information(model, columns, ones), size);
  const t = studentLimit(0.95, count - size);
  return diagonal.map((value) => {
    const half = t * Math.max(deviation, floor) * Math.sqrt(value);
    return Number.isFinite(half) && mean > 0 ? half : Number.POSITIVE_INFINITY;
  });
}

/**
 * ln(measured / predicted) of each observation with the factors that the other trials give, linearised at the solution.
 * @returns NaN where the other trials do not tell the factors
 */
export function withoutItself(
  model: FitModel,
  weights: Float64Array,
  rest: Float64Array,
  columns: readonly Float64Array[],
): Float64Array {
  const { observations } = model;
  const size = columns.length;
  return Float64Array.from(observations, ({ trial, scatter }, at) => {
    const others = weights.map((weight, i) => (observations[i].trial === trial ? 0 : weight));
    const shift = Float64Array.from({ length: size }, (_, i) =>
      observations.reduce((sum, other, k) => sum + (others[k] * columns[i][k] * rest[k]) / other.scatter, 0),
    );
    if (!solveSmall(information(model, columns, others), shift, size)) return Number.NaN;
    return rest[at] * scatter - columns.reduce((sum, column, i) => sum + column[at] * shift[i], 0);
  });
}
