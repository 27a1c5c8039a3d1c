import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addToBand, factorSquareBand, solveSquareBand, squareBand } from '../../../core/math/bandedLu.ts';
import { pinned } from '../../helpers/arbitraries.ts';

test('solves any band system with a strong diagonal', () => {
  const entry = fc.double({ min: -1, max: 1, noNaN: true });
  const system = fc.tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 0, max: 4 })).chain(([size, half]) =>
    fc.record({
      size: fc.constant(size),
      half: fc.constant(half),
      values: fc.array(entry, { minLength: size * size, maxLength: size * size }),
      wanted: fc.array(entry, { minLength: size, maxLength: size }),
    }),
  );
  fc.assert(
    fc.property(system, ({ size, half, values, wanted }) => {
      const band = squareBand(size, half);
      const right = new Float64Array(size);
      for (let i = 0; i < size; i++) {
        for (let j = Math.max(0, i - half); j <= Math.min(size - 1, i + half); j++) {
          const value = values[i * size + j] + (i === j ? 2 * half + 2 : 0);
          addToBand(band, i, j, value);
          right[i] += value * wanted[j];
        }
      }
      factorSquareBand(band);
      solveSquareBand(band, right);
      right.forEach((value, i) => {
        expect(value).toBeCloseTo(wanted[i], 10);
      });
    }),
    pinned(100),
  );
});
