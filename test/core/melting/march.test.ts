/** The march along the screw against the laws it is made of. */

import { describe, expect, test } from 'vitest';
import { buildStations } from '../../../core/geometry/stations.ts';
import { meltProgress } from '../../../core/melting/progress.ts';
import { changedMaterial, evenScrew } from '../feed/made.ts';

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
