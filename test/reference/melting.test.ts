/**
 * Melting: cases worked from the equations of Tadmor & Klein 1970. Screw and material figures of the first are
 * remembered from a textbook (from memory), its constant viscosity is ours; all expected values are own arithmetic, done
 * apart from this code. The grain's figures are own evaluations of the series of a sphere.
 */

import { describe, expect, test } from 'vitest';
import {
  bedShare,
  type FilmState,
  filmThickness,
  meltingLength,
  meltingNumber,
  meltingRate,
  relativeSpeed,
} from '../../core/melting/dragRemoval.ts';
import { thinnedShear } from '../../core/melting/filmShear.ts';
import { grainTime, sphereCentre } from '../../core/melting/grainHeat.ts';

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
  const rate = meltingRate(film);
  const number = meltingNumber(rate, width, c.depth, massFlow);

  test('shear, rate and film', () => {
    near((2 * toBed) / (c.conductivity * difference), c.brinkman);
    near(rate, c.rate);
    near(filmThickness(film, width), c.film);
  });

  test('melting number and length', () => {
    near(number, c.number);
    near(meltingLength(number, c.depth), c.length);
    near(meltingLength(number, c.depth) / (c.diameter / Math.sin(helix) / Math.tan(helix) / Math.PI), c.turns);
    expect(bedShare(number, c.depth, c.length / 2)).toBeCloseTo(0.25, 3);
  });
});

test('a grain’s centre: half at Fo 0.139, nine tenths at 0.304; 3 mm of PLA in 11.7 s', () => {
  expect(sphereCentre(0.139)).toBeCloseTo(0.5, 2);
  expect(sphereCentre(0.304)).toBeCloseTo(0.9, 2);
  expect(grainTime(0.003, 5.8e-8)).toBeCloseTo(11.7, 0);
});
