/** Symmetric positive definite band matrices: storage, Cholesky factor, solution. */

/**
 * Lower triangle of a symmetric band matrix. Entry (i, j), i - bandwidth <= j <= i, sits at
 * `values[i * (bandwidth + 1) + j - i + bandwidth]`; a factor replaces the matrix in place.
 */
export interface BandMatrix {
  readonly size: number;
  /** Number of sub-diagonals. */
  readonly bandwidth: number;
  readonly values: Float64Array;
}

/** A zero band matrix. */
export function bandMatrix(size: number, bandwidth: number): BandMatrix {
  return { size, bandwidth, values: new Float64Array(size * (bandwidth + 1)) };
}

/**
 * Cholesky factor A = L L^T, in place; the diagonal of the factor is stored as its reciprocal.
 * @returns true, or false at the first pivot that is not positive (the matrix is then spoilt)
 * Rows are built left to right, so every inner product runs over contiguous memory.
 */
export function factorBand(matrix: BandMatrix): boolean {
  const { size, bandwidth, values } = matrix;
  for (let i = 0; i < size; i++) {
    const rowI = i * (bandwidth + 1) + bandwidth - i;
    const first = Math.max(0, i - bandwidth);
    // leading zeros of a row stay zero in the factor
    let start = first;
    while (start < i && values[rowI + start] === 0) start++;
    for (let j = start; j < i; j++) {
      const rowJ = j * (bandwidth + 1) + bandwidth - j;
      const sum = values[rowI + j] - dot(values, rowI, rowJ, Math.max(start, j - bandwidth), j);
      values[rowI + j] = sum * values[rowJ + j];
    }
    const pivot = values[rowI + i] - dot(values, rowI, rowI, start, i);
    if (!(pivot > 0)) return false;
    values[rowI + i] = 1 / Math.sqrt(pivot);
  }
  return true;
}

/** Sum of values[a + k] values[b + k] for from <= k < to, in four independent chains. */
function dot(values: Float64Array, a: number, b: number, from: number, to: number): number {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let k = from;
  for (; k + 3 < to; k += 4) {
    s0 += values[a + k] * values[b + k];
    s1 += values[a + k + 1] * values[b + k + 1];
    s2 += values[a + k + 2] * values[b + k + 2];
    s3 += values[a + k + 3] * values[b + k + 3];
  }
  for (; k < to; k++) s0 += values[a + k] * values[b + k];
  return s0 + s1 + (s2 + s3);
}

/**
 * Solves A x = rhs with a factor from {@link factorBand}; rhs is overwritten by x.
 */
export function solveBand(factor: BandMatrix, rhs: Float64Array): void {
  const { size, bandwidth, values } = factor;
  for (let i = 0; i < size; i++) {
    const row = i * (bandwidth + 1) + bandwidth - i;
    let sum = rhs[i];
    for (let k = Math.max(0, i - bandwidth); k < i; k++) sum -= values[row + k] * rhs[k];
    rhs[i] = sum * values[row + i];
  }
  for (let i = size - 1; i >= 0; i--) {
    const row = i * (bandwidth + 1) + bandwidth - i;
    const x = rhs[i] * values[row + i];
    rhs[i] = x;
    for (let k = Math.max(0, i - bandwidth); k < i; k++) rhs[k] -= values[row + k] * x;
  }
}
