import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { solveChannel } from '../../../core/flow/field/channelSolver.ts';
import { createReach, solveReach } from '../../../core/flow/reach.ts';
import type { FlightProfile } from '../../../core/geometry/flightProfile.ts';
import { lawStep, type NodeRequest, nodeAt, solveNodes } from '../../../core/path/channelNode.ts';
import { channelShape } from '../../../core/path/channelShape.ts';
import { binCount, flowCuts, slitBins, wideChannelBins } from '../../../core/path/dwellBins.ts';
import { createFieldCache } from '../../../core/path/fieldCache.ts';
import { gridPlaces, lawFamily } from '../../../core/path/lawFamily.ts';

/** Square channel of the demo's first screw; fillet in m. */
function profile(fillet = 0, floorRadius = 4e-3): FlightProfile {
  const flat = { lead: 14e-3, starts: 1, pitch: 14e-3, floorRadius, flightRadius: 7e-3, halfLand: 1e-3, flank: 0 };
  return { ...flat, fillet, filletHeight: fillet, halfFoot: 1e-3, halfBase: 1e-3 + fillet };
}

const newtonian = lawFamily({ model: 'newtonian', viscosity: 900 });
const cross = lawFamily({ model: 'cross', zeroShearViscosity: 2e4, criticalStress: 1e5, index: 0.25 });
const request = (change: Partial<NodeRequest> = {}): NodeRequest => ({
  shape: channelShape(profile(), 7e-3),
  family: newtonian,
  law: 0,
  gradient: 1,
  ...change,
});

const meanOf = (dwell: Float64Array) =>
  dwell.reduce((sum, value, i) => sum + value * (flowCuts[i + 1] - flowCuts[i]), 0);

describe('factors', () => {
  for (const [name, change] of [
    ['Newtonian', {}],
    ['shear-thinning', { family: cross, law: -1 }],
    ['shear-thinning, near closed', { family: cross, law: -2, gradient: 3 }],
  ] as const) {
    test(`${name}: the corrected unrolled channel carries the solved flow`, () => {
      const asked = request(change);
      const { factors, converged } = nodeAt(createFieldCache(), asked);
      expect(converged).toBe(true);
      const { reach: shape, section } = asked.shape;
      const law = asked.family.turningAt(Math.exp(asked.law * lawStep));
      const screwSpeed = shape.depth / (2 * Math.PI);
      const closed = solveReach(createReach(shape), law, screwSpeed, 0).gradient;
      const gradient = asked.gradient * 0.25 * closed;
      const solved = solveChannel(section, law, { barrelSpeed: shape.depth }, gradient);
      const corrected = {
        ...createReach(shape),
        dragFactor: factors.drag,
        pressureFactor: factors.pressure,
        powerFactor: factors.power,
      };
      const unrolled = solveReach(corrected, law, screwSpeed, solved.flowRate);
      expect(Math.abs(unrolled.gradient / gradient - 1)).toBeLessThan(0.01);
      const open = solveChannel(section, law, { barrelSpeed: shape.depth }, 0);
      expect(Math.abs(unrolled.openFlow / open.flowRate - 1)).toBeLessThan(0.003);
      // the strip left out at the flanks holds little of a thinning melt's power, a quarter of a Newtonian one's
      expect(unrolled.channelPower / solved.barrelPower).toBeGreaterThan(asked.family === cross ? 0.93 : 0.7);
      expect(unrolled.channelPower / solved.barrelPower).toBeLessThan(1.02);
    });
  }

  test('Newtonian factors do not depend on the gradient', () => {
    const cache = createFieldCache();
    const [open, loaded] = [0, 3].map((gradient) => nodeAt(cache, request({ gradient })).factors);
    expect(loaded.pressure).toBeCloseTo(open.pressure, 6);
    expect(loaded.drag).toBeCloseTo(open.drag, 9);
  });

  test('agree with independent helical solutions (test/reference/flow/caseD.json)', () => {
    const { entries } = JSON.parse(readFileSync(new URL('../../reference/flow/caseD.json', import.meta.url), 'utf8'));
    const entry = entries[0];
    const { D_barrel_m, D_root_m, pitch_m, flight_axial_width_m, N_rev_per_s, material } = entry.inputs;
    const radius = D_barrel_m / 2;
    const half = flight_axial_width_m / 2;
    const turned: FlightProfile = {
      ...profile(0, D_root_m / 2),
      ...{ lead: pitch_m, pitch: pitch_m, flightRadius: radius, halfLand: half, halfFoot: half, halfBase: half },
    };
    const shape = channelShape(turned, radius);
    const { factors } = nodeAt(createFieldCache(), request({ shape, gradient: 2 }));
    const size = (value: number) => value * radius;
    const { depth, rootRadius, widthBarrel, widthMean, land } = shape.reach;
    const actual = {
      ...shape.reach,
      ...{ rootRadius: size(rootRadius), barrelRadius: radius, depth: size(depth) },
      ...{ widthBarrel: size(widthBarrel), widthMean: size(widthMean), land: size(land) },
    };
    const reach = { ...createReach(actual), dragFactor: factors.drag, pressureFactor: factors.pressure };
    const law = { model: 'newtonian', viscosity: material.eta } as const;
    for (const row of entry.rows) {
      const { gradient, openFlow } = solveReach(reach, law, N_rev_per_s, row.Q_m3_per_s);
      expect(Math.abs(gradient - row.dpdz_axial_Pa_per_m)).toBeLessThan(0.01 * entry.rows[0].dpdz_axial_Pa_per_m);
      expect(Math.abs(openFlow / entry.rows.at(-1).Q_m3_per_s - 1)).toBeLessThan(0.01);
    }
  });
});

describe('dwell', () => {
  test('every distribution has a mean of one', () => {
    for (const bins of [wideChannelBins(), slitBins(0.4), nodeAt(createFieldCache(), request()).bins]) {
      expect(bins?.dwell.length).toBe(binCount);
      expect(meanOf(bins?.dwell ?? new Float64Array())).toBeCloseTo(1, 9);
    }
  });

  test('a slit of a Newtonian melt: fastest at two thirds of the mean', () => {
    const { dwell, shortest } = slitBins(1);
    expect(shortest).toBeCloseTo(2 / 3, 12);
    expect(dwell[0]).toBeGreaterThan(2 / 3);
    expect(dwell[0]).toBeLessThan(0.67);
  });

  test('a root fillet leaves less old melt', () => {
    const cache = createFieldCache();
    const olderThan3 = (fillet: number) => {
      const { bins } = nodeAt(cache, request({ shape: channelShape(profile(fillet), 7e-3) }));
      if (!bins) throw new Error('no forward flow');
      return bins.dwell.reduce((sum, dwell, i) => (dwell > 3 ? sum + dwell * (flowCuts[i + 1] - flowCuts[i]) : sum), 0);
    };
    expect(olderThan3(1.2e-3)).toBeLessThan(0.95 * olderThan3(0));
  });

  test('with closed discharge there is no distribution', () => {
    expect(nodeAt(createFieldCache(), request({ gradient: 6 })).bins).toBeNull();
  });
});

describe('table', () => {
  test('a point depends on its place alone, not on what was solved before', () => {
    const [alone, among] = [createFieldCache(), createFieldCache()];
    solveNodes(
      among,
      [0, 1, 2].map((gradient) => request({ family: cross, law: -1, gradient })),
    );
    const asked = request({ family: cross, law: -1, gradient: 2 });
    const [first, second] = [nodeAt(alone, asked).factors, nodeAt(among, asked).factors];
    expect(second.pressure / first.pressure).toBeCloseTo(1, 4);
    expect(second.power / first.power).toBeCloseTo(1, 4);
  });

  test('asked again, nothing is solved', () => {
    const cache = createFieldCache();
    nodeAt(cache, request());
    const { misses } = cache.channel;
    nodeAt(cache, request());
    expect(cache.channel.misses).toBe(misses);
  });

  test('between its points factors bend little: half-way over two steps they miss by under 2 %, so by a quarter of that over one', () => {
    const cache = createFieldCache();
    const at = (law: number) => nodeAt(cache, request({ family: cross, law })).factors.pressure;
    // half-way in ln between -2 and 0 lies -1
    expect(Math.abs((at(-2) + at(0)) / 2 / at(-1) - 1)).toBeLessThan(0.02);
  });

  test('grid weights add up to one and meet the points', () => {
    expect(gridPlaces(2)).toEqual([{ index: 2, weight: 1 }]);
    const places = gridPlaces(-1.25);
    expect(places.map(({ index }) => index)).toEqual([-2, -1]);
    expect(places.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
  });
});
