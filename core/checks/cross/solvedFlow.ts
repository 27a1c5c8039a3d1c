/** The solved channel field as a particle sees it: the velocity at a point, and nothing else. */

import { valuesAt } from '../../flow/field/channelGrid.ts';
import { sectionWidth } from '../../flow/field/channelSection.ts';
import type { ChannelState } from '../../flow/field/channelSolver.ts';
import type { CrossFlow } from './particles.ts';

/**
 * Velocity of a solved channel with upright flanks and sharp roots.
 *
 * Straight: the way is that down-channel. Helical: x is the axial distance from the middle between the flights, which
 * wind with twist k per depth of axis; a particle going round by dθ is left behind by dθ/k, and its way is along the axis.
 * @param state solved; flank angle and fillet 0, or the mean dwell is not that of the section
 */
export function solvedFlow(state: ChannelState): CrossFlow {
  const { section, space } = state.prepared;
  const { twist, rootRadius } = space.shape;
  const halfWidth = sectionWidth(section) / (2 * state.scales.length);
  const helical = twist > 0;
  // of one channel: the state's flow is that of all starts
  const starts = section.kind === 'helical' ? section.starts : 1;
  const flow = state.flowRate / (starts * state.motion.barrelSpeed * state.scales.length ** 2);
  const volume = 2 * halfWidth * (helical ? twist * (rootRadius + 0.5) : 1);
  const at = (x: number, y: number, out: Float64Array) => {
    const { psi, w } = valuesAt(state, Math.max(0, 1 - Math.abs(x) / halfWidth), y);
    const r = helical ? rootRadius + y : 1;
    const across = psi.fy / r;
    out[0] = across;
    out[1] = ((x > 0 ? 1 : -1) * psi.fx) / r;
    out[2] = helical ? across + w.f / (twist * r) : w.f;
    out[3] = Math.sqrt(Math.abs(psi.fxx * psi.fyy - psi.fxy * psi.fxy)) / r;
  };
  const volumeAt = (y: number) => (helical ? (rootRadius + y) / (rootRadius + 0.5) : 1);
  return { halfWidth, meanDwell: volume / flow, volumeAt, at };
}
