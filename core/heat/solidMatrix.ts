/** Conduction and losses of wall and screw core as a band matrix: what steady heat and warming up have in common. */

import { addToBand, type SquareBand } from '../math/bandedLu.ts';
import type { HeatCells } from './heatCells.ts';

/**
 * Adds the balance of wall and core: what leaves is positive.
 * @param stride unknowns per cell; the wall comes first, the core second
 * @param across between wall and core through what fills the channel, W/K per cell
 * The heaters' contacts stand on the diagonal; what their bodies bring belongs to the right side.
 */
export function addSolid(
  matrix: SquareBand,
  right: Float64Array,
  cells: HeatCells,
  across: Float64Array,
  stride: number,
): void {
  for (let i = 0; i < cells.count; i++) {
    const [wall, core] = [i * stride, i * stride + 1];
    addToBand(matrix, wall, wall, cells.toAmbient[i] + cells.toCoolant[i]);
    right[wall] += cells.toAmbient[i] * cells.ambient + cells.toCoolant[i] * cells.coolant[i];
    couple(matrix, wall, core, across[i] + cells.flights[i]);
    if (i + 1 < cells.count) {
      couple(matrix, wall, wall + stride, cells.link[i]);
      couple(matrix, core, core + stride, cells.coreLink[i]);
    }
    if (i === 0) {
      addToBand(matrix, core, core, cells.driveEnd);
      right[core] += cells.driveEnd * cells.ambient;
    }
    // no core in the nozzle: the place of its unknown stands at the ambient temperature
    if (i >= cells.barrel) {
      addToBand(matrix, core, core, 1);
      right[core] += cells.ambient;
    }
  }
  for (const { first, contact } of cells.heaters) {
    contact.forEach((value, i) => {
      addToBand(matrix, (first + i) * stride, (first + i) * stride, value);
    });
  }
}

/** A conductance between two unknowns. */
function couple(matrix: SquareBand, a: number, b: number, conductance: number): void {
  addToBand(matrix, a, a, conductance);
  addToBand(matrix, b, b, conductance);
  addToBand(matrix, a, b, -conductance);
  addToBand(matrix, b, a, -conductance);
}
