import fc from 'fast-check';
import { expect, test } from 'vitest';
import { buildStations } from '../../../core/geometry/stations.ts';
import { enthalpyOf, warmthOf } from '../../../core/heat/enthalpy.ts';
import { heatCells } from '../../../core/heat/heatCells.ts';
import { nozzleOutlet, type Stream, streamOver } from '../../../core/heat/stream.ts';
import { uptakeIn } from '../../../core/heat/uptake.ts';
import { pinned } from '../../helpers/arbitraries.ts';
import { loadDesign } from '../../helpers/projects.ts';

const content = { heatCapacitySolid: 1500, heatCapacityMelt: 2100, heatOfFusion: 8e4, melting: 430 };

/** One cell of 0.1 W/K to the wall; granules conduct half as well. */
const oneCell = (massFlow: number, own = content): Stream => ({
  content: own,
  massFlow,
  feed: 0,
  loose: 0.5,
  through: Float64Array.of(1),
  wallSide: Float64Array.of(0.1),
  coreSide: Float64Array.of(0),
  dissipation: Float64Array.of(0),
});
const enthalpyBehind = (...of: Parameters<typeof uptakeIn>) => uptakeIn(...of).enthalpy;
const at = (temperature: number) => enthalpyOf(content, { temperature, fused: temperature >= 430 ? 1 : 0 });

test('solid and melt approach the wall exponentially, granules at their share of conduction', () => {
  const solid = warmthOf(content, enthalpyBehind(oneCell(1e-4), 0, at(300), 400, 0)).temperature;
  expect(solid).toBeCloseTo(400 - 100 * Math.exp(-0.05 / (1e-4 * 1500)), 9);
  const melt = warmthOf(content, enthalpyBehind(oneCell(1e-4), 0, at(500), 450, 0)).temperature;
  expect(melt).toBeCloseTo(450 + 50 * Math.exp(-0.1 / (1e-4 * 2100)), 9);
});

test('fusion is taken up at melting and given back in freezing', () => {
  const half = enthalpyBehind(oneCell(1e-4), 0, 2e4, 440, 0);
  expect(half).toBeCloseTo(2e4 + (0.05 * 10) / 1e-4, 6);
  const frozen = enthalpyBehind(oneCell(1e-4), 0, 2e4, 425, 0);
  expect(frozen).toBeCloseTo(2e4 - (0.1 * 5) / 1e-4, 6);
});

test('a trickle leaves at the wall’s temperature', () => {
  for (const wall of [350, 429, 431, 500]) {
    for (const before of [300, 500]) {
      expect(warmthOf(content, enthalpyBehind(oneCell(1e-9), 0, at(before), wall, 0)).temperature).toBeCloseTo(wall, 6);
    }
  }
});

test('what leaves never jumps, and grows with what enters and with the wall', () => {
  const value = (from: number, to: number) => fc.double({ min: from, max: to, noNaN: true });
  const fusion = fc.constantFrom(8e4, 0);
  fc.assert(
    fc.property(value(-2e5, 3e5), value(300, 550), value(1e-5, 1e-3), fusion, (before, wall, flow, heatOfFusion) => {
      const stream = oneCell(flow, { ...content, heatOfFusion });
      const now = enthalpyBehind(stream, 0, before, wall, 0);
      const warmer = enthalpyBehind(stream, 0, before, wall + 1e-6, 0);
      const richer = enthalpyBehind(stream, 0, before + 1e-3, wall, 0);
      expect(warmer).toBeGreaterThanOrEqual(now - 1e-7);
      expect(richer).toBeGreaterThanOrEqual(now - 1e-7);
      expect(warmer - now).toBeLessThan((1e-6 * 0.11) / flow + 1e-6);
      expect(richer - now).toBeLessThan(3e-3);
    }),
    pinned(500),
  );
});

test('no watt of the load is lost on its way to the cells; nothing is exchanged ahead of the feed opening', () => {
  const design = loadDesign('demo', 'C');
  const stations = buildStations(design, 8);
  const dissipation = Float64Array.from({ length: stations.count - 1 }, (_, i) =>
    stations.z[i + 1] > stations.z[i] ? 0.01 * (i % 7) : 0,
  );
  const cells = heatCells(design);
  const stream = streamOver(design, cells, { stations, massFlow: 1e-5, dissipation, headDissipation: 1.5 });
  const sum = (values: Float64Array) => values.reduce((total, value) => total + value, 0);
  expect(sum(stream.dissipation)).toBeCloseTo(sum(dissipation) + 1.5, 9);
  cells.z.forEach((z, i) => {
    expect(stream.wallSide[i] > 0).toBe(z + cells.length[i] / 2 > design.barrel.feedOpening.start);
  });
});

test('nozzle: little flow leaves at the wall’s temperature plus its shear, much flow as it came', () => {
  const design = loadDesign('demo', 'C');
  expect(nozzleOutlet(design, 1e-9, 450, 480, 0)).toBeCloseTo(480, 6);
  expect(nozzleOutlet(design, 10, 450, 480, 0)).toBeCloseTo(450, 2);
  // heat made in much flow: power over flow and heat capacity
  const rise = nozzleOutlet(design, 10, 450, 450, 100) - 450;
  expect(rise / (100 / (10 * design.material.heatCapacityMelt))).toBeCloseTo(1, 4);
});
