/** The march along a screw as the melting checks need it: granulate that takes up heat of fusion alone. */

import type { DesignMaterial } from '../design/types.ts';
import { buildStations } from '../geometry/stations.ts';
import { meltProgress } from '../melting/progress.ts';
import { flight, screwOf } from './geometryCases.ts';

/** K above melting, Pa s, J/kg, rev/s, kg/s */
const [above, viscosity, fusion, screwSpeed, massFlow] = [30, 10, 1e5, 20, 1.5e-3];

/**
 * Screw over which the share of solid falls from 90 to 50 %, m: bore 16 mm, depth 3 mm, square-cut channel, no clearance,
 * one wall temperature, film model.
 */
export function meltingLength(): number {
  const made = screwOf([{ ...flight, length: 0.23, flankAngle: 0, rootFillet: 0 }]);
  const law = { model: 'newtonian', viscosity } as const;
  const heat = { heatOfFusion: fusion, heatCapacitySolid: 1, heatCapacityMelt: 1 };
  const material: DesignMaterial = { ...made.material, ...heat, viscosityLaw: () => law };
  const process = { ...made.process, feedTemperature: material.melting - 1e-3, starvedRate: null };
  const design = { ...made, material, process };
  const stations = buildStations(design, 48);
  const walls = {
    barrel: stations.z.map(() => material.melting + above),
    screw: stations.z.map(() => material.melting),
  };
  const dissipation = new Float64Array(stations.count - 1);
  const { molten } = meltProgress({ design, stations, walls, screwSpeed, massFlow, dissipation }, 'film');
  const place = (share: number) => {
    const i = molten.findIndex((value) => value >= share);
    const before = molten[i - 1] ?? Number.NaN;
    const part = (share - before) / ((molten[i] ?? Number.NaN) - before);
    return (
      (stations.z[i - 1] ?? Number.NaN) + part * ((stations.z[i] ?? Number.NaN) - (stations.z[i - 1] ?? Number.NaN))
    );
  };
  return place(0.5) - place(0.1);
}
