import { describe, expect, test } from 'vitest';
import { meanTime, shareCuts } from '../../../core/residence/atoms.ts';
import { channelAtoms, pipeAtoms } from '../../../core/residence/channel.ts';
import { joinResidence } from '../../../core/residence/combine.ts';
import { plugAtoms } from '../../helpers/plugAtoms.ts';

describe('screw channel', () => {
  /** Pinto & Tadmor 1970, closed form (from memory, derived again): theta at F; more of it is in the checks. */
  test('alone: t95 1.709 of the mean', () => {
    const joined = joinResidence([channelAtoms(10)]);
    expect(joined.t95 / 10).toBeCloseTo(1.709, 2);
    expect(joined.mean).toBeCloseTo(10, 6);
  });
});

describe('pipe', () => {
  /** Laminar flow, F = 1 - 1/(4 theta²): t50, t95 = 0.7071, 2.236 of the mean (Levenspiel 1999). */
  test('alone, Newtonian: min 1/2, t50 0.7071, t95 2.236 of the mean', () => {
    const joined = joinResidence([pipeAtoms(4, 1)]);
    expect(joined.min).toBeCloseTo(2, 9);
    expect(Math.abs(joined.t50 / 4 / Math.SQRT1_2 - 1)).toBeLessThan(0.005);
    expect(Math.abs(joined.t95 / 4 / Math.sqrt(5) - 1)).toBeLessThan(0.01);
  });

  test('keeps the mean at volume over flow for every index, and narrows with it', () => {
    const spreads = [1, 0.7, 0.4, 0.2].map((n) => {
      expect(meanTime(pipeAtoms(3, n))).toBeCloseTo(3, 6);
      return joinResidence([pipeAtoms(3, n)]).min;
    });
    expect(spreads).toEqual([...spreads].sort((a, b) => a - b));
  });
});

describe('parts in series', () => {
  const joined = joinResidence([channelAtoms(40), pipeAtoms(6, 0.5), plugAtoms(2)]);

  test('the mean is the sum of the means, the first melt the sum of the firsts', () => {
    expect(joined.mean).toBeCloseTo(48, 5);
    expect(joined.min).toBeCloseTo(30 + (6 * 1.5) / 2.5 + 2, 9);
  });

  test('the curve rises from (min, 0) to 1 with the landmarks on it', () => {
    const { time, cumulative } = joined;
    expect([time[0], cumulative[0]]).toEqual([joined.min, 0]);
    expect(cumulative[cumulative.length - 1]).toBe(1);
    for (let i = 1; i < time.length; i++) {
      expect(time[i]).toBeGreaterThanOrEqual(time[i - 1]);
      expect(cumulative[i]).toBeGreaterThan(cumulative[i - 1]);
    }
    expect(joined.min).toBeLessThan(joined.t50);
    expect(joined.t50).toBeLessThan(joined.mean);
    expect(joined.mean).toBeLessThan(joined.t95);
    expect(joined.t95).toBeLessThan(joined.t99);
  });

  test('order does not matter', () => {
    const other = joinResidence([plugAtoms(2), pipeAtoms(6, 0.5), channelAtoms(40)]);
    expect(other.t95).toBeCloseTo(joined.t95, 9);
  });

  test('plug flow stays plug flow', () => {
    const plug = joinResidence([plugAtoms(3), plugAtoms(4)]);
    expect([plug.min, plug.t50, plug.t99, plug.mean]).toEqual([7, 7, 7, 7]);
  });
});

test('cuts rise from 0 to 1', () => {
  const cuts = shareCuts(10, 10);
  expect(cuts[0]).toBe(0);
  expect(cuts[cuts.length - 1]).toBe(1);
  for (let i = 1; i < cuts.length; i++) expect(cuts[i]).toBeGreaterThan(cuts[i - 1]);
});
