/** Heat that creeps from the heated barrel into its cold end. */

import type { Design } from '../design/types.ts';
import { type HeatCells, heatedFrom } from './heatCells.ts';
import type { HeatState } from './heatSystem.ts';

/** What crosses one plane against the flow. */
export interface ColdEnd {
  /** m: middle of the heat break, or where the heated zones begin; the nearest border of two cells */
  readonly z: number;
  /** W by conduction into the cold end: through the barrel's wall or heat break, and through the screw core */
  readonly wall: number;
  readonly core: number;
}

/** Heat through the plane that parts the heated barrel from the cold end; Fourier's law between neighbouring cells. */
export function coldEndOf(design: Design, cells: HeatCells, { wall, core }: Pick<HeatState, 'wall' | 'core'>): ColdEnd {
  const { heatBreak } = design.barrel;
  const plane = heatBreak ? heatBreak.start + heatBreak.length / 2 : heatedFrom(design);
  const cell = cells.length[0];
  const i = Math.min(cells.barrel - 2, Math.max(0, Math.round(plane / cell) - 1));
  return {
    z: (i + 1) * cell,
    wall: cells.link[i] * (wall[i + 1] - wall[i]),
    core: cells.coreLink[i] * (core[i + 1] - core[i]),
  };
}
