import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Design } from '../../../core/design/types.ts';
import { heatCells } from '../../../core/heat/heatCells.ts';
import { type Masses, massesOf } from '../../../core/heat/masses.ts';
import { wallTemperatures } from '../../../core/heat/wallTemperature.ts';
import { coldMoment, type Moment, marchWarm } from '../../../core/heat/warmMarch.ts';
import type { WarmState } from '../../../core/heat/warmStep.ts';
import { warmCells, warmUp } from '../../../core/heat/warmUp.ts';
import { anyDesign, pinned } from '../../helpers/arbitraries.ts';
import { heaterOn, rodCells, rodMasses } from '../../helpers/heatRod.ts';
import { exampleNames, loadDesign } from '../../helpers/projects.ts';

const design = loadDesign('demo', 'C');

/** The demo with all watts times a factor. */
const powered = (factor: number): Design => ({
  ...design,
  nozzle: { ...design.nozzle, maxPower: design.nozzle.maxPower * factor },
  barrel: {
    ...design.barrel,
    zones: design.barrel.zones.map((zone) =>
      zone.kind === 'heated' ? { ...zone, maxPower: zone.maxPower * factor } : zone,
    ),
  },
});

const last = <T>(all: readonly T[]): T => all[all.length - 1];
const fixed = (step: number) => ({ first: step, least: step, tolerance: 1e-30 });

describe('lumped body: one temperature, G = 2 W/K, C = 200 J/K', () => {
  /** All conducting, a heater of 100 W whose thermostat never acts; temperature after a time. */
  const lumped = (step: number, from: number, watts: number): number => {
    const heaters = [heaterOn('all', 1e4, watts, [0, 4])];
    const cells = rodCells({ count: 4, length: 0.1, conduction: 1e6, exchange: 20, ambient: 300, heaters });
    const masses = rodMasses(cells, 50);
    const { moments } = marchWarm(
      cells,
      masses,
      coldMoment(cells, masses, from),
      (all) => last(all).time > 119.99,
      fixed(step),
    );
    return last(moments).state.wall[2];
  };

  test('warms as 1 - exp(-t G / C) towards P / G', () => {
    expect(lumped(1, 300, 100)).toBeCloseTo(300 + 50 * (1 - Math.exp(-1.2)), 3);
  });

  test('cools as exp(-t G / C) without power', () => {
    expect(lumped(1, 500, 0)).toBeCloseTo(300 + 200 * Math.exp(-1.2), 2);
  });

  test('second order in the step', () => {
    const wrong = (step: number) => Math.abs(lumped(step, 300, 100) - (300 + 50 * (1 - Math.exp(-1.2))));
    const order = Math.log2(wrong(12) / wrong(6));
    expect(order).toBeGreaterThan(1.85);
    expect(order).toBeLessThan(2.15);
  });
});

test('a rod between held ends settles on the fin equation: cosh m(x - L/2) / cosh m L/2', () => {
  const cells = rodCells({ count: 80, length: 0.1, conduction: 45 * 2e-4, exchange: 0.6, ambient: 300, ends: 500 });
  const masses = rodMasses(cells, 1);
  const { moments } = marchWarm(cells, masses, coldMoment(cells, masses, 300), (all) => last(all).time > 1e5);
  const m = Math.sqrt(0.6 / (45 * 2e-4));
  last(moments).state.wall.forEach((value, i) => {
    expect(Math.abs(value - 300 - (200 * Math.cosh(m * (cells.z[i] - 0.05))) / Math.cosh(m * 0.05))).toBeLessThan(0.03);
  });
});

/** Heat stored between two states, J. */
function storedBetween(masses: Masses, from: WarmState, to: WarmState): number {
  const of = (capacity: Float64Array, a: Float64Array, b: Float64Array) =>
    capacity.reduce((sum, value, i) => sum + value * (b[i] - a[i]), 0);
  return (
    of(masses.wall, from.wall, to.wall) +
    of(masses.core, from.core, to.core) +
    of(masses.content, from.content, to.content) +
    of(masses.bodies, from.bodies, to.bodies)
  );
}

describe.each(exampleNames)('%s from cold', (name) => {
  const own = loadDesign(name);
  const cells = heatCells(own, warmCells);
  const masses = massesOf(own, cells);
  const cold = coldMoment(cells, masses, own.process.ambient);
  const { moments, converged } = marchWarm(cells, masses, cold, (all) => last(all).time > 2e5);

  test('energy is conserved at every moment: heaters = stored + lost', () => {
    expect(converged).toBe(true);
    for (const { state, energy, lost } of moments) {
      const brought = energy.reduce((sum, value) => sum + value, 0);
      expect(Math.abs(brought - lost - storedBetween(masses, cold.state, state))).toBeLessThan(1e-7 * brought + 1e-6);
    }
  });

  test('the long run is the steady standstill', () => {
    const steady = wallTemperatures(own, null, warmCells);
    const end = last(moments).state;
    steady.barrel.forEach((value, i) => {
      expect(Math.abs(end.wall[i] - value)).toBeLessThan(0.02);
      expect(Math.abs(end.core[i] - steady.screw[i])).toBeLessThan(0.02);
    });
  });

  test('thermostats give between nothing and their watts, and overshoot by less than 3 K', () => {
    const given = (a: Moment, b: Moment, k: number) => (b.energy[k] - a.energy[k]) / (b.time - a.time);
    cells.heaters.forEach(({ maxPower }, k) => {
      for (let i = 1; i < moments.length; i++) {
        const watts = given(moments[i - 1], moments[i], k);
        expect(watts).toBeGreaterThan(-1e-6);
        expect(watts).toBeLessThan(maxPower + 1e-6);
      }
    });
    const { curves, heaters } = warmUp(own);
    const held = wallTemperatures(own, null, warmCells);
    heaters.forEach(({ setTemperature }, k) => {
      const settles = Math.max(setTemperature, held.zones[k].reached);
      expect(Math.max(...curves.zones[k])).toBeLessThan(settles + 3);
    });
  });
});

describe('time until warm', () => {
  const usual = warmUp(design);

  test('is that of finer cells within 2 %', () => {
    expect(usual.converged).toBe(true);
    expect(Math.abs(warmUp(design, { barrel: 144, nozzle: 12 }).ready / usual.ready - 1)).toBeLessThan(0.02);
    expect(usual.curves.time).toHaveLength(101);
  });

  test('lies above that without any loss, and the energy between stored heat and watts times time', () => {
    const watts = usual.heaters.reduce((sum, { maxPower }) => sum + maxPower, 0);
    expect(usual.energy).toBeLessThan(watts * usual.ready);
    expect(usual.energy).toBeGreaterThan(0.5 * watts * usual.ready);
    usual.heaters.forEach(({ energy, meanPower, maxPower, holdingPower, readyAfter }) => {
      expect(meanPower).toBeCloseTo(energy / usual.ready, 6);
      expect(meanPower).toBeLessThanOrEqual(maxPower + 1e-6);
      expect(holdingPower).toBeLessThan(meanPower);
      expect(readyAfter).toBeLessThanOrEqual(usual.ready);
    });
  });

  test('content lags the wall, and melts after it softens', () => {
    expect(usual.soak.softens).toBeLessThan(usual.soak.melts);
    expect(usual.mayTurn).toBe(Math.max(usual.ready, usual.soak.melts));
    expect(usual.soak.z).toBeGreaterThan(design.barrel.zones[2].start);
  });

  test('more watts are sooner; heavier metal is later', () => {
    expect(warmUp(powered(2)).ready).toBeLessThan(0.6 * usual.ready);
    const light = warmUp({ ...design, barrel: { ...design.barrel, heatCapacity: 2.4e6 } }).ready;
    const heavy = warmUp({ ...design, barrel: { ...design.barrel, heatCapacity: 3.9e6 } }).ready;
    expect(light).toBeLessThan(0.85 * heavy);
  });

  test('too few watts: never, and the heaters are named', () => {
    const never = warmUp(powered(0.1));
    expect(never.ready).toBe(Number.POSITIVE_INFINITY);
    expect(never.tooWeak).toContain('metering zone');
    expect(never.heaters.filter(({ tooWeak }) => tooWeak).map(({ name }) => name)).toEqual(never.tooWeak);
    expect(never.mayTurn).toBe(Number.POSITIVE_INFINITY);
    expect(Number.isFinite(never.energy)).toBe(true);
  });

  test('no watts: nothing warms, nothing is used', () => {
    const dead = warmUp(powered(0));
    expect(dead.energy).toBe(0);
    expect(dead.tooWeak).toHaveLength(3);
    expect(dead.soak.softens).toBe(Number.POSITIVE_INFINITY);
    for (const value of last(dead.curves.zones)) expect(value).toBeLessThan(design.process.ambient + 4);
  });

  test('already warm: at once', () => {
    const warm = { ...design, process: { ...design.process, ambient: 470 } };
    expect(warmUp(warm).ready).toBe(0);
  });
});

test('any design: every curve is a number, and the march settles', () => {
  fc.assert(
    fc.property(anyDesign, (own) => {
      const { curves, converged, ready, soak, mayTurn, energy } = warmUp(own);
      expect(converged).toBe(true);
      for (const curve of [curves.time, ...curves.zones, curves.content, curves.throat]) {
        expect(curve.every(Number.isFinite)).toBe(true);
      }
      expect(soak.melts).toBeGreaterThanOrEqual(soak.softens);
      expect(mayTurn).toBeGreaterThanOrEqual(ready);
      expect(energy).toBeGreaterThanOrEqual(0);
    }),
    pinned(12),
  );
});
