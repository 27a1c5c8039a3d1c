/** The solid bed between wall and screw core: warmed up to melting, then melted. */

import { leastDemand } from './filmHeat.ts';
import type { Granulate, MeltingCase } from './types.ts';

/** What warms the bed. */
export interface Warming {
  /** of wall and core together, W/(m K) */
  readonly side: number;
  /** temperature that they draw the bed to, K */
  readonly target: number;
}

/** Stretches that a bed needs to warm up and to melt by conduction alone; Infinity where it never does. */
export function conductionTime(c: MeltingCase, state: Granulate, { side, target }: Warming, length: number): number {
  const { melting, heatOfFusion, heatCapacitySolid } = c.design.material;
  if (!(target > melting && side > 0)) return Number.POSITIVE_INFINITY;
  const solid = (c.massFlow * (1 - state.molten)) / (side * length);
  const warms = solid * heatCapacitySolid * Math.log((target - state.solid) / (target - melting));
  return Math.max(0, warms) + (solid * heatOfFusion) / (target - melting);
}

/**
 * Warms the bed over a length, m, exactly; what it takes beyond melting melts it.
 * @returns melted share of all mass, also what a bed that runs out would have melted
 */
export function warmBed(c: MeltingCase, state: Granulate, { side, target }: Warming, length: number): number {
  const { melting, heatOfFusion, heatCapacitySolid } = c.design.material;
  const capacity = c.massFlow * (1 - state.molten) * heatCapacitySolid;
  if (!(capacity > 0 && side > 0)) return 0;
  const rate = (side * length) / capacity;
  const next = target + (state.solid - target) * Math.exp(-rate);
  if (next <= melting) {
    state.solid = next;
    return 0;
  }
  const reached = Math.log((target - state.solid) / (target - melting)) / rate;
  state.solid = melting;
  return (side * length * (1 - reached) * (target - melting)) / (c.massFlow * Math.max(leastDemand, heatOfFusion));
}
