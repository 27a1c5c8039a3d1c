/** Cubic B-splines through points at equal steps of the parameter, by plain interpolation. */

import { addToBand, factorSquareBand, type SquareBand, solveSquareBand, squareBand } from '../../math/bandedLu.ts';

/** Knots with their multiplicities, and the degree, as the kernel wants them. */
export interface SplineBasis {
  readonly degree: number;
  readonly knots: readonly number[];
  readonly multiplicities: readonly number[];
}

/** A fitter of cubic splines through `count` + 1 points. */
export interface CubicFit extends SplineBasis {
  /** Poles of the spline through values at parameters 0 to count; the last point of each is met exactly. */
  readonly poles: (values: Float64Array) => Float64Array;
}

/** Least number of intervals of a cubic through points. */
export const leastIntervals = 3;

const inner = (count: number): number[] => Array.from({ length: count - leastIntervals }, (_, i) => i + 2);

/** All knots, each as often as it counts; the second and the last but one point carry none, so that ends keep the order. */
function flatKnots(count: number): number[] {
  return [0, 0, 0, 0, ...inner(count), count, count, count, count];
}

/** The four cubic basis functions that are not zero at `t` in knot span `span`, by the recurrence of de Boor. */
function basisAt(knots: readonly number[], span: number, t: number): number[] {
  const values = [1];
  for (let degree = 1; degree <= 3; degree++) {
    let saved = 0;
    for (let j = 0; j < degree; j++) {
      const right = (knots[span + j + 1] as number) - t;
      const left = t - (knots[span + 1 - degree + j] as number);
      const share = (values[j] as number) / (right + left);
      values[j] = saved + right * share;
      saved = left * share;
    }
    values[degree] = saved;
  }
  return values;
}

/** Knot span of `t` among `poles` poles. */
function spanOf(knots: readonly number[], poles: number, t: number): number {
  let span = 3;
  while (span < poles - 1 && t >= (knots[span + 1] as number)) span++;
  return span;
}

/** Value of a cubic spline on the knots of `count` intervals at `t`, 0 to count. */
export function cubicAt(poles: Float64Array, t: number): number {
  const knots = flatKnots(poles.length - 1);
  const span = spanOf(knots, poles.length, t);
  return basisAt(knots, span, t).reduce((sum, value, i) => sum + value * (poles[span - 3 + i] as number), 0);
}

/** The factored matrix that takes poles to points. */
function collocation(count: number): SquareBand {
  const knots = flatKnots(count);
  const band = squareBand(count + 1, 3);
  let span = 3;
  for (let i = 0; i <= count; i++) {
    while (span < count && i >= (knots[span + 1] as number)) span++;
    basisAt(knots, span, i).forEach((value, j) => {
      if (value !== 0) addToBand(band, i, span - 3 + j, value);
    });
  }
  factorSquareBand(band);
  return band;
}

/**
 * Interpolating cubic splines through `count` + 1 points, `count` >= 3, parameter 0 to count, smooth to the second
 * derivative. Along a circle the error is (step angle)^4 / 384 of the radius.
 */
export function cubicFit(count: number): CubicFit {
  const band = collocation(count);
  const knots = [0, ...inner(count), count];
  const multiplicities = knots.map((_, i) => (i === 0 || i === knots.length - 1 ? 4 : 1));
  const poles = (values: Float64Array) => {
    const solved = values.slice();
    solveSquareBand(band, solved);
    solved[0] = values[0] as number;
    solved[count] = values[count] as number;
    return solved;
  };
  return { degree: 3, knots, multiplicities, poles };
}

/** A straight line from parameter 0 to 1. */
export const straight: SplineBasis = { degree: 1, knots: [0, 1], multiplicities: [2, 2] };

/** Arcs of a circle as rational quadratics, `pieces` in a row, parameter 0 to `pieces`. */
export const arcBasis = (pieces: number): SplineBasis => ({
  degree: 2,
  knots: Array.from({ length: pieces + 1 }, (_, i) => i),
  multiplicities: Array.from({ length: pieces + 1 }, (_, i) => (i === 0 || i === pieces ? 3 : 2)),
});
