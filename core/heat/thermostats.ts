/** Which heaters hold their set temperature, which give all they have, which are off: found together with the heat. */

import type { HeatCells } from './heatCells.ts';
import { type Duty, dutyOf, givenBy, underHeater } from './heaterBodies.ts';
import { type HeatState, heatStep } from './heatSystem.ts';
import type { Stream } from './stream.ts';

/** Change of a temperature that ends the iteration, K; steps are quadratic, so what is left is far smaller. */
const tolerance = 1e-3;
/** Most steps, and those after which they go only half-way: at the edge of melting two states can take turns. */
const mostSteps = 80;
const freeSteps = 8;
/** Whole steps again where a step changed this much less than the one before it. */
const easing = 0.7;

/** Heat in balance. */
export interface HeldHeat {
  readonly state: HeatState;
  readonly duties: readonly Duty[];
  readonly converged: boolean;
}

/**
 * Steady heat with thermostats: a heater gives between nothing and its watts, all of them only below its set
 * temperature, none only above it.
 * @param limited false lets every heater have what it needs
 * @param from heat of a neighbouring load on the same cells, to start from: fewer steps, the same answer
 * Active-set iteration joined with Newton steps for the stream (Hintermueller, Ito & Kunisch 2003: for systems of this
 * sign structure the sets settle in few steps).
 */
export function heldHeat(
  cells: HeatCells,
  stream: Stream | null,
  limited = true,
  from: Pick<HeldHeat, 'state' | 'duties'> = coldStart(cells, stream),
): HeldHeat {
  const { heaters } = cells;
  let { state, duties } = from;
  let before = 0;
  for (let step = 0; step < mostSteps; step++) {
    const next = heatStep(cells, stream, duties, state);
    const change = Math.max(farthest(next.wall, state.wall), farthest(next.core, state.core));
    state = step < freeSteps || change < easing * before ? next : halfWay(state, next);
    before = change;
    const wanted = heaters.map((heater, k) => {
      const given = givenBy(heater, next.bodies[k], next.wall);
      return dutyOf(heater, duties[k], given, underHeater(heater, next.wall), limited);
    });
    const same = wanted.every((duty, k) => duty === duties[k]);
    if (same && change < tolerance) return { state: next, duties, converged: true };
    duties = wanted;
  }
  return { state, duties, converged: false };
}

/** All at the highest set temperature, every heater held. */
function coldStart({ heaters, count, ambient }: HeatCells, stream: Stream | null): Pick<HeldHeat, 'state' | 'duties'> {
  const start = heaters.reduce((most, heater) => Math.max(most, heater.setTemperature), ambient);
  const state = {
    wall: new Float64Array(count).fill(start),
    core: new Float64Array(count).fill(start),
    enthalpy: new Float64Array(count).fill(stream?.feed ?? 0),
    bodies: new Float64Array(heaters.length),
  };
  return { state, duties: heaters.map(() => 'held') };
}

/** Half-way between two states; heat that balances in both does so between them. */
function halfWay(a: HeatState, b: HeatState): HeatState {
  const middle = (x: Float64Array, y: Float64Array) => x.map((value, i) => (value + y[i]) / 2);
  return {
    wall: middle(a.wall, b.wall),
    core: middle(a.core, b.core),
    enthalpy: middle(a.enthalpy, b.enthalpy),
    bodies: middle(a.bodies, b.bodies),
  };
}

const farthest = (a: Float64Array, b: Float64Array): number =>
  a.reduce((most, value, i) => Math.max(most, Math.abs(value - b[i])), 0);
