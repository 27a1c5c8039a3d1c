/** Walls and flow that agree: the flow takes heat from the walls, the walls decide the flow. */

import { wallTemperatures } from '../heat/wallTemperature.ts';
import { type DrivenPoint, drivenPoint } from './drivenPoint.ts';
import { loadOf } from './heatBalance.ts';
import { type Machine, withWalls } from './machine.ts';

/** Relative difference between flow taken and flow found that ends the search. */
const settled = 2e-3;
/** Most passes; two or three are usual. */
const mostPasses = 12;

/** A machine under load with its working point. */
export interface SettledHeat {
  readonly machine: Machine;
  readonly driven: DrivenPoint;
  readonly converged: boolean;
}

/**
 * Brings walls and working point together.
 * @param machine with the walls of standstill
 * More flow makes colder walls and colder walls less flow, so flows found too large and too small close in on the
 * answer; a guess outside them is halved.
 */
export function settledHeat(machine: Machine): SettledHeat {
  let driven = drivenPoint(machine);
  let [low, high] = [0, Number.POSITIVE_INFINITY];
  let taken = driven.point.volumeFlow;
  for (let pass = 0; pass < mostPasses; pass++) {
    const walls = wallTemperatures(machine.design, loadOf(machine, driven.point.state, taken));
    const loaded = withWalls(machine, walls);
    driven = drivenPoint(loaded, driven.point.memory);
    const found = driven.point.volumeFlow;
    if (Math.abs(found - taken) <= settled * Math.max(found, taken)) {
      return { machine: loaded, driven, converged: walls.converged };
    }
    if (found > taken) low = taken;
    else high = taken;
    if (pass + 1 === mostPasses) return { machine: loaded, driven, converged: false };
    taken = found > low && found < high ? found : (low + Math.min(high, 2 * Math.max(found, low))) / 2;
  }
  return { machine, driven, converged: false };
}
