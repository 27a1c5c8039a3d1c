import { describe, expect, test } from 'vitest';
import type { Design } from '../../../core/design/types.ts';
import { buildStations } from '../../../core/geometry/stations.ts';
import { meltEnd } from '../../../core/melting/meltFront.ts';
import { meltProgress } from '../../../core/melting/progress.ts';
import type { MeltingCase, MeltingChoice } from '../../../core/melting/types.ts';
import { loadDesign } from '../../helpers/projects.ts';
import { evenScrew } from '../feed/made.ts';

const demo = loadDesign('demo', 'C');
const { melting } = demo.material;
const opens = demo.barrel.feedOpening.start + demo.barrel.feedOpening.length;

/** Cold under the opening, warm behind it, K. */
function caseOf(design: Design, above: number, change: Partial<MeltingCase> = {}): MeltingCase {
  const stations = buildStations(design, 8);
  const wall = stations.z.map((z) => (z < opens ? 300 : melting + above));
  const walls = { barrel: wall, screw: wall };
  const dissipation = new Float64Array(stations.count - 1);
  return { design, stations, walls, screwSpeed: 2, massFlow: 1e-4, dissipation, ...change };
}

const grains = (d50: number, design = demo): Design => ({
  ...design,
  material: { ...design.material, grain: { ...design.material.grain, d50 } },
});
const steps = (from: number, to: number, count: number) =>
  Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);

/** Power of the film and heat of the granulate at the end, W, and the front, m (the screw's end where there is none). */
function figures(c: MeltingCase, choice?: MeltingChoice) {
  const melt = meltProgress(c, choice);
  const { z, count } = c.stations;
  const power = melt.filmPower.reduce((sum, value, i) => sum + value * (z[i + 1] - z[i]), 0);
  const heat = c.massFlow * (melt.enthalpy[count - 1] - melt.enthalpy[0]);
  return { power, heat, front: meltEnd(c.stations, melt) ?? z[count - 1], molten: melt.molten[count - 1] };
}

/** Largest change between neighbours over the largest value. */
const jump = (values: readonly number[]) =>
  Math.max(...values.slice(1).map((value, i) => Math.abs(value - values[i]))) / Math.max(...values);

describe('nothing jumps, and goes the right way', () => {
  test('wall through melting: a film takes its power up in kelvins, a hotter wall gives more heat', () => {
    const at = steps(-1, 15, 40).map((above) => figures(caseOf(demo, above)));
    expect(jump(at.map(({ heat }) => heat))).toBeLessThan(0.05);
    expect(jump(at.map(({ power }) => power))).toBeLessThan(0.15);
    expect(at[40].power).toBeGreaterThan(1);
    for (let i = 1; i < at.length; i++) expect(at[i].heat).toBeGreaterThan(at[i - 1].heat * (1 - 1e-6));
    // close to melting a film is nothing beside what it is when hot
    expect(figures(caseOf(demo, 0.1)).power).toBeLessThan(0.01 * at[40].power);
  });

  test('grain: coarser granules melt no earlier', () => {
    const at = steps(1.5e-3, 4e-3, 24).map((d50) => figures(caseOf(grains(d50), 30)));
    expect(jump(at.map(({ front }) => front))).toBeLessThan(0.02);
    expect(jump(at.map(({ power }) => power))).toBeLessThan(0.1);
    for (let i = 1; i < at.length; i++) expect(at[i].front).toBeGreaterThan(at[i - 1].front - 1e-5);
  });

  test('depth: front and power change smoothly', () => {
    const at = steps(2e-3, 5e-3, 24).map((depth) => figures(caseOf(evenScrew(depth), 30)));
    expect(jump(at.map(({ front }) => front))).toBeLessThan(0.03);
    expect(jump(at.map(({ power }) => power))).toBeLessThan(0.1);
  });

  test('a feeder that offers more and more becomes a full hopper', () => {
    const fed = (starvedRate: number | null) => ({ ...demo, process: { ...demo.process, starvedRate } });
    const at = steps(1, 1.15, 15).map((over) => figures(caseOf(fed(over * 1e-4), 30)));
    const flooded = figures(caseOf(fed(null), 30));
    expect(at[0].front).toBeGreaterThan(flooded.front + 1e-4);
    expect(figures(caseOf(fed(1), 30))).toEqual(flooded);
    expect(at[15]).toEqual(flooded);
    expect(jump(at.map(({ front }) => front))).toBeLessThan(0.03);
    for (let i = 1; i < at.length; i++) expect(at[i].front).toBeLessThan(at[i - 1].front + 1e-5);
  });

  test('speed to zero: never behind conduction, and conduction in the end', () => {
    for (const above of [5, 30]) {
      const { front } = figures(caseOf(demo, above, { massFlow: 4e-5 }), 'conduction');
      const at = steps(-3, 1, 20).map((log) =>
        figures(caseOf(demo, above, { massFlow: 4e-5, screwSpeed: 10 ** log }), 'film'),
      );
      expect(at[0].front).toBeCloseTo(front, 5);
      for (const one of at) expect(one.front).toBeLessThan(front + 1e-4);
      for (let i = 1; i < at.length; i++) expect(at[i].front).toBeLessThan(at[i - 1].front + 1e-4);
    }
  });
});

test('a film begins to be dragged off smoothly where loose granules are warm already', () => {
  const loose = evenScrew(5e-3, loadDesign('hdpe-regrind'));
  const flow = { massFlow: 1.5e-4 };
  const conduction = figures(caseOf(loose, 40, flow), 'conduction').front;
  const at = steps(-1.4, -0.4, 60).map(
    (log) => figures(caseOf(loose, 40, { ...flow, screwSpeed: 10 ** log }), 'film').front,
  );
  expect(at[0]).toBeCloseTo(conduction, 5);
  expect(at[60]).toBeLessThan(0.95 * conduction);
  // four per cent more speed a step
  expect(jump(at)).toBeLessThan(0.02);
  for (let i = 1; i < at.length; i++) expect(at[i]).toBeLessThan(at[i - 1] + 1e-4);
});

test('first melt and softening lie within their reach, and not behind the end of melting', () => {
  for (const massFlow of [1e-12, 1e-6, 5e-5, 1e-4]) {
    for (const choice of ['suited', 'conduction', 'film'] as const) {
      const c = caseOf(demo, 30, { massFlow });
      const melt = meltProgress(c, choice);
      const end = meltEnd(c.stations, melt) ?? Number.POSITIVE_INFINITY;
      expect(melt.meltsFrom ?? 0).toBeLessThanOrEqual(end + 1e-12);
      expect(melt.softensAt ?? 0).toBeLessThanOrEqual((melt.meltsFrom ?? 0) + 1e-12);
    }
  }
  const first = (massFlow: number) => meltProgress(caseOf(demo, 30, { massFlow }), 'conduction').meltsFrom ?? 1;
  const places = steps(3e-5, 4e-5, 20).map(first);
  expect(jump(places)).toBeLessThan(0.015);
  for (let i = 1; i < places.length; i++) expect(places[i]).toBeGreaterThan(places[i - 1]);
});
