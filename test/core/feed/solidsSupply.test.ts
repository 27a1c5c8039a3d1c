import { expect, test } from 'vitest';
import { hopperState } from '../../../core/feed/hopper.ts';
import { backedUp, offeredRate } from '../../../core/feed/solidsSupply.ts';
import { demo } from './made.ts';

test('offered: what the hopper lets out, or what a feeder meters', () => {
  const { discharge } = hopperState(demo);
  const fed = (starvedRate: number | null) =>
    offeredRate({ ...demo, process: { ...demo.process, starvedRate } }) / discharge;
  expect([fed(null), fed(0.3 * discharge), fed(3 * discharge)]).toEqual([1, 0.3, 1]);
});

test('granules back up with any surplus, smoothly, and not without', () => {
  expect([backedUp(1, 1), backedUp(0.5, 1), backedUp(2, 1), backedUp(1, 0)]).toEqual([0, 0, 1, 1]);
  expect(backedUp(1.02, 1)).toBeGreaterThan(0);
  expect(backedUp(1.05, 1)).toBeGreaterThan(backedUp(1.04, 1));
  expect(backedUp(1.05, 1) - backedUp(1.04, 1)).toBeLessThan(0.2);
});
