import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { archingRisk, cohesiveArch, largestGrain } from '../../../core/feed/arching.ts';
import { coneStress, internalFriction, janssenStress, throatPressure } from '../../../core/feed/bin.ts';
import { flowability, hopperFlow, massFlowLimit, packsWhenShaken } from '../../../core/feed/flowKind.ts';
import { beverlooDischarge, dischargeDoubts, hopperState, slotDischarge } from '../../../core/feed/hopper.ts';
import { changedGrain, changedHopper, changedMaterial, changedOpening, demo } from './made.ts';

const radians = Math.PI / 180;
const round = (width: number) => ({ width, length: width });
const still = { aspectRatio: 1, agitation: 'none' } as const;

test('without wall friction the stress in a tube is the weight of the column', () => {
  expect(janssenStress(5494, 0.015, 0, 0.5, 0.2).vertical).toBeCloseTo(5494 * 0.2, 6);
});

describe('discharge', () => {
  test('lets nothing through an outlet of k grains', () => {
    expect(beverlooDischarge(0.0042, 560, 0.003)).toBe(0);
  });

  test('a slot lets out nothing at k grains of width, and grows in proportion to its free length', () => {
    expect(slotDischarge(0.1, 0.0042, 600, 0.003)).toBe(0);
    const free = (length: number) => slotDischarge(length, 0.02, 600, 0.003) / (length - 0.0042);
    expect(free(0.2)).toBeCloseTo(free(0.1), 12);
  });

  test('the narrower of outlet and feed opening counts, and is named', () => {
    expect(hopperState(changedHopper({ outletDiameter: 0.008 })).bottleneck).toBe('outlet');
    const narrow = hopperState(changedOpening({ width: 0.004 }));
    expect(narrow.bottleneck).toBe('opening');
    expect(narrow.discharge).toBeLessThan(hopperState(demo).discharge / 10);
  });

  test('says where the law is doubtful: narrow hopper, few grains, long or cohesive ones', () => {
    const doubts = (design: typeof demo) => dischargeDoubts(design).filter(Boolean).length;
    expect(doubts(demo)).toBe(0);
    expect(doubts(changedHopper({ wallHalfAngle: 0 }))).toBe(1);
    expect(doubts(changedHopper({ outletDiameter: 0.01 }))).toBe(1);
    expect(doubts(changedGrain({ aspectRatio: 2 }))).toBe(1);
    expect(doubts(changedMaterial({ unconfinedStrength: 1000 }))).toBe(1);
  });

  test('never decreases with the outlet, never increases with the grain', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 0.1 }), fc.double({ min: 1e-4, max: 0.01 }), (outlet, grain) => {
        if (Number.isNaN(outlet + grain)) return;
        const flow = beverlooDischarge(outlet, 600, grain);
        expect(beverlooDischarge(outlet * 1.1, 600, grain)).toBeGreaterThanOrEqual(flow);
        expect(beverlooDischarge(outlet, 600, grain * 1.1)).toBeLessThanOrEqual(flow);
      }),
      { seed: 7, numRuns: 50 },
    );
  });
});

describe('arches of coarse grains', () => {
  test.each([
    [0.9, 'blocked'],
    [4.8, 'high'],
    [5, 'some'],
    [6.1, 'low'],
    [50, 'low'],
  ] as const)('a round outlet of %s grains: %s, and never none', (ratio, risk) => {
    expect(archingRisk(round(ratio), 1, still)).toMatchObject({ risk, ratio });
  });

  test('a slot three widths long wants half, and no width of it is beyond jamming', () => {
    expect(archingRisk({ width: 4, length: 12 }, 1, still)).toMatchObject({ wanted: 3, critical: null, risk: 'low' });
    expect(archingRisk({ width: 4, length: 8 }, 1, still)).toMatchObject({ wanted: 4.5, risk: 'some' });
    expect(archingRisk({ width: 4, length: 4 }, 1, still).risk).toBe('high');
  });

  test('long grains jam earlier; shaken ones run on, in bursts, down to one grain', () => {
    expect(archingRisk(round(5.5), 1, { aspectRatio: 3, agitation: 'none' }).risk).toBe('high');
    expect(archingRisk(round(5.5), 1, still).risk).toBe('some');
    expect(archingRisk(round(1.2), 1, { ...still, agitation: 'vibration' })).toMatchObject({
      risk: 'some',
      critical: 1,
    });
    expect(archingRisk(round(1.2), 1, { ...still, agitation: 'stirrer' }).risk).toBe('high');
  });

  test('the largest dimension grows with the aspect ratio', () => {
    expect(largestGrain(changedGrain({ d90: 2e-3, aspectRatio: 4 }).material)).toBeCloseTo(4e-3, 12);
  });
});

describe('cohesive arches', () => {
  test('an unknown strength is taken as free-flowing, and that is said', () => {
    expect(cohesiveArch(changedMaterial({ unconfinedStrength: null }))).toEqual({
      outlet: 0,
      opening: 0,
      assumed: true,
    });
    expect(cohesiveArch(changedMaterial({ unconfinedStrength: 0 }))).toMatchObject({ outlet: 0, assumed: false });
  });

  test('an opening three widths long needs about half of what a short one does', () => {
    const sticky = changedMaterial({ unconfinedStrength: 100 });
    const opening = (length: number) =>
      cohesiveArch({ ...sticky, barrel: { ...sticky.barrel, feedOpening: { start: 0, width: 0.01, length } } }).opening;
    expect(opening(0.03) / opening(0.01)).toBeCloseTo(0.5, 12);
  });
});

describe('stress', () => {
  test('a tube: the slice balance holds, and no stress is above the column’s weight', () => {
    const at = (depth: number) => janssenStress(6000, 0.015, 0.3, 0.5, depth);
    for (const depth of [0.01, 0.05, 0.3, 3]) {
      const slope = (at(depth + 1e-5).vertical - at(depth - 1e-5).vertical) / 2e-5;
      expect(slope).toBeCloseTo(6000 - at(depth).wallShear / 0.015, 2);
      expect(at(depth).vertical).toBeLessThan(6000 * depth);
    }
    expect(at(100).vertical).toBeCloseTo((6000 * 0.015) / (0.3 * 0.5), 6);
  });

  test('a cone: weight of the column without wall friction, less with it, none at surface and apex', () => {
    const at = (friction: number, above: number) => coneStress(6000, 20 * radians, friction, 0.5, above, 0.2);
    expect(at(0, 0.05)).toBeCloseTo(6000 * 0.15, 9);
    expect(at(0.1, 0.05)).toBeLessThan(at(0, 0.05));
    expect(at(0.3, 0.05)).toBeLessThan(at(0.1, 0.05));
    expect(at(0.3, 0.2)).toBe(0);
    expect(at(0.3, 0)).toBe(0);
    const slope = Math.tan(20 * radians);
    const near = slope / 1.6;
    expect(at(near * (1 + 1e-8), 0.05) / at(near * (1 + 1e-4), 0.05)).toBeCloseTo(1, 3);
  });

  test('the slices of the cone are in balance', () => {
    const at = (above: number) => coneStress(6000, 20 * radians, 0.3, 0.5, above, 0.2);
    const n = (1.6 * 0.3) / Math.tan(20 * radians);
    for (const above of [0.02, 0.1, 0.18]) {
      const slope = (at(above + 1e-6) - at(above - 1e-6)) / 2e-6;
      expect((above * slope) / (n * at(above) - 6000 * above)).toBeCloseTo(1, 5);
    }
  });

  test('a wall too flat to slide along mobilises only part of its friction', () => {
    const flat = (friction: number) => coneStress(6000, 60 * radians, friction, 0.5, 0.02, 0.2);
    expect(flat(0.5)).toBe(flat(1));
    expect(flat(0.05)).toBeGreaterThan(flat(0.5));
  });

  test('hardly presses on the screw: less than its own height of granules', () => {
    for (const wallHalfAngle of [0, 0.01, 0.1, 0.5, 1.3]) {
      const pressure = throatPressure(changedHopper({ wallHalfAngle }));
      expect(pressure).toBeGreaterThan(0);
      expect(pressure).toBeLessThanOrEqual(demo.material.bulkDensity * 9.81 * demo.hopper.height);
    }
  });

  test('internal friction as given, else the angle of repose, else assumed', () => {
    const from = (internal: number | null, repose: number | null) =>
      internalFriction(changedMaterial({ internalFriction: internal, angleOfRepose: repose }).material);
    expect(from(0.7, 0.5)).toEqual({ angle: 0.7, from: 'given' });
    expect(from(null, 0.5)).toEqual({ angle: 0.5, from: 'repose' });
    expect(from(null, null)).toMatchObject({ from: 'assumed' });
  });
});

describe('how it runs', () => {
  test('a wall rougher than the granulate inside lets nothing slide; a smooth one does at a wide angle', () => {
    expect(massFlowLimit(30 * radians, 31 * radians)).toBe(0);
    expect(massFlowLimit(0, 0)).toBe(0);
    expect(massFlowLimit(30 * radians, 0)).toBeGreaterThan(50 * radians);
  });

  test('funnel flow from 3 degrees before the limit', () => {
    const { limit } = hopperFlow(demo);
    expect(hopperFlow(changedHopper({ wallHalfAngle: limit - 1e-6 })).kind).toBe('mass');
    expect(hopperFlow(changedHopper({ wallHalfAngle: limit + 1e-6 })).kind).toBe('funnel');
  });

  test.each([
    [null, null],
    [28, 'very free'],
    [38, 'free'],
    [45, 'fair'],
    [45.1, 'cohesive'],
    [60, 'very cohesive'],
  ] as const)('an angle of repose of %s° is %s', (angle, band) => {
    expect(flowability(angle === null ? null : angle * radians)).toBe(band);
  });

  test('shaking packs what is fine or sticky, and not dry pellets', () => {
    expect(packsWhenShaken(demo)).toBe(false);
    expect(packsWhenShaken(changedGrain({ d10: 2e-4 }))).toBe(true);
    expect(packsWhenShaken(changedMaterial({ unconfinedStrength: 50 }))).toBe(true);
  });
});
