import { expect, test } from 'vitest';
import { addTriangle, bandOf, levelSums } from '../../../core/math/levelSums.ts';

const total = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0);

test('bands of the triangle x >= 0, y >= 0, x + y <= 1 with level x have areas (1 - a)^2/2 - (1 - b)^2/2', () => {
  const levels = Float64Array.from([0, 0.2, 0.5, 0.9, 1]);
  const sums = levelSums(levels);
  // first weight 1, second weight y
  const nodes = {
    level: Float64Array.from([0, 1, 0]),
    first: Float64Array.from([1, 1, 1]),
    second: Float64Array.from([0, 0, 1]),
  };
  addTriangle(sums, nodes, 0.5, 0, 1, 2);
  for (let k = 0; k < 4; k++) {
    const rest = (power: number, x: number) => (1 - x) ** power;
    expect(sums.first[k]).toBeCloseTo((rest(2, levels[k]) - rest(2, levels[k + 1])) / 2, 12);
    expect(sums.second[k]).toBeCloseTo((rest(3, levels[k]) - rest(3, levels[k + 1])) / 6, 12);
  }
});

test.each([
  [0, 1, 2],
  [2, 0, 1],
  [1, 2, 0],
  [0, 0, 1],
  [1, 1, 1],
])('corner levels %d %d %d in any order keep the whole', (a, b, c) => {
  const sums = levelSums(Float64Array.from([-1, 0.3, 1.1, 1.7, 3]));
  const nodes = {
    level: Float64Array.from([a, b, c]),
    first: Float64Array.from([1, 2, 6]),
    second: Float64Array.from([1, 1, 1]),
  };
  addTriangle(sums, nodes, 2, 0, 1, 2);
  expect(total(sums.first)).toBeCloseTo(6, 12);
  expect(total(sums.second)).toBeCloseTo(2, 12);
});

test('a level outside belongs to the end band', () => {
  const levels = Float64Array.from([0, 1, 2]);
  expect([bandOf(levels, -5), bandOf(levels, 0.5), bandOf(levels, 1), bandOf(levels, 9)]).toEqual([0, 0, 1, 1]);
});
