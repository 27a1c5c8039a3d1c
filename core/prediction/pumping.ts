/** The flow at which screw and head balance at a speed. */

import { type Bracket, bracketedRoot } from '../math/roots.ts';
import { dissipationOf, evaluateFlow } from './flowState.ts';
import type { Machine } from './machine.ts';

/** What one speed left behind for the next. */
export interface PumpingMemory {
  /** heat made in the melt, W/m per reach */
  readonly dissipation: Float64Array;
  /** rev/s; 0 = nothing known yet */
  readonly screwSpeed: number;
  /** m³/s */
  readonly volumeFlow: number;
  /** d(left-over pressure)/d(flow), Pa s/m³ */
  readonly slope: number;
}

/** Balance of screw and head. */
export interface Pumping {
  /** m³/s, 0 where the screw cannot push anything out */
  readonly volumeFlow: number;
  readonly converged: boolean;
  readonly memory: PumpingMemory;
}

/** Nothing known yet. */
export const freshMemory = (machine: Machine): PumpingMemory => ({
  dissipation: new Float64Array(machine.channel.reaches.length),
  screwSpeed: 0,
  volumeFlow: 0,
  slope: 0,
});

/** Share of the swept volume that stands for "almost no flow"; less than this counts as none. */
export const trickle = 1e-9;

/** A balance may be off by this share of the head's pressure. */
const pressureTolerance = 0.01;

/** Flow is found to this share of itself. */
const flowTolerance = 1e-3;

/** A first flow, without heat, only has to lie near. */
const coldTolerance = 0.05;

/**
 * Pumping flow at a speed.
 * @param screwSpeed rev/s, > 0
 * @param memory from a neighbouring speed
 * Root of the pressure left over where the melt begins, which grows with the flow. Each evaluation also renews the heat
 * made in the melt, so flow and temperatures settle together.
 */
export function pumpingAt(machine: Machine, screwSpeed: number, memory: PumpingMemory): Pumping {
  const scale = machine.sweptPerTurn * screwSpeed;
  if (!(scale > 0)) return { volumeFlow: 0, converged: true, memory };
  if (memory.screwSpeed > 0 && memory.volumeFlow > 0) {
    const ratio = screwSpeed / memory.screwSpeed;
    const near = {
      dissipation: memory.dissipation.map((value) => value * ratio ** 1.5),
      screwSpeed,
      volumeFlow: memory.volumeFlow * ratio,
      slope: memory.slope,
    };
    const warm = settle(machine, near, scale);
    if (warm.converged) return warm;
  }
  const cold = balance(machine, screwSpeed, freshMemory(machine).dissipation, scale, coldTolerance);
  if (!cold.converged || !(cold.volumeFlow > 0) || !(cold.slope > 0)) {
    return { volumeFlow: cold.volumeFlow, converged: cold.converged, memory: { ...freshMemory(machine), screwSpeed } };
  }
  const settled = settle(machine, { ...freshMemory(machine), ...cold, screwSpeed }, scale);
  return settled.converged ? settled : patient(machine, screwSpeed, scale, settled.memory);
}

/** Bracketed searches in turn with renewed heat: slow, for channels that run empty somewhere in the middle. */
function patient(machine: Machine, screwSpeed: number, scale: number, from: PumpingMemory): Pumping {
  let { dissipation } = from;
  let found: Balance = { volumeFlow: from.volumeFlow, slope: from.slope, converged: false };
  for (let pass = 0; pass < 6; pass++) {
    const before = found.volumeFlow;
    found = balance(machine, screwSpeed, dissipation, scale, flowTolerance);
    const state = evaluateFlow(machine, screwSpeed, Math.max(found.volumeFlow, trickle * scale), dissipation);
    dissipation = blended(dissipation, dissipationOf(state));
    if (!found.converged || !state.march.converged || !state.head.converged) break;
    if (Math.abs(found.volumeFlow - before) <= 5 * flowTolerance * found.volumeFlow) {
      const { volumeFlow, slope } = found;
      return { volumeFlow, converged: true, memory: { dissipation, screwSpeed, volumeFlow, slope } };
    }
  }
  return { volumeFlow: found.volumeFlow, converged: false, memory: freshMemory(machine) };
}

/**
 * Secant steps from a known neighbourhood, renewing the heat at each.
 * Settled where the step is small against the flow and, since a small step may come from a wrong slope, the pressure
 * left over is small against the head's or its sign has turned close by (near free discharge the head tells nothing).
 */
function settle(machine: Machine, from: PumpingMemory, scale: number): Pumping {
  const { screwSpeed } = from;
  let { dissipation, volumeFlow, slope } = from;
  let before: { flow: number; excess: number } | null = null;
  for (let pass = 0; pass < 14; pass++) {
    if (!(volumeFlow > trickle * scale)) break;
    const state = evaluateFlow(machine, screwSpeed, volumeFlow, dissipation);
    const excess = state.march.startPressure;
    const apart = before ? Math.abs(volumeFlow - before.flow) : 0;
    if (before && apart > flowTolerance * volumeFlow) {
      const seen = (excess - before.excess) / (volumeFlow - before.flow);
      if (seen > 0.2 * slope && seen < 5 * slope) slope = seen;
    }
    const turned = before !== null && excess * before.excess <= 0 && apart < 5 * flowTolerance * volumeFlow;
    const balanced = turned || Math.abs(excess) <= pressureTolerance * state.headPressure;
    const next = dissipationOf(state);
    const heatChange = relativeChange(dissipation, next);
    dissipation = pass > 0 ? blended(dissipation, next) : next;
    before = { flow: volumeFlow, excess };
    const wanted = Math.max(-0.4 * volumeFlow, Math.min(0.6 * volumeFlow, -excess / slope));
    const small = Math.abs(wanted) < flowTolerance * volumeFlow;
    if (small && balanced && heatChange < 0.05) {
      volumeFlow += wanted;
      const converged = state.march.converged && state.head.converged;
      return { volumeFlow, converged, memory: { dissipation, screwSpeed, volumeFlow, slope } };
    }
    // a small step that is not to be trusted is taken further, to see the sign turn
    volumeFlow += small && !balanced ? -Math.sign(excess) * 3 * flowTolerance * volumeFlow : wanted;
  }
  return { volumeFlow, converged: false, memory: { dissipation, screwSpeed, volumeFlow, slope } };
}

interface Balance {
  readonly volumeFlow: number;
  readonly slope: number;
  readonly converged: boolean;
}

/**
 * Bracketed search for the flow at which the left-over pressure vanishes, over the logarithm of the flow: a narrow
 * orifice may let out a millionth of what a wide one does.
 * @param tolerance of the flow, relative
 */
function balance(
  machine: Machine,
  screwSpeed: number,
  dissipation: Float64Array,
  scale: number,
  tolerance: number,
): Balance {
  const seen = new Map<number, number>();
  const excess = (logFlow: number): number => {
    const known = seen.get(logFlow);
    if (known !== undefined) return known;
    const found = evaluateFlow(machine, screwSpeed, Math.exp(logFlow), dissipation).march.startPressure;
    seen.set(logFlow, found);
    return found;
  };
  const bracket = bracketFlow(excess, Math.log(0.4 * scale), Math.log(trickle * scale));
  if (bracket === 'nothing') return { volumeFlow: 0, slope: 0, converged: true };
  if (bracket === 'everything') return { volumeFlow: 0, slope: 0, converged: false };
  const root = bracketedRoot(excess, bracket.low, bracket.high, { tolerance });
  const flow = Math.exp(root.x);
  // the steps that follow mend the slope, so one side will do
  const slope = (excess(root.x + 0.02) - excess(root.x)) / (0.02 * flow);
  return { volumeFlow: flow, slope, converged: root.converged };
}

/** Widens from a first guess until the sign turns: downward in growing steps to the least flow, upward by doubling. */
function bracketFlow(
  excess: (logFlow: number) => number,
  first: number,
  least: number,
): Bracket | 'nothing' | 'everything' {
  let at = first;
  if (excess(at) < 0) {
    for (let doubling = 0; doubling < 12; doubling++) {
      const low = at;
      at += Math.LN2;
      if (excess(at) >= 0) return { low, high: at };
    }
    return 'everything';
  }
  for (let step = 1; at > least; step *= 1.7) {
    const high = at;
    at = Math.max(least, at - step);
    if (excess(at) < 0) return { low: at, high };
  }
  return 'nothing';
}

/** Change of the summed heat, relative. */
function relativeChange(before: Float64Array, after: Float64Array): number {
  let was = 0;
  let is = 0;
  for (let i = 0; i < before.length; i++) {
    was += before[i];
    is += after[i];
  }
  const most = Math.max(was, is);
  return most > 0 ? Math.abs(is - was) / most : 0;
}

/** Geometric middle: heat and viscosity answer each other in opposite directions. */
const blended = (before: Float64Array, after: Float64Array): Float64Array =>
  before.map((value, i) => (value > 0 && after[i] > 0 ? Math.sqrt(value * after[i]) : after[i]));
