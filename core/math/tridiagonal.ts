/** Direct solution of tridiagonal systems. */

/**
 * Solves a tridiagonal system (Thomas algorithm); right for diagonally dominant rows.
 * @param lower, diagonal, upper the three diagonals, each of the system's length (lower[0] and upper[last] unused)
 * @param right right side
 * @returns the solution; inputs are left alone
 */
export function solveTridiagonal(
  lower: Float64Array,
  diagonal: Float64Array,
  upper: Float64Array,
  right: Float64Array,
): Float64Array {
  const n = diagonal.length;
  const ratio = new Float64Array(n);
  const x = new Float64Array(n);
  let pivot = diagonal[0];
  x[0] = right[0] / pivot;
  for (let i = 1; i < n; i++) {
    ratio[i] = upper[i - 1] / pivot;
    pivot = diagonal[i] - lower[i] * ratio[i];
    x[i] = (right[i] - lower[i] * x[i - 1]) / pivot;
  }
  for (let i = n - 2; i >= 0; i--) x[i] -= ratio[i + 1] * x[i + 1];
  return x;
}
