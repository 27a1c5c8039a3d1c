import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Design } from '../../../core/design/types.ts';
import { validateDesign } from '../../../core/design/validate.ts';
import { buildStations } from '../../../core/geometry/stations.ts';
import { lossesOf } from '../../../core/heat/flows.ts';
import type { Load } from '../../../core/heat/stream.ts';
import { type WallTemperatures, wallTemperatures } from '../../../core/heat/wallTemperature.ts';
import { anyDesign, pinned } from '../../helpers/arbitraries.ts';
import { demoC } from '../../helpers/edgeProjects.ts';
import { expectOk, loadDesign } from '../../helpers/projects.ts';

const design = loadDesign('demo', 'C');
const standing = wallTemperatures(design);

/** A flow, kg/s, with watts of shear over the last third of the screw and in the head. */
function loadOn(own: Design, massFlow: number, shear = 3, head = 1): Load {
  const stations = buildStations(own, 8);
  const reaches = stations.count - 1;
  const from = Math.floor((2 * reaches) / 3);
  const dissipation = Float64Array.from({ length: reaches }, (_, i) => (i >= from ? shear / (reaches - from) : 0));
  return { stations, massFlow, dissipation, headDissipation: head };
}

/** The demo with all watts times a factor. */
const powered = (factor: number, nozzle = factor): Design => ({
  ...design,
  nozzle: { ...design.nozzle, maxPower: design.nozzle.maxPower * nozzle },
  barrel: {
    ...design.barrel,
    zones: design.barrel.zones.map((zone) =>
      zone.kind === 'heated' ? { ...zone, maxPower: zone.maxPower * factor } : zone,
    ),
  },
});

const residual = ({ flows }: WallTemperatures): number =>
  flows.heaters + flows.dissipation - flows.product - lossesOf(flows);

describe('standing', () => {
  test('heated zones stand at their set temperature, the feed block near its coolant', () => {
    design.barrel.zones.forEach((zone) => {
      const middle = standing.barrel[standing.z.findIndex((at) => at >= (zone.start + zone.end) / 2)];
      if (zone.kind === 'heated') expect(Math.abs(middle - zone.setTemperature)).toBeLessThan(3);
      if (zone.kind === 'cooled') expect(Math.abs(middle - zone.coolantTemperature)).toBeLessThan(30);
    });
    expect(standing.zones.map(({ duty }) => duty)).toEqual(['held', 'held', 'held']);
    expect(standing.nozzleTemperature).toBe(design.nozzle.setTemperature);
  });

  test('without its heat break the feed end is warmer', () => {
    const open = expectOk(
      validateDesign(
        demoC((revision) => {
          revision.barrel.heatBreak = null;
        }),
        'C',
      ),
    );
    const end = (d: Design) => wallTemperatures(d).barrel[Math.floor((240 * 40) / 162)];
    expect(end(open)).toBeGreaterThan(end(design) + 2);
  });

  test('heaters bring the losses and nothing else', () => {
    expect(standing.flows.product).toBe(0);
    expect(standing.flows.heaters).toBeCloseTo(lossesOf(standing.flows), 6);
  });

  test('second order in the cell', () => {
    // cells of 2, 1 and 0.5 mm meet every edge of the demo
    const of = (barrel: number) => wallTemperatures(design, null, { barrel, nozzle: 48 }).flows.heaters;
    const [coarse, middle, fine] = [81, 162, 324].map(of);
    const order = Math.log2(Math.abs((coarse - middle) / (middle - fine)));
    expect(order).toBeGreaterThan(1.7);
    expect(order).toBeLessThan(2.3);
  });

  test('an all-conducting barrel and nozzle have one temperature', () => {
    const { barrel, nozzle } = design;
    const copper = wallTemperatures({
      ...design,
      barrel: {
        ...barrel,
        conductivity: 1e6,
        heatBreak: null,
        zones: [{ kind: 'heated', name: 'all', start: 0, end: barrel.length, setTemperature: 450, maxPower: 500 }],
      },
      nozzle: { ...nozzle, maxPower: 0 },
    });
    for (const value of copper.barrel) expect(value).toBeCloseTo(450, 2);
    // the joint alone stands between them: 4 W through 1 W/K
    expect(copper.nozzleTemperature).toBeGreaterThan(445);
    expect(copper.nozzle[0] - copper.nozzle[copper.nozzle.length - 1]).toBeCloseTo(0, 2);
  });
});

describe('under load', () => {
  test('heat is in balance to a millionth, whatever flows and however weak the heaters are', () => {
    for (const name of ['demo', 'wax-head', 'hdpe-regrind']) {
      const own = loadDesign(name);
      for (const flow of [0, 1e-9, 1e-6, 3e-5, 3e-4]) {
        const walls = wallTemperatures(own, loadOn(own, flow));
        expect(Math.abs(residual(walls))).toBeLessThan(1e-6 * Math.max(1, walls.flows.heaters));
        expect(walls.converged).toBe(true);
      }
    }
    for (const factor of [0, 0.01, 0.05, 0.1, 0.2, 0.5]) {
      for (const nozzle of [0, 1]) {
        const own = powered(factor, nozzle);
        const walls = wallTemperatures(own, loadOn(own, 5e-5));
        expect(Math.abs(residual(walls))).toBeLessThan(1e-6 * Math.max(1, walls.flows.heaters));
        expect(walls.converged).toBe(true);
      }
    }
  });

  test('a flow needs its heat content on top, less what the cold end no longer loses', () => {
    const still = wallTemperatures(design, loadOn(design, 0, 0, 0)).flows;
    const moving = wallTemperatures(design, loadOn(design, 4e-5, 0, 0)).flows;
    expect(moving.product).toBeGreaterThan(10);
    expect(moving.heaters - still.heaters).toBeCloseTo(moving.product + lossesOf(moving) - lossesOf(still), 6);
    expect(moving.coolant).toBeLessThan(still.coolant);
  });

  test('more watts never make a place colder', () => {
    let before: WallTemperatures | null = null;
    for (const factor of [0, 0.02, 0.05, 0.1, 0.15, 0.3, 1]) {
      const now = wallTemperatures(powered(factor), loadOn(design, 3e-5));
      before?.barrel.forEach((value, i) => {
        expect(now.barrel[i]).toBeGreaterThan(value - 1e-6);
      });
      before = now;
    }
  });

  test('a hotter nozzle takes more watts in all, not fewer', () => {
    const needs = [393, 423, 461, 483].map((setTemperature) => {
      const own = { ...design, nozzle: { ...design.nozzle, setTemperature } };
      return wallTemperatures(own, loadOn(own, 5e-5)).flows.heaters;
    });
    for (let i = 1; i < needs.length; i++) expect(needs[i]).toBeGreaterThanOrEqual(needs[i - 1] - 1e-9);
    expect(needs[3]).toBeGreaterThan(needs[0] + 1);
  });

  test('a nozzle without watts stays colder than set, and names what it needs', () => {
    const own = powered(1, 0);
    const nozzle = wallTemperatures(own, loadOn(own, 5e-5)).zones[2];
    expect(nozzle).toMatchObject({ part: 'nozzle', duty: 'weak', power: 0 });
    expect(nozzle.reached).toBeLessThan(nozzle.setTemperature - 2);
    expect(nozzle.needed).toBeGreaterThan(1);
  });

  test('without any watts all stays near the coolant and the ambient', () => {
    const cold = wallTemperatures(powered(0), loadOn(design, 5e-5, 0, 0));
    for (const value of cold.barrel) expect(value).toBeLessThan(design.process.ambient + 4);
    expect(cold.flows.heaters).toBeCloseTo(0, 9);
  });

  test('any design: each heater does what a thermostat can', () => {
    fc.assert(
      fc.property(anyDesign, fc.double({ min: 0, max: 1e-4, noNaN: true }), (own, flow) => {
        const walls = wallTemperatures(own, loadOn(own, flow));
        expect(walls.converged).toBe(true);
        expect(Math.abs(residual(walls))).toBeLessThan(1e-6 * Math.max(1, walls.flows.heaters));
        for (const { duty, power, maxPower, reached, setTemperature } of walls.zones) {
          expect(power).toBeGreaterThanOrEqual(0);
          expect(power).toBeLessThanOrEqual(maxPower + 1e-6);
          if (duty === 'weak') expect(reached).toBeLessThan(setTemperature + 1e-6);
          if (duty === 'off') expect(reached).toBeGreaterThan(setTemperature - 1e-6);
          if (duty === 'held') expect(reached).toBe(setTemperature);
        }
      }),
      pinned(40),
    );
  });
});
