/** Walls and flow that agree: the flow takes heat from the walls, the walls decide the flow. */

import { heaterCapacity } from '../heat/heaterCapacity.ts';
import { type WallTemperatures, wallTemperatures } from '../heat/wallTemperature.ts';
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
 * Settles a machine, then asks each heater for its capacity at the load found, and settles again where one of them
 * holds the output down. The shear heat and exchange of that load stand for those of other flows.
 */
export function settledMachine(machine: Machine): SettledHeat {
  const free = settledHeat(machine);
  const { point } = free.driven;
  const { holding, melting } = heaterCapacity(machine.design, loadOf(free.machine, point.state, point.volumeFlow));
  const density = machine.design.material.meltDensity;
  const heaters = {
    holding: holding.massFlow / density,
    holdingLimit: holding.limitedBy,
    melting: melting.massFlow / density,
  };
  // where walls and flow chase one another, the heaters' capacity holds the flow down
  if (free.converged && heaters.melting >= point.volumeFlow) return { ...free, machine: { ...free.machine, heaters } };
  return settledHeat({ ...machine, heaters });
}

/** Steepest answer of the flow found to the flow taken that is believed. */
const steepest = 20;

/**
 * Brings walls and working point together.
 * @param machine with the walls of standstill
 * More flow makes colder walls and colder walls less flow, so flows found too large and too small close in on the
 * answer. Secant steps, as the flow may answer the walls about as strongly as they answer it; a guess outside what is
 * known is halved.
 */
export function settledHeat(machine: Machine): SettledHeat {
  let driven = drivenPoint(machine);
  let [low, high] = [0, Number.POSITIVE_INFINITY];
  let taken = driven.point.volumeFlow;
  let near: WallTemperatures | null = null;
  let before: { taken: number; miss: number } | null = null;
  for (let pass = 0; pass < mostPasses; pass++) {
    const walls = wallTemperatures(machine.design, loadOf(machine, driven.point.state, taken), undefined, near);
    near = walls;
    const loaded = withWalls(machine, walls);
    driven = drivenPoint(loaded, driven.point.memory);
    const found = driven.point.volumeFlow;
    const miss = found - taken;
    if (Math.abs(miss) <= settled * Math.max(found, taken)) {
      return { machine: loaded, driven, converged: walls.converged };
    }
    if (pass + 1 === mostPasses) return { machine: loaded, driven, converged: false };
    if (miss > 0) low = taken;
    else high = taken;
    const answer: number = before ? (before.miss - miss) / (taken - before.taken) : 1;
    const guess = taken + miss / (answer >= 1 && answer <= steepest ? answer : 1);
    before = { taken, miss };
    taken = guess > low && guess < high ? guess : (low + Math.min(high, 2 * Math.max(found, low))) / 2;
  }
  return { machine, driven, converged: false };
}
