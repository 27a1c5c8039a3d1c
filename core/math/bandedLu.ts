/** Direct solution of unsymmetric band systems whose diagonal is strong enough to do without pivoting. */

/** A square band matrix; entry (i, j) with |i - j| <= half lies at i * (2 half + 1) + j - i + half. */
export interface SquareBand {
  readonly size: number;
  /** diagonals on each side of the main one */
  readonly half: number;
  readonly entries: Float64Array;
}

/** A band matrix of zeros. */
export const squareBand = (size: number, half: number): SquareBand => ({
  size,
  half,
  entries: new Float64Array(size * (2 * half + 1)),
});

/** Adds to entry (i, j); both must lie in the band. */
export function addToBand(band: SquareBand, i: number, j: number, value: number): void {
  band.entries[i * (2 * band.half + 1) + j - i + band.half] += value;
}

/** Factors in place into L (unit diagonal) and U by elimination without pivoting. */
export function factorSquareBand(band: SquareBand): void {
  const { size, half, entries } = band;
  const width = 2 * half + 1;
  for (let k = 0; k < size; k++) {
    const pivot = entries[k * width + half];
    const last = Math.min(size - 1, k + half);
    for (let i = k + 1; i <= last; i++) {
      const at = i * width + k - i + half;
      if (entries[at] === 0) continue;
      const factor = entries[at] / pivot;
      entries[at] = factor;
      for (let j = 1; j <= last - k; j++) entries[at + j] -= factor * entries[k * width + half + j];
    }
  }
}

/** Solves with a factored matrix; the right side is replaced by the solution. */
export function solveSquareBand(factored: SquareBand, x: Float64Array): void {
  const { size, half, entries } = factored;
  const width = 2 * half + 1;
  for (let i = 0; i < size; i++) {
    for (let j = Math.max(0, i - half); j < i; j++) x[i] -= entries[i * width + j - i + half] * x[j];
  }
  for (let i = size - 1; i >= 0; i--) {
    const last = Math.min(size - 1, i + half);
    for (let j = i + 1; j <= last; j++) x[i] -= entries[i * width + j - i + half] * x[j];
    x[i] /= entries[i * width + half];
  }
}
