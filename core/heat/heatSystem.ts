/** Steady heat of wall, screw core and stream with given duties of the heaters: one linear step towards the solution. */

import { addToBand, factorSquareBand, type SquareBand, solveSquareBand, squareBand } from '../math/bandedLu.ts';
import type { HeatCells } from './heatCells.ts';
import { enthalpyBehind, type Stream } from './stream.ts';
import type { Heater } from './zoneCells.ts';

/** Temperatures of each cell, K, specific enthalpy of the stream behind it, J/kg, temperature of each heater's body, K. */
export interface HeatState {
  readonly wall: Float64Array;
  readonly core: Float64Array;
  readonly enthalpy: Float64Array;
  readonly bodies: Float64Array;
}

/** What a heater does: holds the mean of its wall at its set temperature, gives all its watts, or none. */
export type Duty = 'held' | 'weak' | 'off';

/** Unknowns of a cell: wall, core, enthalpy behind it. */
const perCell = 3;

/** Steps of the slopes of the stream, K and J/kg. */
const temperatureStep = 1e-4;
const enthalpyStep = 0.1;

/** Mean temperature of the wall under a heater, weighted by contact, K. */
export const underHeater = (heater: Heater, wall: Float64Array): number =>
  heater.contact.reduce((sum, contact, i) => sum + contact * wall[heater.first + i], 0) / heater.whole;

/** Watts that a heater's body hands to the wall. */
export const givenBy = (heater: Heater, body: number, wall: Float64Array): number =>
  heater.whole * (body - underHeater(heater, wall));

/**
 * One Newton step from a state. Balance of wall and core is linear and thus exact after every step; what the stream
 * takes up is linearised.
 * @param stream null where nothing passes and no heat is made
 */
export function heatStep(cells: HeatCells, stream: Stream | null, duties: readonly Duty[], from: HeatState): HeatState {
  const { matrix, right } = assemble(cells, stream, from);
  factorSquareBand(matrix);
  solveSquareBand(matrix, right);
  const answers = cells.heaters.map((heater) => {
    const answer = new Float64Array(matrix.size);
    heater.contact.forEach((contact, i) => {
      answer[(heater.first + i) * perCell] = contact;
    });
    solveSquareBand(matrix, answer);
    return answer;
  });
  const bodies = bodiesFor(cells, duties, right, answers);
  answers.forEach((answer, k) => {
    for (let i = 0; i < right.length; i++) right[i] += bodies[k] * answer[i];
  });
  const every = (offset: number) => Float64Array.from(from.wall, (_, i) => right[i * perCell + offset]);
  return { wall: every(0), core: every(1), enthalpy: every(2), bodies };
}

/** Temperatures of the heaters' bodies that fulfil their duties, given the answer of the cells to each. */
function bodiesFor(
  cells: HeatCells,
  duties: readonly Duty[],
  without: Float64Array,
  answers: readonly Float64Array[],
): Float64Array {
  const { heaters } = cells;
  const mean = (heater: Heater, x: Float64Array) =>
    heater.contact.reduce((sum, contact, i) => sum + contact * x[(heater.first + i) * perCell], 0) / heater.whole;
  const n = heaters.length;
  const small = squareBand(n, n - 1);
  const right = new Float64Array(n);
  heaters.forEach((heater, k) => {
    const held = duties[k] === 'held';
    answers.forEach((answer, j) => {
      addToBand(small, k, j, held ? mean(heater, answer) : (j === k ? 1 : 0) - mean(heater, answer));
    });
    const watts = duties[k] === 'weak' ? heater.maxPower : 0;
    right[k] = held ? heater.setTemperature - mean(heater, without) : watts / heater.whole + mean(heater, without);
  });
  factorSquareBand(small);
  solveSquareBand(small, right);
  return right;
}

function assemble(cells: HeatCells, stream: Stream | null, from: HeatState) {
  const size = cells.count * perCell;
  const matrix = squareBand(size, perCell);
  const right = new Float64Array(size);
  for (let i = 0; i < cells.count; i++) {
    const [wall, core] = [i * perCell, i * perCell + 1];
    addToBand(matrix, wall, wall, cells.toAmbient[i] + cells.toCoolant[i]);
    right[wall] += cells.toAmbient[i] * cells.ambient + cells.toCoolant[i] * cells.coolant[i];
    couple(matrix, wall, core, cells.across[i]);
    if (i + 1 < cells.count) {
      couple(matrix, wall, wall + perCell, cells.link[i]);
      couple(matrix, core, core + perCell, cells.coreLink[i]);
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
    if (stream && stream.massFlow > 0) addStream(matrix, right, stream, i, from);
    else {
      addToBand(matrix, core + 1, core + 1, 1);
      right[wall] += stream ? stream.dissipation[i] : 0;
    }
  }
  for (const { first, contact } of cells.heaters) {
    contact.forEach((value, i) => {
      addToBand(matrix, (first + i) * perCell, (first + i) * perCell, value);
    });
  }
  return { matrix, right };
}

/** A conductance between two unknowns. */
function couple(matrix: SquareBand, a: number, b: number, conductance: number): void {
  addToBand(matrix, a, a, conductance);
  addToBand(matrix, b, b, conductance);
  addToBand(matrix, a, b, -conductance);
  addToBand(matrix, b, a, -conductance);
}

/** The wall pays for the rise of enthalpy less the heat made; the rise itself follows the temperatures. */
function addStream(matrix: SquareBand, right: Float64Array, stream: Stream, i: number, from: HeatState): void {
  const [wall, core, behind] = [i * perCell, i * perCell + 1, i * perCell + 2];
  const [atWall, atCore] = [from.wall[i], from.core[i]];
  const before = i > 0 ? from.enthalpy[i - 1] : stream.feed;
  const now = enthalpyBehind(stream, i, before, atWall, atCore);
  const slope = (enthalpyBehind(stream, i, before, atWall + temperatureStep, atCore) - now) / temperatureStep;
  const byWall = slope;
  const byCore = stream.wallSide[i] > 0 ? (slope * stream.coreSide[i]) / stream.wallSide[i] : 0;
  const byBefore = (enthalpyBehind(stream, i, before + enthalpyStep, atWall, atCore) - now) / enthalpyStep;
  const { massFlow } = stream;
  addToBand(matrix, wall, behind, massFlow);
  right[wall] += stream.dissipation[i];
  addToBand(matrix, behind, behind, 1);
  addToBand(matrix, behind, wall, -byWall);
  addToBand(matrix, behind, core, -byCore);
  right[behind] += now - byWall * atWall - byCore * atCore;
  if (i > 0) {
    addToBand(matrix, wall, behind - perCell, -massFlow);
    addToBand(matrix, behind, behind - perCell, -byBefore);
    right[behind] -= byBefore * before;
  } else right[wall] += massFlow * stream.feed;
}
