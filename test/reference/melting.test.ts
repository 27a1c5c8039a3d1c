/**
 * Melting: cases worked from the equations of Tadmor & Klein 1970 (from memory, no page seen). Screw and material figures
 * of the first are remembered from a textbook (from memory), its constant viscosity is ours; all expected values are own
 * arithmetic, done apart from this code.
 */

import { describe, expect, test } from 'vitest';
import { buildStations } from '../../core/geometry/stations.ts';
import { type FilmState, filmThickness, relativeSpeed, solidLeft } from '../../core/melting/dragRemoval.ts';
import { thinnedShear } from '../../core/melting/filmShear.ts';
import { meltProgress } from '../../core/melting/progress.ts';
import { changedMaterial, evenScrew } from '../core/feed/made.ts';

interface MeltingExample {
  readonly name: string;
  readonly diameter: number;
  readonly flight: number;
  readonly depth: number;
  readonly turnsPerMinute: number;
  readonly kgPerHour: number;
  readonly solidDensity: number;
  readonly meltDensity: number;
  readonly conductivity: number;
  readonly wall: number;
  readonly melting: number;
  readonly feed: number;
  readonly heatCapacity: number;
  readonly fusion: number;
  readonly viscosity: number;
  readonly brinkman: number;
  readonly rate: number;
  readonly film: number;
  readonly number: number;
  readonly length: number;
  readonly turns: number;
}

const examples: readonly MeltingExample[] = [
  {
    name: 'polyethylene, 63.5 mm',
    diameter: 0.0635,
    flight: 0.00635,
    depth: 0.009398,
    turnsPerMinute: 82,
    kgPerHour: 67.1,
    solidDensity: 915.1,
    meltDensity: 790.87,
    conductivity: 0.1817,
    wall: 149,
    melting: 110,
    feed: 20,
    heatCapacity: 2763,
    fusion: 129.8e3,
    viscosity: 800,
    brinkman: 6.225,
    rate: 0.050179,
    film: 0.3571e-3,
    number: 0.0058881,
    length: 3.1922,
    turns: 15.25,
  },
  {
    name: 'small screw, 16 mm',
    diameter: 0.016,
    flight: 0.0016,
    depth: 0.003,
    turnsPerMinute: 60,
    kgPerHour: 1,
    solidDensity: 1250,
    meltDensity: 1100,
    conductivity: 0.2,
    wall: 200,
    melting: 160,
    feed: 25,
    heatCapacity: 2000,
    fusion: 30e3,
    viscosity: 500,
    brinkman: 0.1273,
    rate: 0.015422,
    film: 0.2148e-3,
    number: 0.019457,
    length: 0.30838,
    turns: 5.85,
  },
];

/** Expected values carry four to five digits. */
const near = (value: number, expected: number) => expect(Math.abs(value / expected - 1)).toBeLessThan(1e-3);

describe.each(examples)('drag removal: $name', (c) => {
  const helix = Math.atan(1 / Math.PI);
  const barrelSpeed = (Math.PI * c.diameter * c.turnsPerMinute) / 60;
  const width = c.diameter * Math.cos(helix) - c.flight;
  const massFlow = c.kgPerHour / 3600;
  const bedSpeed = massFlow / (c.solidDensity * width * c.depth);
  const speed = relativeSpeed(barrelSpeed, bedSpeed, helix);
  const difference = c.wall - c.melting;
  const { toBed, carried } = thinnedShear(c.viscosity, 1, 0, speed, difference, c.conductivity);
  const film: FilmState = {
    crossSpeed: barrelSpeed * Math.sin(helix),
    meltDensity: c.meltDensity,
    drive: c.conductivity * difference + toBed,
    demand: c.fusion + c.heatCapacity * (c.melting - c.feed),
    carried,
  };
  const thickness = filmThickness(film, width);
  // what the barrel drags off, over the root of the width
  const rate = (film.crossSpeed * film.meltDensity * thickness * carried) / 2 / Math.sqrt(width);
  const number = (rate * Math.sqrt(width) * c.depth) / massFlow;

  test('shear, rate and film', () => {
    near((2 * toBed) / (c.conductivity * difference), c.brinkman);
    near(rate, c.rate);
    near(thickness, c.film);
  });

  test('melting number and length', () => {
    near(number, c.number);
    near((2 * c.depth) / number, c.length);
    near(c.length / (c.diameter / Math.sin(helix) / Math.tan(helix) / Math.PI), c.turns);
    expect(solidLeft(massFlow, rate * Math.sqrt(width), c.length / 2) / massFlow).toBeCloseTo(0.25, 3);
    expect(solidLeft(massFlow, rate * Math.sqrt(width), 0.999 * c.length) / massFlow).toBeLessThan(1e-5);
  });
});

describe('the march, granulate that takes up heat of fusion alone, no clearance, one wall temperature', () => {
  const [fusion, viscosity, above, depth, screwSpeed] = [1e5, 10, 30, 3e-3, 20];
  const law = { model: 'newtonian', viscosity } as const;
  const plain = evenScrew(
    depth,
    changedMaterial({ heatOfFusion: fusion, heatCapacitySolid: 1, heatCapacityMelt: 1, viscosityLaw: () => law }),
  );
  const { melting, conductivity, meltDensity, solidDensity, bulkDensity, grain } = plain.material;
  const design = {
    ...plain,
    screw: { ...plain.screw, radialClearance: 0 },
    process: { ...plain.process, feedTemperature: melting - 1e-3, starvedRate: null },
  };
  const stations = buildStations(design, 16);
  const { start, length } = design.barrel.feedOpening;
  const from = stations.z.findIndex((z) => z > start + length);
  const run = (choice: 'film' | 'conduction', massFlow: number) => {
    const walls = { barrel: stations.z.map(() => melting + above), screw: stations.z.map(() => melting) };
    const dissipation = new Float64Array(stations.count - 1);
    return meltProgress({ design, stations, walls, screwSpeed, massFlow, dissipation }, choice);
  };

  test('film: the root of the bed falls along a straight line, by the melting number of Tadmor & Klein', () => {
    const massFlow = 1.5e-3;
    const helix = stations.helixBarrel[from];
    const width = stations.widthBarrel[from];
    const barrelSpeed = Math.PI * design.barrel.boreDiameter * screwSpeed;
    const area = stations.widthMean[from] * depth;
    const speed2 =
      barrelSpeed ** 2 +
      (massFlow / (solidDensity * area)) ** 2 -
      2 * barrelSpeed * (massFlow / (solidDensity * area)) * Math.cos(helix);
    const drive = conductivity * above + (viscosity * speed2) / 2;
    const rate = Math.sqrt((barrelSpeed * Math.sin(helix) * meltDensity * drive) / (2 * fusion));
    // loss of the root of the bed's share per axial length
    const slope = (rate * Math.sqrt(width)) / massFlow / 2 / Math.sin(helix);
    const { molten } = run('film', massFlow);
    const root = (i: number) => Math.sqrt(1 - molten[i]);
    const to = molten.findIndex((share) => share > 0.9);
    expect(to).toBeGreaterThan(from + 20);
    for (let i = from + 4; i <= to; i += 4) {
      const seen = (root(from) - root(i)) / (stations.z[i] - stations.z[from]);
      expect(Math.abs(seen / slope - 1)).toBeLessThan(0.01);
    }
  });

  test('conduction: melts by the first mode of a slab, pi²/2 k/H, times the share of solid and of the grain', () => {
    const massFlow = 2e-4;
    const { molten } = run('conduction', massFlow);
    const share = bulkDensity / solidDensity / (1 + (grain.d50 / (2 * depth)) ** 2);
    const around = 2 * Math.PI * stations.barrelRadius[from] * (Math.PI ** 2 / 2) * (conductivity / depth);
    const perLength = (share * around * above) / (massFlow * fusion);
    const i = molten.findIndex((value) => value > 0.5);
    expect((molten[i] - molten[from]) / (stations.z[i] - stations.z[from]) / perLength).toBeCloseTo(1, 3);
  });
});
