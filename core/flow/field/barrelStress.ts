/** Shear stress on the barrel over a channel, and the power it takes. */

import { viscosityAt } from '../../material/viscosityLaw.ts';
import { gaussLegendre } from '../../math/gaussLegendre.ts';
import { valuesAt } from './channelGrid.ts';
import type { ChannelState } from './channelSolver.ts';
import { halfWidthAt } from './sectionShape.ts';

/** Stress on the barrel surface, Pa, positive where the barrel drags the melt along. */
export interface BarrelStress {
  /** Down-channel (flat) or circumferential (helical). */
  readonly along: number;
  /** Across the channel (flat) or along the axis (helical). */
  readonly across: number;
}

/** Stress at a mapped place: 0 flank, 1 mid-channel. Near the flank it grows without limit as distance^-n. */
export function barrelStressAt(state: ChannelState, s: number): BarrelStress {
  const { strain } = valuesAt(state, s, 1);
  const rate = state.scales.speed / state.scales.length;
  const viscosity = viscosityAt(state.law, Math.hypot(...strain) * rate);
  const helical = state.prepared.space.shape.twist > 0;
  return {
    along: viscosity * rate * strain[helical ? 2 : 3],
    across: viscosity * rate * strain[helical ? 3 : 1],
  };
}

/**
 * Integral of the barrel stress over the width of one channel, without a strip at each flank.
 * @param cut width of each strip left out, m, > 0; a Newtonian law has no limit for cut to 0
 * @returns N/m down-channel (flat) or N per metre of arc (helical)
 */
export function barrelForce(state: ChannelState, cut: number): BarrelStress {
  const { space } = state.prepared;
  const half = halfWidthAt(space.shape, 1) * state.scales.length;
  const start = Math.min(1, cut / half);
  const rule = gaussLegendre(4);
  let along = 0;
  let across = 0;
  const { breaks, cells } = space.across;
  for (let c = 0; c < cells; c++) {
    const [from, to] = [Math.max(start, breaks[c]), breaks[c + 1]];
    if (from >= to) continue;
    for (let k = 0; k < rule.nodes.length; k++) {
      const stress = barrelStressAt(state, from + (to - from) * rule.nodes[k]);
      const weight = 2 * half * (to - from) * rule.weights[k];
      along += weight * stress.along;
      across += weight * stress.across;
    }
  }
  return { along, across };
}
