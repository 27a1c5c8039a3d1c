/** The flow at which screw and head balance at a speed. */

import { bracketedRoot, bracketUpward } from '../math/roots.ts';
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

/** Share of the swept volume that stands for "almost no flow". */
export const trickle = 1e-5;

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
  const cold = balance(machine, screwSpeed, freshMemory(machine).dissipation, scale, 3e-3 * scale);
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
    found = balance(machine, screwSpeed, dissipation, scale, 2e-4 * scale);
    const state = evaluateFlow(machine, screwSpeed, Math.max(found.volumeFlow, trickle * scale), dissipation);
    dissipation = blended(dissipation, dissipationOf(state));
    if (!found.converged || !state.march.converged || !state.head.converged) break;
    if (Math.abs(found.volumeFlow - before) < 2e-3 * scale) {
      const { volumeFlow, slope } = found;
      return { volumeFlow, converged: true, memory: { dissipation, screwSpeed, volumeFlow, slope } };
    }
  }
  return { volumeFlow: found.volumeFlow, converged: false, memory: freshMemory(machine) };
}

/** Secant steps from a known neighbourhood, renewing the heat at each. */
function settle(machine: Machine, from: PumpingMemory, scale: number): Pumping {
  const { screwSpeed } = from;
  let { dissipation, volumeFlow, slope } = from;
  let before: { flow: number; excess: number } | null = null;
  for (let pass = 0; pass < 14; pass++) {
    const state = evaluateFlow(machine, screwSpeed, Math.max(volumeFlow, trickle * scale), dissipation);
    const excess = state.march.startPressure;
    if (before && Math.abs(volumeFlow - before.flow) > 1e-3 * scale) {
      const seen = (excess - before.excess) / (volumeFlow - before.flow);
      if (seen > 0.2 * slope && seen < 5 * slope) slope = seen;
    }
    const next = dissipationOf(state);
    const heatChange = relativeChange(dissipation, next);
    dissipation = pass > 0 ? blended(dissipation, next) : next;
    before = { flow: volumeFlow, excess };
    const step = Math.max(-0.4 * volumeFlow, Math.min(0.6 * volumeFlow, -excess / slope));
    volumeFlow += step;
    if (Math.abs(step) < 3e-4 * scale && heatChange < 0.05) {
      const converged = state.march.converged && state.head.converged;
      return { volumeFlow, converged, memory: { dissipation, screwSpeed, volumeFlow, slope } };
    }
  }
  return { volumeFlow, converged: false, memory: { dissipation, screwSpeed, volumeFlow, slope } };
}

interface Balance {
  readonly volumeFlow: number;
  readonly slope: number;
  readonly converged: boolean;
}

/** Bracketed search for the flow at which the left-over pressure vanishes, to a tolerance in m³/s. */
function balance(
  machine: Machine,
  screwSpeed: number,
  dissipation: Float64Array,
  scale: number,
  tolerance: number,
): Balance {
  const excess = (flow: number) =>
    evaluateFlow(machine, screwSpeed, Math.max(flow, trickle * scale), dissipation).march.startPressure;
  if (excess(0) >= 0) return { volumeFlow: 0, slope: 0, converged: true };
  const bracket = bracketUpward(excess, 0.4 * scale, 12);
  if (!bracket) return { volumeFlow: 0, slope: 0, converged: false };
  const root = bracketedRoot(excess, bracket.low, bracket.high, { tolerance });
  const flow = Math.max(root.x, trickle * scale);
  const slope = (excess(1.02 * flow) - excess(0.98 * flow)) / (0.04 * flow);
  return { volumeFlow: flow, slope, converged: root.converged };
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
