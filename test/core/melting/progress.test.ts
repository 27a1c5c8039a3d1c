import { describe, expect, test } from 'vitest';
import type { Design } from '../../../core/design/types.ts';
import { buildStations } from '../../../core/geometry/stations.ts';
import { meltEnd } from '../../../core/melting/meltFront.ts';
import { meltProgress } from '../../../core/melting/progress.ts';
import { type MeltingCase, type MeltingChoice, meltingModel } from '../../../core/melting/types.ts';
import { loadDesign } from '../../helpers/projects.ts';

const design = loadDesign('demo', 'C');
const stations = buildStations(design, 16);
const choices: readonly MeltingChoice[] = ['suited', 'conduction', 'film'];
const last = stations.count - 1;
const { material, process, barrel } = design;

const hotFrom = barrel.feedOpening.start + barrel.feedOpening.length + 0.004;
/** Cold under the feed opening, hot behind it, K. */
const walls = (z: Float64Array, hot: number) => {
  const wall = z.map((at) => (at < hotFrom ? process.feedTemperature : hot));
  return { barrel: wall, screw: wall };
};

const caseOf = (wall: number, massFlow: number, change: Partial<MeltingCase> = {}): MeltingCase => ({
  design,
  stations,
  walls: walls(stations.z, wall),
  screwSpeed: 1 / 6,
  massFlow,
  dissipation: new Float64Array(last),
  ...change,
});
const made = (change: Partial<Design['material']>): Design => ({ ...design, material: { ...material, ...change } });
const frontOf = (c: MeltingCase, choice: MeltingChoice) => meltEnd(c.stations, meltProgress(c, choice)) ?? Number.NaN;

describe.each(choices)('%s', (choice) => {
  test('granulate stays at feed temperature before the opening and never passes the wall without shear', () => {
    const melt = meltProgress(caseOf(470, 5e-5, { screwSpeed: 1e-9 }), choice);
    melt.temperature.forEach((value, i) => {
      if (stations.z[i] <= barrel.feedOpening.start) expect(value).toBeCloseTo(process.feedTemperature, 9);
      expect(value).toBeLessThanOrEqual(470 + 1e-9);
      if (i > 0) expect(value).toBeGreaterThanOrEqual(melt.temperature[i - 1] - 1e-9);
    });
  });

  test('the heat content rises by what wall, core and shear give, to the second order of the stations', () => {
    const off = (perTurn: number) => {
      const fine = buildStations(design, perTurn);
      const warm = (from: number, to: number) => fine.z.map((z) => from + ((to - from) * z) / fine.z[fine.count - 1]);
      const dissipation = new Float64Array(fine.count - 1).fill(8);
      const c = caseOf(0, 5e-5, {
        stations: fine,
        walls: { barrel: warm(380, 470), screw: warm(310, 450) },
        dissipation,
      });
      const melt = meltProgress(c, choice);
      let given = 0;
      for (let i = 0; i + 1 < fine.count; i++) {
        const middle = (values: Float64Array) => (values[i] + values[i + 1]) / 2;
        const above = (values: Float64Array) => middle(values) - middle(melt.temperature);
        const shear = melt.filmPower[i] + (i < melt.start.reach ? 0 : i > melt.start.reach ? 8 : 8 * melt.start.share);
        const walls = melt.exchange.wall[i] * above(c.walls.barrel) + melt.exchange.core[i] * above(c.walls.screw);
        given += (walls + shear) * (fine.z[i + 1] - fine.z[i]);
      }
      return Math.abs(given / (c.massFlow * (melt.enthalpy[fine.count - 1] - melt.enthalpy[0])) - 1);
    };
    expect(off(64)).toBeLessThan(3e-4);
    expect(off(16)).toBeLessThan(16 * 3e-4);
  });

  test('more flow melts later; the front moves without jumps', () => {
    let before = frontOf(caseOf(470, 2e-5), choice);
    for (let mass = 2.1e-5; mass < 1.2e-4; mass += 2e-6) {
      const now = frontOf(caseOf(470, mass), choice);
      expect(now).toBeGreaterThanOrEqual(before - 1e-4);
      expect(now - before).toBeLessThan(0.006);
      before = now;
    }
  });

  test('finer stations do not move the front', () => {
    const fine = buildStations(design, 64);
    const c = caseOf(470, 5e-5, {
      stations: fine,
      walls: walls(fine.z, 470),
      dissipation: new Float64Array(fine.count - 1),
    });
    expect(Math.abs(frontOf(c, choice) - frontOf(caseOf(470, 5e-5), choice))).toBeLessThan(5e-4);
  });

  test('walls below melting never melt it', () => {
    const { start, molten, meltsFrom } = meltProgress(caseOf(material.melting - 5, 1e-6), choice);
    expect(start.reach).toBe(last);
    expect(Math.max(...molten)).toBe(0);
    expect(meltsFrom).toBeNull();
  });

  test('a trickle reaches the wall’s temperature, a flood passes cold', () => {
    expect(meltProgress(caseOf(470, 1e-12), choice).temperature[last]).toBeCloseTo(470, 4);
    const flood = meltProgress(caseOf(470, 10), choice);
    expect(flood.start.reach).toBe(last);
    expect(flood.molten[last]).toBeLessThan(0.02);
    expect(flood.temperature[last]).toBeLessThan(process.feedTemperature + 5);
  });

  test('without limit of conduction it melts where the walls reach it', () => {
    const front = frontOf(caseOf(470, 5e-5, { design: made({ conductivity: 1e6 }) }), choice);
    expect(front).toBeLessThan(hotFrom + 0.001);
  });

  test('without heat of fusion it melts no later, and nothing is lost', () => {
    const front = frontOf(caseOf(470, 5e-5), choice);
    const easy = frontOf(caseOf(470, 5e-5, { design: made({ heatOfFusion: 0 }) }), choice);
    expect(easy).toBeLessThanOrEqual(front + 1e-4);
    expect(easy).toBeGreaterThan(barrel.feedOpening.start);
  });

  test('a screw that stands melts by conduction and takes no power', () => {
    const { filmPower, molten } = meltProgress(caseOf(470, 2e-5, { screwSpeed: 0 }), choice);
    expect(Math.max(...filmPower)).toBe(0);
    expect(molten[last]).toBe(1);
  });

  test('heat of shear behind the front warms the melt above the wall', () => {
    const warm = meltProgress(caseOf(470, 1e-6, { dissipation: new Float64Array(last).fill(20) }), choice);
    expect(warm.temperature[last]).toBeGreaterThan(470.5);
  });

  test('molten feed is melt from the opening on', () => {
    const hot = { ...design, process: { ...process, feedTemperature: material.melting + 5 } };
    const { model, start, temperature } = meltProgress(caseOf(470, 5e-5, { design: hot }), choice);
    expect(stations.z[start.reach]).toBeLessThanOrEqual(barrel.feedOpening.start + 1e-9);
    expect(model[last - 1]).toBe(meltingModel.melt);
    expect(temperature[last]).toBeGreaterThan(material.melting + 5);
  });
});

test('a film speeds up with the screw and costs power; conduction knows no speed', () => {
  const at = (screwSpeed: number, choice: MeltingChoice) => meltProgress(caseOf(460, 5e-5, { screwSpeed }), choice);
  const power = (screwSpeed: number) => at(screwSpeed, 'film').filmPower.reduce((sum, value) => sum + value, 0);
  expect(frontOf(caseOf(460, 5e-5, { screwSpeed: 1 }), 'film')).toBeLessThan(frontOf(caseOf(460, 5e-5), 'film'));
  expect(power(1)).toBeGreaterThan(2 * power(1 / 6));
  expect(at(1, 'conduction').molten).toEqual(at(1 / 6, 'conduction').molten);
});

test('coarse grains conduct less than fine ones', () => {
  const grain = (d50: number) => caseOf(470, 5e-5, { design: made({ grain: { ...material.grain, d50 } }) });
  expect(frontOf(grain(4e-3), 'conduction')).toBeGreaterThan(frontOf(grain(1e-4), 'conduction') + 1e-3);
});
