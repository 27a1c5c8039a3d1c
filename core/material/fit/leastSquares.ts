/** Small least-squares problems with covariance. */

import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { inverseSmall } from '../../math/smallSolve.ts';

/** Values at all points, from the parameters. */
export type Curve = (parameters: readonly number[]) => readonly number[];

/** A problem: values to be met by a function, bounds of its parameters. */
export interface Problem {
  readonly wanted: readonly number[];
  readonly of: Curve;
  readonly low: readonly number[];
  readonly high: readonly number[];
}

/** A solved problem. */
export interface Solved {
  readonly at: number[];
  /** sum of squared differences */
  readonly squares: number;
  /** whether the gradient vanishes, or points out of the bounds */
  readonly converged: boolean;
}

/**
 * Derivatives of a curve, by central differences.
 * @returns one row per point
 */
export function slopes(of: Curve, at: readonly number[]): number[][] {
  const columns = at.map((value, k) => {
    const step = 1e-5 * Math.max(1e-2, Math.abs(value));
    const up = of(at.map((one, j) => (j === k ? one + step : one)));
    const down = of(at.map((one, j) => (j === k ? one - step : one)));
    return up.map((one, i) => (one - (down[i] ?? 0)) / (2 * step));
  });
  return (columns[0] ?? []).map((_, i) => columns.map((column) => column[i] ?? 0));
}

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/** Wanted values less those of the curve. */
function misses({ wanted, of }: Problem, at: readonly number[]): readonly number[] {
  const values = of(at);
  return wanted.map((value, i) => value - (values[i] ?? 0));
}

const squaresOf = (problem: Problem, at: readonly number[]): number =>
  sumOf(misses(problem, at).map((miss) => miss * miss));

/** Cosine of the residual with each parameter's column, 0 where a bound stops it; 0 in all at a minimum. */
function steepness(problem: Problem, at: readonly number[]): number {
  const { wanted, of, low, high } = problem;
  const rows = slopes(of, at);
  const residuals = misses(problem, at);
  const size = Math.sqrt(sumOf(residuals.map((r) => r * r)));
  // Below a millionth the points are met, and differences of rounding would be taken for a slope.
  if (size < 1e-6 * Math.sqrt(wanted.length)) return 0;
  const cosines = at.map((value, k) => {
    const pull = sumOf(residuals.map((r, i) => r * (rows[i]?.[k] ?? 0)));
    const length = Math.sqrt(sumOf(rows.map((row) => (row[k] ?? 0) ** 2)));
    const stopped = (pull > 0 && value >= (high[k] ?? Infinity)) || (pull < 0 && value <= (low[k] ?? -Infinity));
    return stopped || length === 0 ? 0 : Math.abs(pull) / length / size;
  });
  return Math.max(0, ...cosines);
}

/** Gradient, as a cosine, below which a minimum counts as reached. */
const flat = 1e-5;
/** Iterations between looks at the gradient, and how many such turns at most. */
const [turn, turns] = [12, 12] as const;

/** From one start until the gradient vanishes or nothing gets better. */
function descend(problem: Problem, start: readonly number[]): { readonly at: number[]; readonly squares: number } {
  const { wanted, of, low, high } = problem;
  const x = wanted.map((_, i) => i);
  const valuesOf = (p: readonly number[]) => {
    const values = of(p);
    return (i: number) => values[i] ?? 0;
  };
  let best = { at: [...start], squares: squaresOf(problem, start) };
  for (let k = 0; k < turns && steepness(problem, best.at) > flat; k++) {
    const { parameterValues } = levenbergMarquardt({ x, y: [...wanted] }, valuesOf, {
      initialValues: best.at,
      minValues: [...low],
      maxValues: [...high],
      maxIterations: turn,
      errorTolerance: 1e-14,
      damping: k === 0 ? 0.1 : 1e-3 * 30 ** (k % 3),
      jacobianFunction: (p) => {
        const rows = slopes(of, p);
        return (i) => rows[i] ?? [];
      },
    });
    const squares = squaresOf(problem, parameterValues);
    if (squares < best.squares) best = { at: parameterValues, squares };
  }
  return best;
}

/**
 * Bounded non-linear least squares from several starts; the best end counts.
 * @param problem values, function and bounds
 * @param starts parameter sets to begin from, at least one
 * Source: Levenberg 1944, Marquardt 1963; the iteration is the package's, covariance and convergence test are ours.
 */
export function solveLeastSquares(problem: Problem, starts: readonly (readonly number[])[]): Solved {
  const { low, high } = problem;
  const within = (start: readonly number[]) =>
    start.map((value, k) => Math.min(high[k] ?? value, Math.max(low[k] ?? value, value)));
  const ranked = starts.map((start) => descend(problem, within(start))).sort((a, b) => a.squares - b.squares);
  const best = ranked[0] ?? { at: [], squares: Infinity };
  return { ...best, converged: Number.isFinite(best.squares) && steepness(problem, best.at) < 100 * flat };
}

/**
 * Inverse of the normal matrix, with columns scaled and a trace of damping, so that a parameter without hold on the
 * points gets a very large variance instead of none.
 * @param rows derivatives, one row per point
 * @param size number of parameters
 * @returns row-major size x size, to be multiplied by the variance of the scatter
 */
export function inverseNormal(rows: readonly (readonly number[])[], size: number): number[] {
  const lengths = Array.from(
    { length: size },
    (_, k) => Math.sqrt(sumOf(rows.map((row) => (row[k] ?? 0) ** 2))) || 1e-9,
  );
  const entry = (j: number, k: number) =>
    sumOf(rows.map((row) => (row[j] ?? 0) * (row[k] ?? 0))) / ((lengths[j] ?? 1) * (lengths[k] ?? 1));
  const normal = Float64Array.from({ length: size * size }, (_, at) => {
    const [j, k] = [Math.floor(at / size), at % size];
    return entry(j, k) + (j === k ? 1e-10 : 0);
  });
  return Array.from(
    inverseSmall(normal, size),
    (value, at) => value / ((lengths[Math.floor(at / size)] ?? 1) * (lengths[at % size] ?? 1)),
  );
}

/**
 * Least squares of a function that is linear in its parameters: one solve, bounds left to the caller.
 * @param problem values and function
 * @param size number of parameters
 */
export function solveLinear(problem: Problem, size: number): Solved {
  const origin = new Array<number>(size).fill(0);
  const rows = slopes(problem.of, origin);
  const rest = misses(problem, origin);
  const inverse = inverseNormal(rows, size);
  const pulls = origin.map((_, k) => sumOf(rest.map((r, i) => r * (rows[i]?.[k] ?? 0))));
  const at = origin.map((_, j) => sumOf(pulls.map((pull, k) => pull * (inverse[j * size + k] ?? 0))));
  return { at, squares: squaresOf(problem, at), converged: true };
}
