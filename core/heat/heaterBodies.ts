/** Heaters as bodies of one temperature: their duties, and the temperatures that fulfil them. */

import { addToBand, factorSquareBand, type SquareBand, solveSquareBand, squareBand } from '../math/bandedLu.ts';
import type { HeatCells } from './heatCells.ts';
import type { Heater } from './zoneCells.ts';

/** What a heater does: holds the mean of its wall at its set temperature, gives all its watts, or none. */
export type Duty = 'held' | 'weak' | 'off';

/** Heat that bodies store over a step of time: W/K per body, and their temperatures before it, K. */
export interface Stored {
  readonly perKelvin: Float64Array;
  readonly before: Float64Array;
}

/** Watts and kelvins that count as nothing when a thermostat switches. */
const nothing = 1e-9;

/** Mean temperature of the wall under a heater, weighted by contact, K. */
export const underHeater = (heater: Heater, wall: Float64Array, stride = 1): number => {
  let sum = 0;
  for (let i = 0; i < heater.contact.length; i++) sum += heater.contact[i] * wall[(heater.first + i) * stride];
  return sum / heater.whole;
};

/** Watts that a heater's body hands to the wall. */
export const givenBy = (heater: Heater, body: number, wall: Float64Array): number =>
  heater.whole * (body - underHeater(heater, wall));

/** Duty that a thermostat takes on next, from what its heater would have to give (W) or what its wall reached (K). */
export function dutyOf(heater: Heater, duty: Duty, given: number, reached: number, limited: boolean): Duty {
  if (duty === 'held') {
    if (given < -nothing) return 'off';
    return limited && given > heater.maxPower + nothing ? 'weak' : 'held';
  }
  if (duty === 'weak') return reached > heater.setTemperature + nothing ? 'held' : 'weak';
  return reached < heater.setTemperature - nothing ? 'held' : 'off';
}

/**
 * Solves a factored system together with the heaters' bodies.
 * @param right right side without heaters; replaced by the solution
 * @param stride unknowns per cell, the wall first
 * @param stored null in steady state
 * @returns temperatures of the bodies, K
 */
export function solveWithBodies(
  factored: SquareBand,
  right: Float64Array,
  cells: HeatCells,
  duties: readonly Duty[],
  stride: number,
  stored: Stored | null = null,
): Float64Array {
  solveSquareBand(factored, right);
  const answers = cells.heaters.map((heater) => {
    const answer = new Float64Array(factored.size);
    for (let i = 0; i < heater.contact.length; i++) answer[(heater.first + i) * stride] = heater.contact[i];
    solveSquareBand(factored, answer);
    return answer;
  });
  const bodies = bodiesFor(cells, duties, right, answers, stride, stored);
  answers.forEach((answer, k) => {
    for (let i = 0; i < right.length; i++) right[i] += bodies[k] * answer[i];
  });
  return bodies;
}

/** Temperatures of the bodies that fulfil their duties, given the answer of the cells to each. */
function bodiesFor(
  { heaters }: HeatCells,
  duties: readonly Duty[],
  without: Float64Array,
  answers: readonly Float64Array[],
  stride: number,
  stored: Stored | null,
): Float64Array {
  const n = heaters.length;
  const small = squareBand(n, n - 1);
  const right = new Float64Array(n);
  heaters.forEach((heater, k) => {
    const held = duties[k] === 'held';
    const kept = stored ? stored.perKelvin[k] / heater.whole : 0;
    answers.forEach((answer, j) => {
      const mean = underHeater(heater, answer, stride);
      addToBand(small, k, j, held ? mean : (j === k ? 1 + kept : 0) - mean);
    });
    const watts = duties[k] === 'weak' ? heater.maxPower : 0;
    const apart = underHeater(heater, without, stride);
    right[k] = held
      ? heater.setTemperature - apart
      : watts / heater.whole + apart + (stored ? kept * stored.before[k] : 0);
  });
  factorSquareBand(small);
  solveSquareBand(small, right);
  return right;
}
