import fc from 'fast-check';
import { expect, test } from 'vitest';
import { solveSmall } from '../../../core/math/smallSolve.ts';
import { pinned } from '../../helpers/arbitraries.ts';

const number = fc.double({ min: -3, max: 3, noNaN: true });

test('Cholesky solves any positive definite 3 x 3 system', () => {
  fc.assert(
    fc.property(
      fc.array(number, { minLength: 9, maxLength: 9 }),
      fc.array(number, { minLength: 3, maxLength: 3 }),
      (b, x) => {
        // B Bᵀ + 1 is positive definite for any B
        const a = Float64Array.from({ length: 9 }, (_, k) => {
          const [i, j] = [Math.floor(k / 3), k % 3];
          return [0, 1, 2].reduce((sum, m) => sum + b[3 * i + m] * b[3 * j + m], i === j ? 1 : 0);
        });
        const right = Float64Array.from({ length: 3 }, (_, i) =>
          [0, 1, 2].reduce((sum, j) => sum + a[3 * i + j] * x[j], 0),
        );
        expect(solveSmall(a, right, 3)).toBe(true);
        x.forEach((value, i) => {
          expect(right[i]).toBeCloseTo(value, 9);
        });
      },
    ),
    pinned(100),
  );
});

test('Cholesky refuses what is not positive definite', () => {
  expect(solveSmall(Float64Array.of(1, 2, 2, 1), Float64Array.of(1, 1), 2)).toBe(false);
});
