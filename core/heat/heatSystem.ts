/** Steady heat of wall, screw core and stream with given duties of the heaters: one linear step towards the solution. */

import { addToBand, factorSquareBand, type SquareBand, squareBand } from '../math/bandedLu.ts';
import type { HeatCells } from './heatCells.ts';
import { type Duty, solveWithBodies } from './heaterBodies.ts';
import { addSolid } from './solidMatrix.ts';
import type { Stream } from './stream.ts';
import { type Uptake, uptakeIn } from './uptake.ts';

/** Temperatures of each cell, K, specific enthalpy of the stream behind it, J/kg, temperature of each heater's body, K. */
export interface HeatState {
  readonly wall: Float64Array;
  readonly core: Float64Array;
  readonly enthalpy: Float64Array;
  readonly bodies: Float64Array;
}

/** Unknowns of a cell: wall, core, enthalpy behind it. */
const perCell = 3;

/** Steps of the slopes of the stream, K and J/kg. */
const temperatureStep = 1e-4;
const enthalpyStep = 0.1;

/**
 * One Newton step from a state. Balance of wall and core together is linear and thus exact after every step; what the
 * stream takes up, and how much of it from the core, is linearised.
 * @param stream null where nothing passes and no heat is made
 */
export function heatStep(cells: HeatCells, stream: Stream | null, duties: readonly Duty[], from: HeatState): HeatState {
  const { matrix, right } = assemble(cells, stream, from);
  factorSquareBand(matrix);
  const bodies = solveWithBodies(matrix, right, cells, duties, perCell);
  const every = (offset: number) => Float64Array.from(from.wall, (_, i) => right[i * perCell + offset]);
  return { wall: every(0), core: every(1), enthalpy: every(2), bodies };
}

function assemble(cells: HeatCells, stream: Stream | null, from: HeatState) {
  const size = cells.count * perCell;
  const matrix = squareBand(size, perCell);
  const right = new Float64Array(size);
  const flowing = stream !== null && stream.massFlow > 0;
  // content that moves is exchanged with on both sides instead of being conducted through
  const across = flowing ? cells.across.map((value, i) => (stream.coreSide[i] > 0 ? 0 : value)) : cells.across;
  addSolid(matrix, right, cells, across, perCell);
  for (let i = 0; i < cells.count; i++) {
    const wall = i * perCell;
    if (stream) right[wall] += stream.dissipation[i];
    if (flowing) addStream(matrix, right, stream, i, from);
    else addToBand(matrix, wall + 2, wall + 2, 1);
  }
  return { matrix, right };
}

/** Wall and core pay for the rise of enthalpy less the heat made; the rise itself follows the temperatures. */
function addStream(matrix: SquareBand, right: Float64Array, stream: Stream, i: number, from: HeatState): void {
  const [wall, core, behind] = [i * perCell, i * perCell + 1, i * perCell + 2];
  const [atWall, atCore] = [from.wall[i], from.core[i]];
  const before = i > 0 ? from.enthalpy[i - 1] : stream.feed;
  const now = uptakeIn(stream, i, before, atWall, atCore);
  const { massFlow } = stream;
  addToBand(matrix, wall, behind, massFlow);
  addToBand(matrix, behind, behind, 1);
  right[behind] += now.enthalpy;
  right[core] -= now.fromCore;
  right[wall] += now.fromCore;
  const slope = (column: number, value: number, then: Uptake, step: number) => {
    const rise = (then.enthalpy - now.enthalpy) / step;
    const taken = (then.fromCore - now.fromCore) / step;
    addToBand(matrix, behind, column, -rise);
    addToBand(matrix, core, column, taken);
    addToBand(matrix, wall, column, -taken);
    right[behind] -= rise * value;
    right[core] += taken * value;
    right[wall] -= taken * value;
  };
  const kelvin = temperatureStep;
  slope(wall, atWall, uptakeIn(stream, i, before, atWall + kelvin, atCore), kelvin);
  if (stream.coreSide[i] > 0) slope(core, atCore, uptakeIn(stream, i, before, atWall, atCore + kelvin), kelvin);
  if (i === 0) {
    right[wall] += massFlow * stream.feed;
    return;
  }
  addToBand(matrix, wall, behind - perCell, -massFlow);
  slope(behind - perCell, before, uptakeIn(stream, i, before + enthalpyStep, atWall, atCore), enthalpyStep);
}
