import { describe, expect, test } from 'vitest';
import { median, medianDeviation, quantile, ranksOf, sortedFinite } from '../../../core/doubt/statistics.ts';
import { studentLimit } from '../../../core/math/studentT.ts';

test('quantiles interpolate between order statistics', () => {
  const sorted = [1, 2, 4, 8, 16];
  expect([0, 0.25, 0.5, 0.75, 1].map((share) => quantile(sorted, share))).toEqual([1, 2, 4, 8, 16]);
  expect(quantile(sorted, 0.9)).toBeCloseTo(12.8, 12);
  expect(quantile([], 0.5)).toBeNaN();
  expect(sortedFinite([3, Number.NaN, -1, Number.POSITIVE_INFINITY])).toEqual([-1, 3]);
});

test('median and its deviation ignore one wild value', () => {
  expect(median([1, 2, 3, 4, 1e9])).toBe(3);
  expect(medianDeviation([1, 2, 3, 4, 1e9])).toBe(medianDeviation([1, 2, 3, 4, 5]));
});

test('ranks share ties', () => {
  expect(Array.from(ranksOf([10, 20, 10, 30]))).toEqual([1.5, 3, 1.5, 4]);
});

describe('limits of Student’s t', () => {
  // Two-sided 95 % points of every printed table of t, e.g. Abramowitz and Stegun 1964, table 26.10 (from memory).
  test.each([
    [1, 12.706],
    [2, 4.303],
    [5, 2.571],
    [30, 2.042],
    [120, 1.98],
  ])('with %i degrees of freedom', (freedom, limit) => {
    expect(studentLimit(0.95, freedom)).toBeCloseTo(limit, 2);
  });

  test('approaches the normal limit and knows when there is none', () => {
    expect(studentLimit(0.95, 1e6)).toBeCloseTo(1.96, 2);
    expect(studentLimit(0.95, 0)).toBe(Number.POSITIVE_INFINITY);
  });
});
