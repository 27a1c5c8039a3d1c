/**
 * Times along the whole molten channel. The flow is steady and every section passes the same flow, so a streamline keeps
 * its share of the outflow from section to section; the time to a place is the sum over the reaches passed of volume over
 * flow times the dwell of that share.
 */

import { localIndex } from '../material/viscosityLaw.ts';
import type { FlowState } from '../prediction/flowState.ts';
import type { Machine } from '../prediction/machine.ts';
import type { TimeAtoms } from '../residence/atoms.ts';
import { type ChannelField, reachLaw } from './channelField.ts';
import { binCount, type DwellBins, flowCuts, mixedBins, slitBins, wideChannelBins } from './dwellBins.ts';

/** Times of the channel. */
export interface ChannelTimes {
  /** melt volume per reach, m³ */
  readonly volumes: Float64Array;
  readonly volume: number;
  /** dwell per reach; null where there is no melt */
  readonly bins: readonly (DwellBins | null)[];
  /** s from melting to the end of each reach, per bin of the outflow */
  readonly reached: readonly Float64Array[];
  /** s through the whole channel, per bin */
  readonly passage: Float64Array;
  readonly shortest: number;
  /** mean, s: volume over flow */
  readonly mean: number;
  /** share of the channel's melt whose dwell is the closed form's, for want of a solved one */
  readonly guessed: number;
}

/** Melt volume of each reach, m³: molten, as far as filled. */
export function reachVolumes(machine: Machine, state: FlowState): Float64Array {
  const { freeVolume } = machine.stations;
  const { start } = state.melt;
  return state.march.fill.map((fill, i) => {
    if (i < start.reach) return 0;
    return (freeVolume[i + 1] - freeVolume[i]) * fill * (i === start.reach ? start.share : 1);
  });
}

/** Dwell of a reach, and whether it had to be guessed. */
function reachBins(machine: Machine, state: FlowState, field: ChannelField, i: number): DwellBins | null {
  const flow = state.march.flows[i];
  if (!flow) return null;
  const nodes = field.reaches[i];
  if (!nodes) return slitBins(Math.max(0.1, localIndex(reachLaw(machine, state, i), Math.max(flow.shearRate, 1e-6))));
  const known = nodes.flatMap(({ node, weight }) => (node.bins ? [{ bins: node.bins, weight }] : []));
  const total = known.reduce((sum, { weight }) => sum + weight, 0);
  if (!(total > 0)) return null;
  return mixedBins(known.map(({ bins, weight }) => ({ bins, weight: weight / total })));
}

/** Times of a channel. @param volumeFlow m³/s, > 0 */
export function channelTimes(
  machine: Machine,
  state: FlowState,
  field: ChannelField,
  volumeFlow: number,
): ChannelTimes {
  const volumes = reachVolumes(machine, state);
  const passage = new Float64Array(binCount);
  let shortest = 0;
  let guessed = 0;
  const wide = wideChannelBins();
  const bins: (DwellBins | null)[] = [];
  const reached = Array.from(volumes, (volume, i) => {
    const solved = volume > 0 ? reachBins(machine, state, field, i) : null;
    const own = solved ?? (volume > 0 ? wide : null);
    bins.push(own);
    if (!solved) guessed += volume;
    if (own) {
      const mean = volume / volumeFlow;
      for (let k = 0; k < binCount; k++) passage[k] += mean * own.dwell[k];
      shortest += mean * own.shortest;
    }
    return passage.slice();
  });
  const volume = volumes.reduce((sum, value) => sum + value, 0);
  const mean = volume / volumeFlow;
  return { volumes, volume, bins, reached, passage, shortest, mean, guessed: volume > 0 ? guessed / volume : 0 };
}

/** The channel's part of the outflow's distribution. */
export function channelTimeAtoms(times: ChannelTimes): TimeAtoms {
  const order = Uint32Array.from({ length: binCount }, (_, i) => i).sort((a, b) => times.passage[a] - times.passage[b]);
  return {
    time: Float64Array.from(order, (i) => times.passage[i]),
    share: Float64Array.from(order, (i) => flowCuts[i + 1] - flowCuts[i]),
    shortest: Math.min(times.shortest, times.passage[order[0]]),
  };
}

/** First bin from which the passage exceeds a time; binCount where none does. */
export function firstOlder(times: ChannelTimes, limit: number): number {
  for (let i = 0; i < binCount; i++) if (times.passage[i] > limit) return i;
  return binCount;
}

/** Melt volume of a reach in bins from a first one on, m³. */
export function volumeFrom(times: ChannelTimes, reach: number, firstBin: number): number {
  const own = times.bins[reach];
  if (!own) return 0;
  let share = 0;
  for (let i = firstBin; i < binCount; i++) share += own.dwell[i] * (flowCuts[i + 1] - flowCuts[i]);
  return share * times.volumes[reach];
}
