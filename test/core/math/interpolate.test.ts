import { expect, test } from 'vitest';
import { interpolateLinear, intervalOf, inverseRising } from '../../../core/math/interpolate.ts';

const xs = [0, 1, 1, 3];
const ys = [0, 2, 5, 7];

test('is linear between points, holds the ends, and takes the value after a step', () => {
  expect(interpolateLinear(xs, ys, 0.25)).toBeCloseTo(0.5, 12);
  expect(interpolateLinear(xs, ys, -1)).toBe(0);
  expect(interpolateLinear(xs, ys, 9)).toBe(7);
  expect(interpolateLinear(xs, ys, 1)).toBe(5);
  expect(interpolateLinear(xs, ys, 2)).toBeCloseTo(6, 12);
});

test('finds the interval at both ends and in the middle', () => {
  expect(intervalOf([0, 1, 2, 3], 0)).toBe(0);
  expect(intervalOf([0, 1, 2, 3], 2.5)).toBe(2);
  expect(intervalOf([0, 1, 2, 3], 3)).toBe(2);
});

test('inverts a rising polyline', () => {
  expect(inverseRising([0, 2, 4], [0, 0.5, 1], 0.25)).toBeCloseTo(1, 12);
  expect(inverseRising([0, 2, 4], [0, 0.5, 1], 2)).toBe(4);
  expect(inverseRising([0, 2, 4], [0, 0.5, 1], -2)).toBe(0);
});
