/** What stores heat in a standing machine: metal of wall and core, content in rings, bodies of the heaters. */

import type { Design } from '../design/types.ts';
import { heaterCoefficient, heaterThickness, steelHeatCapacity } from './coefficients.ts';
import type { HeatContent } from './enthalpy.ts';
import { type HeatCells, heatedFrom } from './heatCells.ts';

/** Rings of standing content between core and bore, of equal resistance. */
export const rings = 3;

/** Heat capacities. */
export interface Masses {
  /** J/K per cell; 0 for the core in the nozzle */
  readonly wall: Float64Array;
  readonly core: Float64Array;
  /** kg of each ring, core side first, ring j of cell i at i * rings + j; barrel only */
  readonly content: Float64Array;
  /** J/K per heater */
  readonly bodies: Float64Array;
  /** what the content is */
  readonly material: HeatContent;
}

/**
 * Heat capacities of a design. Metal by volume; the flight counts with the core; content is solid left from the last
 * run in the heated barrel, loose granules ahead of it. Heaters are bodies of 5 mm on their contact surface (common
 * practice, 3 to 12 mm). Not counted: the screw's shank, whatever is fixed to the cold end, the melt in the nozzle.
 */
export function massesOf(design: Design, cells: HeatCells): Masses {
  const { barrel, material } = design;
  const perVolume = barrel.heatCapacity ?? steelHeatCapacity.value;
  const bore = barrel.boreDiameter / 2;
  const dense = heatedFrom(design);
  const core = new Float64Array(cells.count);
  const content = new Float64Array(cells.barrel * rings);
  for (let i = 0; i < cells.barrel; i++) {
    const root = Math.min(cells.coreRadius[i], 0.98 * bore);
    const flight = cells.flightShare[i];
    const annulus = Math.PI * (bore ** 2 - root ** 2) * cells.length[i];
    core[i] = steelHeatCapacity.value * (Math.PI * root ** 2 * cells.length[i] + flight * annulus);
    const density = cells.z[i] < dense ? material.bulkDensity : material.solidDensity;
    const edge = (j: number) => root * (bore / root) ** (j / rings);
    for (let j = 0; j < rings; j++) {
      const section = Math.PI * (edge(j + 1) ** 2 - edge(j) ** 2);
      content[i * rings + j] = density * section * cells.length[i] * (1 - flight);
    }
  }
  return {
    wall: cells.wallVolume.map((volume) => perVolume * volume),
    core,
    content,
    bodies: Float64Array.from(
      cells.heaters,
      ({ whole }) => (steelHeatCapacity.value * heaterThickness.value * whole) / heaterCoefficient,
    ),
    material,
  };
}
