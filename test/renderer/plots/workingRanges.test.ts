import { expect, test } from 'vitest';
import { workingRanges } from '../../../renderer/plots/workingRanges.ts';

const screwSpeed = Float64Array.of(1, 2, 3, 4, 5, 6);
const curve = (...works: number[]) => ({ screwSpeed, works: Uint8Array.from(works) });

test('runs of working speeds, each from its first to its last', () => {
  expect(workingRanges(curve(0, 1, 1, 0, 1, 0), null)).toEqual([
    [2, 3],
    [5, 5],
  ]);
  expect(workingRanges(curve(0, 0, 0, 0, 0, 0), 2.5)).toEqual([]);
});

test('a run begins where the demand is just met, if that is within the step before', () => {
  expect(workingRanges(curve(0, 0, 1, 1, 1, 1), 2.4)).toEqual([[2.4, 6]]);
  expect(workingRanges(curve(0, 0, 1, 1, 1, 1), 1.4)).toEqual([[3, 6]]);
  expect(workingRanges(curve(1, 1, 0, 0, 0, 0), 0.3)).toEqual([[0.3, 2]]);
});
