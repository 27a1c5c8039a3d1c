import fc from 'fast-check';
import { expect, test } from 'vitest';
import { latinHypercube, triangularQuantile } from '../../../core/doubt/latin.ts';

test('every input takes each stratum once, whatever the size and seed', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 0, max: 6 }), fc.integer(), (n, inputs, seed) => {
      const unit = latinHypercube(n, inputs, seed);
      for (let input = 0; input < inputs; input++) {
        const strata = Array.from({ length: n }, (_, i) => Math.floor(unit[i * inputs + input] * n));
        expect(strata.sort((p, q) => p - q)).toEqual(Array.from({ length: n }, (_, i) => i));
      }
    }),
    { seed: 5, numRuns: 40 },
  );
});

test('the same seed gives the same samples, another seed others', () => {
  expect(latinHypercube(20, 3, 9)).toEqual(latinHypercube(20, 3, 9));
  expect(latinHypercube(20, 3, 9)).not.toEqual(latinHypercube(20, 3, 10));
});

test('the inputs are shuffled apart', () => {
  const unit = latinHypercube(400, 2, 1);
  const product = Array.from({ length: 400 }, (_, i) => (unit[2 * i] - 0.5) * (unit[2 * i + 1] - 0.5));
  // 12 times the mean product is the correlation; chance alone gives about 1/20.
  expect(Math.abs((12 * product.reduce((sum, value) => sum + value, 0)) / 400)).toBeLessThan(0.15);
});

test('triangular quantiles meet the ends, the mode and the mean', () => {
  const at = (unit: number) => triangularQuantile(unit, 1, 2, 5);
  expect(at(0)).toBe(1);
  expect(at(1)).toBe(5);
  expect(at(0.25)).toBeCloseTo(2, 12);
  const count = 2000;
  const mean = Array.from({ length: count }, (_, i) => at((i + 0.5) / count)).reduce((sum, v) => sum + v, 0) / count;
  // Mean of a triangle: the mean of its three corners.
  expect(mean).toBeCloseTo(8 / 3, 4);
  expect(triangularQuantile(0.3, 4, 4, 4)).toBe(4);
});
