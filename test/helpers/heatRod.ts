/** A bare rod as cells of the heat solver: no screw core, no stream, for textbook cases. */

import type { HeatCells } from '../../core/heat/heatCells.ts';
import type { HeatState } from '../../core/heat/heatSystem.ts';
import { type Masses, rings } from '../../core/heat/masses.ts';
import type { Heater } from '../../core/heat/zoneCells.ts';

/** A rod. m, W m/K, W/(m K), K. */
export interface RodCase {
  readonly count: number;
  readonly length: number;
  readonly conduction: number;
  readonly exchange: number;
  readonly ambient: number;
  /** temperature of both ends, K; none = insulated */
  readonly ends?: number;
  readonly heaters?: readonly Heater[];
}

/** Cells of the rod; the unused core stands at ambient temperature. */
export function rodCells({ count, length, conduction, exchange, ambient, ends, heaters = [] }: RodCase): HeatCells {
  const cell = length / count;
  const filled = (value: number) => new Float64Array(count).fill(value);
  const toCoolant = filled(0);
  if (ends !== undefined) for (const i of [0, count - 1]) toCoolant[i] = (2 * conduction) / cell;
  return {
    count,
    barrel: count,
    z: Float64Array.from({ length: count }, (_, i) => (i + 0.5) * cell),
    length: filled(cell),
    wallVolume: filled(cell * 2e-4),
    coreRadius: filled(1e-3),
    link: Float64Array.from({ length: count }, (_, i) => (i + 1 < count ? conduction / cell : 0)),
    coreLink: Float64Array.from({ length: count }, (_, i) => (i + 1 < count ? 1 : 0)),
    across: filled(0),
    flights: filled(0),
    flightShare: filled(0),
    driveEnd: 1,
    toAmbient: filled(exchange * cell),
    toCoolant,
    coolant: filled(ends ?? ambient),
    ambient,
    heaters,
  };
}

/** A heater over cells from..to - 1. */
export const heaterOn = (
  name: string,
  setTemperature: number,
  maxPower: number,
  [from, to]: readonly [number, number],
): Heater => {
  const contact = new Float64Array(to - from).fill(10);
  return { name, part: 'zone', setTemperature, maxPower, first: from, contact, whole: 10 * (to - from) };
};

/** Somewhere to begin. */
export const stateOf = (cells: HeatCells, temperature: number): HeatState => ({
  wall: new Float64Array(cells.count).fill(temperature),
  core: new Float64Array(cells.count).fill(temperature),
  enthalpy: new Float64Array(cells.count),
  bodies: new Float64Array(cells.heaters.length),
});

/** Heat capacities of a rod: J/K per cell of wall, next to nothing elsewhere. */
export const rodMasses = (cells: HeatCells, perCell: number, perBody = 0): Masses => ({
  wall: new Float64Array(cells.count).fill(perCell),
  core: new Float64Array(cells.count),
  content: new Float64Array(cells.barrel * rings).fill(1e-12),
  bodies: new Float64Array(cells.heaters.length).fill(perBody),
  material: { heatCapacitySolid: 1000, heatCapacityMelt: 1000, heatOfFusion: 0, melting: 1e4 },
});
