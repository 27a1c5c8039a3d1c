import { describe, expect, test } from 'vitest';
import type { Design } from '../../../core/design/types.ts';
import { buildStations } from '../../../core/geometry/stations.ts';
import { drainSpeed } from '../../../core/melting/drainage.ts';
import { filmWeight } from '../../../core/melting/filmCriterion.ts';
import { engagementOf, meltEnd, meltingRange } from '../../../core/melting/meltFront.ts';
import { meltProgress } from '../../../core/melting/progress.ts';
import { type MeltingCase, meltingModel } from '../../../core/melting/types.ts';
import { loadDesign } from '../../helpers/projects.ts';

const demo = loadDesign('demo', 'C');

function caseOf(design: Design, change: Partial<MeltingCase> = {}): MeltingCase {
  const stations = buildStations(design, 8);
  const { start, length } = design.barrel.feedOpening;
  const wall = stations.z.map((z) => (z < start + length + 0.004 ? 300 : design.material.melting + 30));
  return {
    design,
    stations,
    walls: { barrel: wall, screw: wall },
    screwSpeed: 1,
    massFlow: 5e-5,
    dissipation: new Float64Array(stations.count - 1),
    ...change,
  };
}
const grains = (d50: number): Design => ({
  ...demo,
  material: { ...demo.material, grain: { ...demo.material.grain, d50 } },
});
const films = (c: MeltingCase) => meltProgress(c).model.includes(meltingModel.film);

describe('a film is computed', () => {
  test('where a bed of grains fills the channel, not where single grains roll in it', () => {
    expect(films(caseOf(grains(2e-3)))).toBe(true);
    expect(films(caseOf(grains(3.5e-3)))).toBe(false);
  });

  test('not where metered feed leaves the channel loose', () => {
    const metered = { ...demo, process: { ...demo.process, starvedRate: 5e-6 } };
    expect(films(caseOf(metered, { massFlow: 5e-6 }))).toBe(false);
    // offered more than is taken, and just as much as a lead per turn carries
    expect(films(caseOf(metered, { massFlow: 4e-6 }))).toBe(true);
    const reach = 35;
    const carries = ({ design, stations, screwSpeed }: MeltingCase) =>
      design.material.bulkDensity * stations.freeArea[reach] * stations.lead[reach] * screwSpeed;
    const weight = (share: number) => {
      const c = caseOf(demo);
      const massFlow = share * carries(c);
      const full = { ...demo, process: { ...demo.process, starvedRate: massFlow } };
      const { z, depth, barrelRadius, rootRadius } = c.stations;
      const middle = { depth: depth[reach], barrelRadius: barrelRadius[reach], rootRadius: rootRadius[reach] };
      const at = { reach, from: z[reach], length: 1e-3, ...middle, wall: demo.material.melting + 30, core: 400 };
      return filmWeight({ ...c, design: full, massFlow }, at, 'suited');
    };
    expect(weight(0.7)).toBe(0);
    expect(weight(0.9)).toBeGreaterThan(0);
    expect(weight(1)).toBeGreaterThan(weight(0.9));
  });

  test('not where the melt is thin and sinks into the bed', () => {
    expect(films(caseOf(loadDesign('wax-head')))).toBe(false);
    const thin = { ...demo.material, viscosityLaw: () => ({ model: 'newtonian', viscosity: 0.05 }) as const };
    expect(films(caseOf({ ...demo, material: thin }))).toBe(false);
  });
});

test('draining: ten times the viscosity, a tenth of the speed; suction rules fine grains, weight coarse ones', () => {
  const bed = { grain: 2e-3, packing: 0.6, depth: 3e-3, meltDensity: 1000, surfaceTension: 0.03 };
  expect(drainSpeed(bed, 10) / drainSpeed(bed, 1)).toBeCloseTo(0.1, 9);
  const heavy = { ...bed, surfaceTension: 0 };
  expect(drainSpeed({ ...heavy, grain: 4e-3 }, 1) / drainSpeed(heavy, 1)).toBeCloseTo(4, 9);
  const fine = { ...bed, grain: 1e-4 };
  expect(drainSpeed({ ...fine, grain: 2e-4 }, 1) / drainSpeed(fine, 1)).toBeCloseTo(2, 1);
  // Kozeny–Carman by hand: 4e-6 x 0.064 / (180 x 0.36) x 9810
  expect(drainSpeed(heavy, 1)).toBeCloseTo(((4e-6 * 0.064) / (180 * 0.36)) * 9810, 9);
  for (const packing of [0, 1, 1.2]) expect(Number.isFinite(drainSpeed({ ...bed, packing }, 1))).toBe(true);
});

describe('front and flights', () => {
  test('the range spans both models and holds the suited one', () => {
    const c = caseOf(demo);
    const range = meltingRange(c);
    expect(range.suited ?? 0).toBeGreaterThanOrEqual(range.film ?? 1);
    expect(range.suited ?? 1).toBeLessThanOrEqual(range.conduction ?? 0);
    expect(range.earliest).toBe(Math.min(range.film ?? 0, range.conduction ?? 0));
    expect(range.latest).toBe(Math.max(range.film ?? 0, range.conduction ?? 0));
    const cold = meltingRange(caseOf(demo, { massFlow: 1 }));
    expect(cold).toMatchObject({ suited: null, conduction: null, film: null, earliest: null, latest: null });
  });

  test('flights that end behind the front turn in melt; before it they leave granules', () => {
    const c = caseOf(demo);
    const good = meltProgress(c);
    const { beyond, unmelted, front, flightEnd } = engagementOf(c.stations, good);
    expect(front).toBe(meltEnd(c.stations, good));
    expect(beyond).toBeCloseTo((flightEnd ?? 0) - (front ?? 0), 12);
    expect(beyond).toBeGreaterThan(0.02);
    expect(unmelted).toBe(0);
    const flood = caseOf(demo, { massFlow: 1e-2 });
    const late = engagementOf(flood.stations, meltProgress(flood));
    expect(late.front).toBeNull();
    expect(late.beyond).toBe(0);
    expect(late.unmelted).toBeGreaterThan(0.8);
  });

  test('a plain tip: melting goes on behind the last flight, and the gap is told', () => {
    const { screw } = demo;
    const [feed, , end] = screw.sections;
    if (feed.kind !== 'flighted') throw new Error('a flight is expected');
    const d = feed.rootDiameterStart;
    const plain = {
      kind: 'plain',
      length: screw.sections[1].length + end.length,
      rootDiameterStart: d,
      rootDiameterEnd: d,
    } as const;
    const c = caseOf({ ...demo, screw: { ...screw, sections: [feed, plain] } }, { massFlow: 9e-5 });
    const { flightEnd, front, beyond, unmelted } = engagementOf(c.stations, meltProgress(c));
    expect(flightEnd).toBeCloseTo(feed.length, 9);
    expect(front ?? 0).toBeGreaterThan(feed.length);
    expect(beyond).toBeCloseTo(feed.length - (front ?? 0), 12);
    expect(unmelted).toBeGreaterThan(0.05);
    const bare = caseOf({ ...demo, screw: { ...screw, sections: [plain] } });
    expect(engagementOf(bare.stations, meltProgress(bare))).toMatchObject({ flightEnd: null, unmelted: 1 });
  });
});
