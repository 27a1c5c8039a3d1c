/** Change of colour: shares, times, grams, and what is not known. */

import { describe, expect, it } from 'vitest';
import { changeDifference, changeOver } from '../../../core/age/changeOver.ts';
import type { Lab } from '../../../core/age/cielab.ts';
import { deltaE2000 } from '../../../core/age/deltaE2000.ts';
import { blendedLab, mixedLab } from '../../../core/age/mixedLab.ts';

const [dark, light]: [Lab, Lab] = [
  [25, 5, 5],
  [92, 0, 4],
];
/** F = 1 - exp(-t/30), cut at a share. */
function tank(cut = 1 - 1e-7) {
  const cumulative = Float64Array.from({ length: 3001 }, (_, i) => cut * (1 - (1 - i / 3000) ** 4));
  return { time: cumulative.map((share) => -30 * Math.log(1 - share)), cumulative };
}
const flow = 1e-4;

describe('stirred tank', () => {
  const got = changeOver(tank(), flow, dark, light);

  it('reaches purities at tau ln(1/w), in grams by the flow', () => {
    expect(got.to99.time).toBeCloseTo(30 * Math.log(100), 2);
    expect(got.to999.time).toBeCloseTo(30 * Math.log(1000), 2);
    expect(got.to99.mass).toBeCloseTo(flow * 30 * Math.log(100), 6);
  });

  it('reaches the colour where its mixture is dE00 1 off, and the time fits that share', () => {
    const share = got.toColour.oldShare as number;
    expect(changeDifference(share, dark, light)).toBeCloseTo(1, 9);
    expect(got.toColour.time).toBeCloseTo(30 * Math.log(1 / share), 2);
  });

  it('fades along the curve from old to new', () => {
    expect(got.dE00[0]).toBeCloseTo(deltaE2000(light, dark), 9);
    for (let i = 1; i < got.time.length; i++) expect(got.dE00[i]).toBeLessThanOrEqual(got.dE00[i - 1] + 1e-9);
    expect(got.oldShare[1000]).toBeCloseTo(Math.exp(-got.time[1000] / 30), 6);
  });

  it('takes the worse of streaks and blend: dark in pale shows as a blend, pale in dark as streaks', () => {
    const share = 0.02;
    const streaks = (own: Lab, rest: Lab) => deltaE2000(rest, mixedLab(share, own, rest));
    const blend = (own: Lab, rest: Lab) => deltaE2000(rest, blendedLab(share, own, rest));
    expect(blend(dark, light)).toBeGreaterThan(2 * streaks(dark, light));
    expect(streaks(light, dark)).toBeGreaterThan(2 * blend(light, dark));
    expect(changeDifference(share, dark, light)).toBe(blend(dark, light));
    expect(changeDifference(share, light, dark)).toBe(streaks(light, dark));
  });
});

describe('pigment blend', () => {
  it('keeps the ends', () => {
    for (const i of [0, 1, 2]) {
      expect(blendedLab(1, dark, light)[i]).toBeCloseTo(dark[i], 9);
      expect(blendedLab(0, dark, light)[i]).toBeCloseTo(light[i], 9);
    }
  });

  /** K/S = (1 - R)²/(2R): 0.05 at R 0.7298, 2.5 at R 0.1459; half and half 1.275 gives R 0.231565 (own arithmetic). */
  it('of two greys adds absorption over scattering', () => {
    const grey = (y: number): Lab => [116 * Math.cbrt(y) - 16, 0, 0];
    const got = blendedLab(0.5, grey(0.145898), grey(0.729844))[0];
    expect(got).toBeCloseTo(grey(0.231565)[0], 2);
  });
});

describe('limits', () => {
  it('the same colour is there at once', () => {
    const same = changeOver(tank(), flow, light, light);
    expect(same.toColour).toMatchObject({ oldShare: 1, time: 0, mass: 0, reason: null });
  });

  it('plug flow changes all at once', () => {
    const plug = { time: Float64Array.of(40, 40, 40), cumulative: Float64Array.of(0, 0.5, 1) };
    const got = changeOver(plug, flow, dark, light);
    expect([got.toColour.time, got.to99.time, got.to999.time]).toEqual([40, 40, 40]);
    expect(got.basis.doubt).toBeNull();
  });

  it('a tail that is not known is said outright', () => {
    const got = changeOver(tank(0.995), flow, dark, light);
    expect(got.to99.time).not.toBeNull();
    expect(got.to999).toMatchObject({ time: null, mass: null });
    expect(got.to999.reason).toContain('how long is not known');
    expect(got.basis.doubt).toContain('0.5');
    expect(got.knownShare).toBeCloseTo(0.995, 12);
  });

  it('nothing flows: nothing washes out', () => {
    const got = changeOver({ time: new Float64Array(), cumulative: new Float64Array() }, 0, dark, light);
    expect(got.to99.reason).toContain('Nothing flows');
  });

  it('a difference of 0 is never met', () => {
    expect(changeOver(tank(), flow, dark, light, 0).toColour).toMatchObject({ oldShare: null, time: null });
  });
});
