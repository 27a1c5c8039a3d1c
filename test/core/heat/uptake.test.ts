import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildStations } from '../../../core/geometry/stations.ts';
import { heatCells } from '../../../core/heat/heatCells.ts';
import { type Stream, streamOver } from '../../../core/heat/stream.ts';
import { heldHeat } from '../../../core/heat/thermostats.ts';
import { uptakeIn } from '../../../core/heat/uptake.ts';
import { pinned } from '../../helpers/arbitraries.ts';
import { exampleNames, loadDesign } from '../../helpers/projects.ts';

const content = { heatCapacitySolid: 1500, heatCapacityMelt: 2000, heatOfFusion: 0, melting: 400 };
const cell = (massFlow: number, dissipation = 0): Stream => ({
  content,
  massFlow,
  feed: 0,
  loose: 1,
  through: Float64Array.of(1),
  wallSide: Float64Array.of(0.06),
  coreSide: Float64Array.of(0.04),
  dissipation: Float64Array.of(dissipation),
});

describe('what the screw core hands over', () => {
  test('is its exchange times its distance from the stream’s mean: integral of the exponential', () => {
    const massFlow = 5e-5;
    const [wall, core, before] = [480, 450, 440];
    const target = 0.6 * wall + 0.4 * core;
    const turns = 0.1 / (massFlow * 2000);
    const mean = target + ((before - target) * (1 - Math.exp(-turns))) / turns;
    const { fromCore, enthalpy } = uptakeIn(cell(massFlow), 0, 2000 * 40, wall, core);
    expect(fromCore).toBeCloseTo(0.04 * (core - mean), 9);
    expect(massFlow * (enthalpy - 2000 * 40) - fromCore).toBeCloseTo(0.06 * (wall - mean), 9);
  });

  test('at a trickle the stream only couples wall and core: both exchanges in series', () => {
    const { fromCore } = uptakeIn(cell(1e-10), 0, 0, 480, 450);
    expect(fromCore).toBeCloseTo(((0.06 * 0.04) / 0.1) * (450 - 480), 4);
  });

  test('heat made in the melt goes to wall, core and melt, none of it lost', () => {
    const { fromCore, enthalpy } = uptakeIn(cell(1e-10, 2), 0, 0, 450, 450);
    expect(enthalpy / 2000 + 400).toBeCloseTo(450 + 2 / 0.1, 4);
    expect(fromCore).toBeCloseTo(-0.8, 4);
  });

  test('more from a hotter core, less beside a hotter wall', () => {
    const value = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(value(-2e5, 2e5), value(300, 550), value(300, 550), value(1e-7, 1e-3), (before, wall, core, flow) => {
        const now = uptakeIn(cell(flow), 0, before, wall, core).fromCore;
        expect(uptakeIn(cell(flow), 0, before, wall, core + 1).fromCore).toBeGreaterThan(now);
        expect(uptakeIn(cell(flow), 0, before, wall + 1, core).fromCore).toBeLessThan(now + 1e-9);
      }),
      pinned(200),
    );
  });
});

describe.each(exampleNames)('%s under load', (name) => {
  const own = loadDesign(name);
  const stations = buildStations(own, 8);
  const load = { stations, dissipation: new Float64Array(stations.count - 1).fill(0.03), headDissipation: 1 };

  test('the core alone is in balance: what comes from the wall goes to the stream and the drive end', () => {
    for (const massFlow of [1e-7, 1e-5, 2e-4]) {
      const cells = heatCells(own);
      const stream = streamOver(own, cells, { ...load, massFlow });
      const { state, converged } = heldHeat(cells, stream);
      expect(converged).toBe(true);
      let net = cells.driveEnd * (state.core[0] - cells.ambient);
      let passed = 0;
      for (let i = 0; i < cells.barrel; i++) {
        const before = i > 0 ? state.enthalpy[i - 1] : stream.feed;
        const still = stream.coreSide[i] > 0 ? 0 : cells.across[i];
        const { fromCore } = uptakeIn(stream, i, before, state.wall[i], state.core[i]);
        net += fromCore + (still + cells.flights[i]) * (state.core[i] - state.wall[i]);
        passed += Math.abs(fromCore);
      }
      expect(Math.abs(net)).toBeLessThan(1e-5 * passed);
    }
  });
});
