import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type BandMatrix, bandMatrix, factorBand, solveBand } from '../../../core/math/bandedCholesky.ts';

/** Band matrix B B^T + I from numbers, positive definite by construction. */
function definite(size: number, bandwidth: number, numbers: readonly number[]): BandMatrix {
  const half = (i: number, j: number) => (j > i || i - j > bandwidth ? 0 : numbers[(7 * i + 3 * j) % numbers.length]);
  const matrix = bandMatrix(size, bandwidth);
  for (let i = 0; i < size; i++) {
    for (let j = Math.max(0, i - bandwidth); j <= i; j++) {
      let sum = i === j ? 1 : 0;
      for (let k = 0; k <= j; k++) sum += half(i, k) * half(j, k);
      matrix.values[i * (bandwidth + 1) + j - i + bandwidth] = sum;
    }
  }
  return matrix;
}

function multiply(matrix: BandMatrix, x: Float64Array): Float64Array {
  const { size, bandwidth, values } = matrix;
  const out = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    for (let j = Math.max(0, i - bandwidth); j <= i; j++) {
      const entry = values[i * (bandwidth + 1) + j - i + bandwidth];
      out[i] += entry * x[j];
      if (j < i) out[j] += entry * x[i];
    }
  }
  return out;
}

const numbers = fc.array(fc.double({ min: -2, max: 2, noNaN: true }), { minLength: 5, maxLength: 40 });

test('the solution multiplied by the matrix gives back the right-hand side (seed 11)', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 40 }),
      fc.integer({ min: 0, max: 12 }),
      numbers,
      (size, bandwidth, values) => {
        const matrix = definite(size, bandwidth, values);
        const wanted = Float64Array.from({ length: size }, (_, k) => Math.sin(k + 1));
        const rhs = multiply(matrix, wanted);
        expect(factorBand(matrix)).toBe(true);
        solveBand(matrix, rhs);
        for (let k = 0; k < size; k++) expect(rhs[k]).toBeCloseTo(wanted[k], 7);
      },
    ),
    { seed: 11, numRuns: 60 },
  );
});

test('a matrix that is not positive definite is refused', () => {
  const matrix = bandMatrix(2, 1);
  matrix.values.set([0, 1, 2, 1]);
  expect(factorBand(matrix)).toBe(false);
});
