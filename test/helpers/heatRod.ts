/** The bare rod of the checks with heaters and with both ends held, for tests of the heat solver. */

import { rodCells as bareCells, rodMasses as bareMasses, type Rod } from '../../core/checks/heatRod.ts';
import type { HeatCells } from '../../core/heat/heatCells.ts';
import type { HeatState } from '../../core/heat/heatSystem.ts';
import type { Masses } from '../../core/heat/masses.ts';
import type { Heater } from '../../core/heat/zoneCells.ts';

/** A rod. m, W m/K, W/(m K), K. */
export interface RodCase extends Omit<Rod, 'base'> {
  /** temperature of both ends, K; none = insulated */
  readonly ends?: number;
  readonly heaters?: readonly Heater[];
}

/** Cells of the rod; the unused core stands at ambient temperature. */
export function rodCells({ ends, heaters = [], ...rod }: RodCase): HeatCells {
  const cells = bareCells(ends === undefined ? rod : { ...rod, base: ends });
  const toCoolant = cells.toCoolant.slice();
  toCoolant[rod.count - 1] = toCoolant[0];
  return { ...cells, toCoolant, heaters };
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
  ...bareMasses(cells, perCell),
  bodies: new Float64Array(cells.heaters.length).fill(perBody),
});
