/** Walls and flow that agree: the flow takes heat from the walls, the walls decide the flow. */

import { heaterCapacity } from '../heat/heaterCapacity.ts';
import type { Load } from '../heat/stream.ts';
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

/** Where a search begins: a working point, what it loads the walls with, and the flow it is taken for. */
interface Beginning {
  readonly driven: DrivenPoint;
  readonly taken: number;
  readonly load: Load;
  readonly walls: WallTemperatures | null;
}

/** Begins at standstill. */
function fromStandstill(machine: Machine): Beginning {
  const driven = drivenPoint(machine);
  const taken = driven.point.volumeFlow;
  return { driven, taken, load: loadOf(machine, driven.point.state, taken), walls: null };
}

/** Begins at a design that differs little; null where it has another number of reaches, or gave nothing. */
function fromNeighbour(machine: Machine, near: SettledHeat | null): Beginning | null {
  if (!near?.converged || !(near.driven.point.memory.volumeFlow > 0)) return null;
  const { memory, screwSpeed, volumeFlow, state } = near.driven.point;
  if (memory.dissipation.length !== machine.channel.reaches.length) return null;
  const taken = (volumeFlow * machine.design.process.screwSpeed) / screwSpeed;
  const load = { ...loadOf(near.machine, state, taken), stations: machine.stations };
  return { driven: near.driven, taken, load, walls: near.machine.walls };
}

/**
 * Settles a machine, then asks each heater for its capacity at the load found, and settles again where one of them
 * holds the output down. The shear heat and exchange of that load stand for those of other flows.
 * @param near a settled machine that differs little, to begin with; what is found stays within the search's tolerance
 */
export function settledMachine(machine: Machine, near: SettledHeat | null = null): SettledHeat {
  const free = settledHeat(machine, near);
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
function settledHeat(machine: Machine, near: SettledHeat | null = null): SettledHeat {
  const begun = fromNeighbour(machine, near);
  let { driven, taken, load, walls: known } = begun ?? fromStandstill(machine);
  let [low, high] = [0, Number.POSITIVE_INFINITY];
  let before: { taken: number; miss: number } | null = null;
  for (let pass = 0; pass < mostPasses; pass++) {
    const walls = wallTemperatures(machine.design, load, undefined, known);
    known = walls;
    const loaded = withWalls(machine, walls);
    driven = drivenPoint(loaded, driven.point.memory);
    const found = driven.point.volumeFlow;
    const miss = found - taken;
    if (Math.abs(miss) <= settled * Math.max(found, taken)) {
      return { machine: loaded, driven, converged: walls.converged };
    }
    if (pass + 1 === mostPasses) break;
    // a neighbour's heat tells too little of which way the flow goes
    if (begun && pass === 0) taken = found;
    else {
      if (miss > 0) low = taken;
      else high = taken;
      const answer: number = before ? (before.miss - miss) / (taken - before.taken) : 1;
      const guess = taken + miss / (answer >= 1 && answer <= steepest ? answer : 1);
      before = { taken, miss };
      taken = guess > low && guess < high ? guess : (low + Math.min(high, 2 * Math.max(found, low))) / 2;
    }
    load = loadOf(machine, driven.point.state, taken);
  }
  return { machine: known ? withWalls(machine, known) : machine, driven, converged: false };
}
