import { describe, expect, test } from 'vitest';
import type { Design } from '../../../core/design/types.ts';
import { buildStations } from '../../../core/geometry/stations.ts';
import { heatCells } from '../../../core/heat/heatCells.ts';
import { creepOf, heatCreep } from '../../../core/heat/heatCreep.ts';
import { wallTemperatures } from '../../../core/heat/wallTemperature.ts';
import { exampleNames, loadDesign } from '../../helpers/projects.ts';

const design = loadDesign('demo', 'C');

function creep(own: Design, massFlow = 4e-5) {
  const stations = buildStations(own, 8);
  const load = { stations, massFlow, dissipation: new Float64Array(stations.count - 1), headDissipation: 0 };
  return heatCreep(own, wallTemperatures(own, load), wallTemperatures(own));
}
const steel = (conductivity: number): Design => ({
  ...design,
  screw: { ...design.screw, steel: { ...design.screw.steel, conductivity } },
});

describe.each(exampleNames)('%s', (name) => {
  const own = loadDesign(name);
  const { running, standing, margin, worse } = creep(own);

  test('a hot standstill is the worse state, its core hotter than its wall', () => {
    expect(worse).toBe('standing');
    expect(margin).toBe(standing.margin);
    expect(standing.margin).toBeLessThan(running.margin);
    expect(standing.core).toBeGreaterThan(standing.wall);
    expect(running.granules).toBeLessThan(standing.granules);
  });

  test('granules stick to the metal before they soften through', () => {
    for (const { sticksAt, softensAt, margin: own, wall, core, granules } of [running, standing]) {
      expect(sticksAt).not.toBeNull();
      expect(softensAt ?? 1).toBeGreaterThan(sticksAt ?? 0);
      expect(own).toBeLessThan(1e3);
      expect(Math.max(wall, core, granules)).toBeGreaterThan(280);
    }
  });
});

test('the watts that cross leave the cold end by coolant, air and drive end: steady balance of what lies ahead', () => {
  const walls = wallTemperatures(design);
  const cells = heatCells(design);
  const { z, wall, core } = walls.coldEnd;
  let lost = cells.driveEnd * (walls.screw[0] - cells.ambient);
  walls.z.forEach((at, i) => {
    if (at > z) return;
    const value = walls.barrel[i];
    lost += cells.toAmbient[i] * (value - cells.ambient) + cells.toCoolant[i] * (value - cells.coolant[i]);
  });
  expect(lost / (wall + core)).toBeCloseTo(1, 8);
});

test('a poorer conductor of a screw carries less and keeps the throat cooler', () => {
  const [good, poor] = [creep(steel(50)).standing, creep(steel(15)).standing];
  expect(poor.coldEnd.core).toBeLessThan(0.6 * good.coldEnd.core);
  expect(poor.margin).toBeGreaterThan(good.margin);
});

test('without a heat break more heat is lost through the wall', () => {
  const open = creep({ ...design, barrel: { ...design.barrel, heatBreak: null } }).running;
  const stopped = creep(design).running;
  expect(open.lostShare).toBeGreaterThan(1.5 * stopped.lostShare);
  expect(open.coldEnd.wall).toBeGreaterThan(1.5 * stopped.coldEnd.wall);
  expect(open.margin).toBeLessThan(stopped.margin);
});

test('a cold machine sticks nowhere', () => {
  const { barrel, nozzle } = design;
  const cold: Design = {
    ...design,
    nozzle: { ...nozzle, maxPower: 0 },
    barrel: {
      ...barrel,
      zones: barrel.zones.map((zone) => (zone.kind === 'heated' ? { ...zone, maxPower: 0 } : zone)),
    },
  };
  const { sticksAt, softensAt, lostShare } = creepOf(cold, wallTemperatures(cold));
  expect([sticksAt, softensAt, lostShare]).toEqual([null, null, 0]);
});
