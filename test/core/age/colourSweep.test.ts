/** Colour in short, and the limit line. */

import { describe, expect, it } from 'vitest';
import { scaledParts } from '../../../core/age/colourParts.ts';
import { type ColourGlance, glanceOf, keptStretch, layerStep } from '../../../core/age/colourSweep.ts';
import { channelAtoms } from '../../../core/residence/channel.ts';
import { pale, part } from './samples.ts';

const parts = [part(channelAtoms(300))];

describe('colour in short', () => {
  it('layers laid at one speed are alike, at two they differ, either way round', () => {
    const slow = glanceOf(pale, scaledParts(parts, 2)) as ColourGlance;
    const fast = glanceOf(pale, scaledParts(parts, 0.7)) as ColourGlance;
    expect(slow.dE00Mean).toBeGreaterThan(fast.dE00Mean);
    expect(slow.dE00Worst).toBeGreaterThan(slow.dE00Mean);
    expect(layerStep(slow, slow)).toBe(0);
    expect(layerStep(slow, fast)).toBeGreaterThan(1);
    expect(layerStep(slow, fast)).toBeCloseTo(layerStep(fast, slow), 9);
  });

  it('cannot be said without a colour law or parts', () => {
    expect(glanceOf({ ...pale, colourLaw: null }, parts)).toBeNull();
    expect(glanceOf(pale, [])).toBeNull();
  });
});

describe('kept stretch', () => {
  const line = (...values: number[]) => values.map((value, i) => [i, value] as const);

  it.each([
    ['all within', line(1, 1, 1), { from: null, to: null }],
    ['none', line(3, 4, 3), null],
    ['from the start', line(1, 1, 3), { from: null, to: 1.5 }],
    ['to the end', line(4, 1, 1), { from: 2 / 3, to: null }],
    ['in the middle', line(3, 1, 3), { from: 0.5, to: 1.5 }],
    ['the longer of two', line(1, 3, 1, 1, 1, 3), { from: 1.5, to: 4.5 }],
    ['nothing given', line(), null],
  ])('%s', (_, values, expected) => {
    const got = keptStretch(values, 2);
    if (expected === null) expect(got).toBeNull();
    else {
      for (const end of ['from', 'to'] as const) {
        if (expected[end] === null) expect(got?.[end]).toBeNull();
        else expect(got?.[end]).toBeCloseTo(expected[end], 12);
      }
    }
  });
});
