/** What dead spots shed: mass balance, histories, limits. */

import { describe, expect, it } from 'vitest';
import { rateConstant } from '../../../core/age/arrhenius.ts';
import type { Lab } from '../../../core/age/cielab.ts';
import { colourScale } from '../../../core/age/colour.ts';
import { deltaE2000 } from '../../../core/age/deltaE2000.ts';
import { mixedLab } from '../../../core/age/mixedLab.ts';
import { type HeldSpot, spotBleeds } from '../../../core/age/spotBleed.ts';
import { pale, reference } from './samples.ts';

const scale = colourScale(pale);
if (typeof scale === 'string') throw new Error(scale);
const fresh: Lab = [80, 4, 20];
const flow = 2e-7;

const held = (meanAge: number, volume: number, before = 0, temperature = reference): HeldSpot => ({
  spot: { part: before > 0 ? 'tip' : 'channel', where: 'made up', z: 0.1, volume, meanAge },
  history: {
    before: before > 0 ? [{ duration: before, temperature: reference }] : [],
    within: [{ duration: 1, temperature }],
  },
});
const bleed = (...spots: HeldSpot[]) => spotBleeds(scale, spots, fresh, flow);

describe('one spot', () => {
  it('sheds what flows into it: volume = flow times time held', () => {
    const [own] = bleed(held(500, 1e-7));
    expect(own.share * flow * own.held).toBeCloseTo(1e-7, 16);
    expect(own.shareLow).toBe(own.share / 2);
  });

  it('counts the way there apart: time held is age less way, each at its own temperature', () => {
    const [own] = bleed(held(500, 1e-7, 100, 490));
    expect(own.held).toBeCloseTo(400, 9);
    expect(own.extent).toBeCloseTo(0.01 * 100 + rateConstant(0.01, 80e3, reference, 490) * 400, 9);
  });

  it('has the colour of its extent; streak and mixture follow', () => {
    const [own] = bleed(held(1200, 1e-7));
    const old: Lab = [70.5, 7.4, 26.2];
    for (const i of [0, 1, 2]) expect(own.lab[i]).toBeCloseTo(old[i], 9);
    expect(own.dE00).toBeCloseTo(deltaE2000(fresh, old), 9);
    expect(own.dE00Streak).toBeCloseTo(deltaE2000(fresh, old), 9);
    expect(own.dE00Mixed).toBeCloseTo(deltaE2000(fresh, mixedLab(own.share, old, fresh)), 9);
    // swept through, its exit is twice as old
    expect(own.dE00StreakHigh).toBeCloseTo(deltaE2000(fresh, scale.path.at(24).lab), 9);
  });

  it('younger than the way to it is held for a little at least, and sheds no more than the stream', () => {
    const [own] = bleed(held(50, 1e-4, 100));
    expect(own.held).toBeCloseTo(2.5, 9);
    expect(own.share).toBe(1);
    expect(own.extent).toBeCloseTo(0.01 * 47.5 + 0.01 * 2.5 + 0.01 * 52.5, 1);
  });
});

describe('several', () => {
  it('are sorted by what they do to the mixed stream', () => {
    const all = bleed(held(900, 1e-9), held(900, 1e-7), held(900, 1e-8));
    expect(all.map(({ volume }) => volume)).toEqual([1e-7, 1e-8, 1e-9]);
  });

  it('without volume, age or flow there is nothing to shed', () => {
    expect(bleed(held(0, 1e-7), held(100, 0))).toEqual([]);
    expect(spotBleeds(scale, [held(100, 1e-7)], fresh, 0)).toEqual([]);
  });
});

describe('mixing', () => {
  it('keeps the ends and is nearer to fresh the less of the old there is', () => {
    const old: Lab = [40, 12, 30];
    for (const i of [0, 1, 2]) {
      expect(mixedLab(0, old, fresh)[i]).toBeCloseTo(fresh[i], 9);
      expect(mixedLab(1, old, fresh)[i]).toBeCloseTo(old[i], 9);
    }
    expect(deltaE2000(fresh, mixedLab(0.1, old, fresh))).toBeLessThan(deltaE2000(fresh, mixedLab(0.2, old, fresh)));
  });
});
