import { expect, test } from 'vitest';
import type { Residence } from '../../../core/prediction/types.ts';
import { residenceSeries } from '../../../core/present/residenceSeries.ts';

/** A stirred vessel with mean 10 s behind a delay of 5 s: F = 1 - exp(-(t - 5) / 10) (Danckwerts 1953). */
const time = Float64Array.from({ length: 4001 }, (_, i) => 5 + i * 0.05);
const cumulative = time.map((t) => 1 - Math.exp(-(t - 5) / 10));
const at = (share: number) => 5 - 10 * Math.log(1 - share);
const residence: Residence = {
  ...{ mean: 15, min: 5, t50: at(0.5), t95: at(0.95), t99: at(0.99), washout99: at(0.99), washout999: at(0.999) },
  ...{ time, cumulative, parts: [] },
  partCurves: [{ part: 'channel', time, cumulative }],
};

test('what has left follows the distribution, from nothing before the first melt to 99.9 %', () => {
  const [whole, channel] = residenceSeries(residence).filter(({ id }) => id === 'residence');
  expect([whole?.name, channel?.name]).toEqual(['whole path', 'channel']);
  expect(whole?.y[0]).toBe(0);
  expect(whole?.y.at(-1)).toBeCloseTo(99.9, 2);
  whole?.x.forEach((t, i) => {
    if (t > 5) expect(whole.y[i]).toBeCloseTo(100 * (1 - Math.exp(-(t - 5) / 10)), 1);
  });
});

test('what leaves per second adds up to everything and is the slope of what has left', () => {
  const leaving = residenceSeries(residence).find(({ id }) => id === 'leaving');
  let sum = 0;
  const [x, y] = [leaving?.x ?? [], leaving?.y ?? []];
  for (let i = 1; i < x.length; i++) {
    sum += (((y[i] ?? 0) + (y[i - 1] ?? 0)) / 2) * ((x[i] ?? 0) - (x[i - 1] ?? 0));
  }
  expect(sum).toBeGreaterThan(97);
  expect(sum).toBeLessThan(102);
  const near = x.findIndex((t) => t > 20);
  // E(20 s) = exp(-1.5) / 10
  expect(y[near]).toBeCloseTo(10 * Math.exp(-1.5), 1);
});

test('where nothing flows there are no curves', () => {
  expect(residenceSeries({ ...residence, mean: Number.NaN })).toEqual([]);
});
