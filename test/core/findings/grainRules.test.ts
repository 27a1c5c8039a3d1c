import { describe, expect, test } from 'vitest';
import type { FindingContext } from '../../../core/findings/context.ts';
import { grainRules } from '../../../core/findings/grainRules.ts';
import { changedGrain, demo } from '../feed/made.ts';
import { check, contextOf, soundContext } from './feedContext.ts';

/** The demo's taper with melting moved to a station and softening to a place, m. */
function melting(d90: number, reach: number, softensAt: number | null): FindingContext {
  const context = contextOf(changedGrain({ d90 }));
  const { driven } = context;
  const { state } = driven.point;
  const melt = { ...state.melt, start: { reach, share: 0 }, softensAt };
  return { ...context, driven: { ...driven, point: { ...driven.point, state: { ...state, melt } } } };
}

const { stations } = soundContext.machine;
const at = (z: number) => stations.z.findIndex((each) => each > z);

describe('along the taper', () => {
  test('hard granules that meet too shallow a channel stop it; soft ones are warned of', () => {
    const hard = check(grainRules, 'shallow-before-melt', melting(2.35e-3, at(0.11), 0.109));
    expect(hard?.severity).toBe('stop');
    expect(hard?.z).toBeCloseTo((55 + (55 * 1.45) / 2) / 1000, 6);
    expect(check(grainRules, 'shallow-before-melt', melting(2.35e-3, at(0.11), 0.06))?.severity).toBe('warn');
    expect(check(grainRules, 'shallow-before-melt', melting(2.35e-3, at(0.08), null))).toBeNull();
  });

  test('a single layer of hard granules is noted, once, and not where it already jams or enters badly', () => {
    const tight = melting(2.35e-3, at(0.09), 0.09);
    expect(check(grainRules, 'tight-before-melt', tight)).toMatchObject({ severity: 'note' });
    expect(check(grainRules, 'tight-before-melt', melting(2.35e-3, at(0.09), 0.05))).toBeNull();
    expect(check(grainRules, 'tight-before-melt', melting(2.35e-3, at(0.11), null))).toBeNull();
    expect(check(grainRules, 'tight-before-melt', melting(3e-3, at(0.06), null))).toBeNull();
  });
});

test('long granules must lie along the channel', () => {
  const depth = soundContext.machine.feed?.depth ?? 0;
  const long = (d90: number) => check(grainRules, 'long-granules', contextOf(changedGrain({ d90, aspectRatio: 4 })));
  expect(long(0.51 * depth)).toMatchObject({ severity: 'note', value: depth });
  expect(long(0.49 * depth)).toBeNull();
  expect(long(1.01 * depth)).toBeNull();
});

test('granules soft as they come in, and passages narrower than they are', () => {
  const warm = (off: number) => {
    const { process, material } = demo;
    return contextOf({ ...demo, process: { ...process, feedTemperature: material.softening + off } });
  };
  expect(check(grainRules, 'feed-soft', warm(0.1))?.severity).toBe('stop');
  expect(check(grainRules, 'feed-soft', warm(-0.1))).toBeNull();
  const { d90 } = demo.material.grain;
  const outlet = (outletDiameter: number) => contextOf({ ...demo, hopper: { ...demo.hopper, outletDiameter } });
  expect(check(grainRules, 'grain-blocked', outlet(0.99 * d90))?.severity).toBe('stop');
  expect(check(grainRules, 'grain-blocked', outlet(1.01 * d90))).toBeNull();
});

test('fines that get over the flight are warned of from half their size', () => {
  const { radialClearance } = demo.screw;
  const over = (d10: number) => check(grainRules, 'grains-over-flight', contextOf(changedGrain({ d10 })));
  expect(over(1.99 * radialClearance)?.severity).toBe('warn');
  expect(over(2.01 * radialClearance)).toBeNull();
});

test('granules enter where the channel is 1.3 of them deep, badly to 1, and not below', () => {
  const depth = soundContext.machine.feed?.depth ?? 0;
  const entry = (d90: number) => check(grainRules, 'grain-fit', contextOf(changedGrain({ d90 })))?.severity;
  expect(entry(depth / 1.31)).toBeUndefined();
  expect(entry(depth / 1.29)).toBe('warn');
  expect(entry(depth / 0.99)).toBe('stop');
});
