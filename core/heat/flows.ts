/** Heat flows of the whole machine, summed over its cells. */

import type { HeatCells } from './heatCells.ts';
import { givenBy } from './heaterBodies.ts';
import type { HeatState } from './heatSystem.ts';
import type { Stream } from './stream.ts';

/** Heat flows of the whole machine, W. heaters + dissipation = product + losses. */
export interface HeatFlows {
  readonly heaters: number;
  readonly dissipation: number;
  /** rise of the heat content of what passes */
  readonly product: number;
  /** to the surrounding air, to coolants, through the screw into its drive end; negative where heat comes in */
  readonly ambient: number;
  readonly coolant: number;
  readonly driveEnd: number;
}

/** What leaves by other ways than with the product, W. */
export const lossesOf = ({ ambient, coolant, driveEnd }: HeatFlows): number => ambient + coolant + driveEnd;

/** Heat flows of a state, each summed from the temperatures alone, so that their balance is a test. */
export function flowsOf(
  cells: HeatCells,
  stream: Stream | null,
  { wall, core, enthalpy, bodies }: HeatState,
): HeatFlows {
  const total = (each: (i: number) => number) => wall.reduce((sum, _, i) => sum + each(i), 0);
  return {
    heaters: cells.heaters.reduce((sum, heater, k) => sum + givenBy(heater, bodies[k], wall), 0),
    dissipation: stream ? total((i) => stream.dissipation[i]) : 0,
    product: stream && stream.massFlow > 0 ? stream.massFlow * (enthalpy[cells.count - 1] - stream.feed) : 0,
    ambient: total((i) => cells.toAmbient[i] * (wall[i] - cells.ambient)),
    coolant: total((i) => cells.toCoolant[i] * (wall[i] - cells.coolant[i])),
    driveEnd: cells.driveEnd * (core[0] - cells.ambient),
  };
}
