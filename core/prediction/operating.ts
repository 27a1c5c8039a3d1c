/** The working point at a speed: every capacity, the least of them, and the state of the machine there. */

import { type FeedCapacity, feedCapacity } from '../feed/capacity.ts';
import { blockedPassages } from '../feed/grainFit.ts';
import { bracketedRoot } from '../math/roots.ts';
import { meltProgress } from '../melting/progress.ts';
import { dissipationOf, evaluateFlow, type FlowState } from './flowState.ts';
import { type HeatBalance, heatBalance } from './heatBalance.ts';
import type { Machine } from './machine.ts';
import { type Pumping, type PumpingMemory, pumpingAt, trickle } from './pumping.ts';
import { solidsAt } from './solidsStage.ts';
import type { CapacityKind } from './types.ts';

/** Melt flows, m³/s, that each thing alone would allow at this speed; Infinity where it does not bind. */
type FlowLimits = Readonly<
  Record<Extract<CapacityKind, 'pumping' | 'feed' | 'starved' | 'heater' | 'melting' | 'grainFit'>, number>
>;

/** The working point. */
export interface WorkingPoint {
  readonly screwSpeed: number;
  /** what comes out, m³/s */
  readonly volumeFlow: number;
  readonly limits: FlowLimits;
  readonly limit: keyof FlowLimits;
  readonly feed: FeedCapacity;
  readonly state: FlowState;
  readonly heat: HeatBalance;
  /** torque of the melt on the screw: channel, film on the bed and tip; flight land; N m */
  readonly torqueChannel: number;
  readonly torqueClearance: number;
  /** torque of the granules on the screw, N m */
  readonly torqueSolids: number;
  readonly converged: boolean;
  readonly memory: PumpingMemory;
}

/**
 * Finds the working point.
 * @param screwSpeed rev/s, > 0
 * @param memory from a neighbouring speed, or freshMemory
 */
export function workingPoint(machine: Machine, screwSpeed: number, memory: PumpingMemory): WorkingPoint {
  const pumping = pumpingAt(machine, screwSpeed, memory);
  const feed = feedCapacity(machine.design, machine.feed, screwSpeed);
  const scale = Math.max(machine.sweptPerTurn * screwSpeed, 1e-15);
  const first = withoutHeater(machine, screwSpeed, pumping, feed, scale);
  const before = least(first);
  const trial = stateAt(machine, screwSpeed, first[before], scale, pumping);
  const heat = heatBalance(machine, trial);
  const short = coldForWatts(machine, before);
  const heater = short ? Math.min(heat.heaterCapacity, Math.max(0, first[before])) : heat.heaterCapacity;
  const limits: FlowLimits = { ...first, heater };
  const limit = short && heater <= first[before] ? 'heater' : least(limits);
  const volumeFlow = Math.max(0, limits[limit]);
  const state = limit === before ? trial : stateAt(machine, screwSpeed, volumeFlow, scale, pumping);
  const power = powers(machine, state);
  const turning = 2 * Math.PI * screwSpeed;
  return {
    screwSpeed,
    volumeFlow,
    limits,
    limit,
    feed,
    state,
    heat: limit === before ? heat : heatBalance(machine, state),
    torqueChannel: (power.channel + state.head.swirlPower) / turning,
    torqueClearance: power.land / turning,
    torqueSolids: solidsAt(machine, state, volumeFlow).torque,
    converged: pumping.converged && state.march.converged && state.head.converged,
    memory: pumping.memory,
  };
}

/**
 * Whether a heater that gives all it has, and leaves its zone below melting, is why granules melt late or nothing flows.
 * @param limit the least of the other capacities
 */
const coldForWatts = ({ design, walls }: Machine, limit: keyof FlowLimits): boolean =>
  (limit === 'melting' || limit === 'pumping') &&
  walls.zones.some(
    ({ duty, reached, setTemperature }) =>
      duty === 'weak' && reached < design.material.melting && setTemperature >= design.material.melting,
  );

/**
 * The point with its melting capacity computed where it was only seen not to bind.
 * @param near melting capacity of a neighbouring point, m³/s, to start from; 0 = unknown
 */
export function withMelting(machine: Machine, point: WorkingPoint, near = 0): WorkingPoint {
  if (point.limits.melting < Number.POSITIVE_INFINITY) return point;
  const scale = Math.max(machine.sweptPerTurn * point.screwSpeed, 1e-15);
  const from = near > 0 && Number.isFinite(near) ? near : scale;
  const melting = meltingReserve(lateness(machine, point.screwSpeed, scale, point.memory.dissipation), from);
  return { ...point, limits: { ...point.limits, melting: Math.max(melting, point.volumeFlow) } };
}

/** Melting capacity to a percent, stepping from a guess until the front passes the last flight, m³/s. */
function meltingReserve(late: (flow: number) => number, from: number): number {
  const up = late(from) < 0;
  const step = up ? 1.3 : 1 / 1.3;
  for (let k = 0, at = from; k < 24; k++, at *= step) {
    const next = at * step;
    if (late(next) < 0 === up) continue;
    const [low, high] = up ? [at, next] : [next, at];
    return bracketedRoot(late, low, high, { tolerance: 0.01 * low }).x;
  }
  return up ? Number.POSITIVE_INFINITY : 0;
}

/** The point of a screw that does not turn: nothing flows, no heat is made; torque as the slowest speed asks for. */
export function stalledPoint(machine: Machine, slow: WorkingPoint): WorkingPoint {
  const { screwSpeed, heat } = slow;
  const still = trickle * machine.sweptPerTurn * screwSpeed;
  const state = evaluateFlow(
    machine,
    screwSpeed,
    Math.max(still, 1e-24),
    slow.memory.dissipation.map(() => 0),
  );
  return { ...slow, volumeFlow: 0, state, heat: { ...heat, product: 0, dissipation: 0, heater: heat.loss } };
}

/** State at a flow; below the pumping flow the channel is partly empty and makes less heat, which takes two passes. */
function stateAt(machine: Machine, speed: number, flow: number, scale: number, pumping: Pumping): FlowState {
  const some = Math.max(flow, trickle * scale);
  const { dissipation } = pumping.memory;
  if (some >= 0.999 * pumping.volumeFlow) return evaluateFlow(machine, speed, some, dissipation);
  const share = some / pumping.volumeFlow;
  const first = evaluateFlow(
    machine,
    speed,
    some,
    dissipation.map((value) => value * share),
  );
  return evaluateFlow(machine, speed, some, dissipationOf(first));
}

function withoutHeater(
  machine: Machine,
  screwSpeed: number,
  pumping: Pumping,
  feed: FeedCapacity,
  scale: number,
): FlowLimits {
  const { material, process } = machine.design;
  const starved = process.starvedRate;
  const limits = {
    grainFit: grainFits(machine) ? Number.POSITIVE_INFINITY : 0,
    starved: starved === null ? Number.POSITIVE_INFINITY : starved / material.meltDensity,
    feed: feed.massFlow / material.meltDensity,
    melting: Number.POSITIVE_INFINITY,
    pumping: pumping.volumeFlow,
    heater: Number.POSITIVE_INFINITY,
  };
  const others = limits[least(limits)];
  return { ...limits, melting: meltingFlow(machine, screwSpeed, scale, pumping.memory.dissipation, others) };
}

/** Nine in ten granules pass from the hopper into the channel. */
const grainFits = (machine: Machine): boolean =>
  machine.feed !== null && blockedPassages(machine.design, machine.feed).length === 0;

const least = (limits: FlowLimits): keyof FlowLimits =>
  (Object.keys(limits) as (keyof FlowLimits)[]).reduce((best, kind) => (limits[kind] < limits[best] ? kind : best));

/** How far behind the last flight melting ends at a flow, in reaches; negative = in time. */
function lateness(
  machine: Machine,
  screwSpeed: number,
  scale: number,
  dissipation: Float64Array,
): (flow: number) => number {
  const { design, stations, wallAt, lastFlight } = machine;
  return (flow) => {
    const massFlow = Math.max(flow, trickle * scale) * design.material.meltDensity;
    const { start } = meltProgress({ design, stations, walls: wallAt, screwSpeed, massFlow, dissipation });
    return start.reach + 1 - start.share - lastFlight;
  };
}

/**
 * Largest flow whose granules are molten by the end of the last flight, m³/s; 0 where none is.
 * @param enough a flow, m³/s, > 0: where it melts, Infinity is given without looking further
 */
function meltingFlow(
  machine: Machine,
  screwSpeed: number,
  scale: number,
  dissipation: Float64Array,
  enough: number,
): number {
  if (machine.lastFlight < 0) return 0;
  const late = lateness(machine, screwSpeed, scale, dissipation);
  if (late(enough) < 0) return Number.POSITIVE_INFINITY;
  if (late(0) >= 0) return 0;
  return bracketedRoot(late, 0, enough, { tolerance: 1e-4 * Math.min(scale, enough) }).x;
}

function powers(machine: Machine, state: FlowState): { channel: number; land: number } {
  const { z } = machine.stations;
  let channel = 0;
  let land = 0;
  state.march.flows.forEach((flow, i) => {
    if (!flow) return;
    const length =
      (z[i + 1] - z[i]) * state.march.fill[i] * (i === state.melt.start.reach ? state.melt.start.share : 1);
    channel += flow.channelPower * length;
    land += flow.landPower * length;
  });
  state.melt.filmPower.forEach((perLength, i) => {
    channel += perLength * (z[i + 1] - z[i]);
  });
  return { channel: Math.max(0, channel), land };
}
