/** Residence of one cross-section in bins of the outflow that are the same for every section and every stage. */

import { shareCuts } from '../residence/atoms.ts';
import type { Orbits } from '../residence/orbits.ts';
import { pintoTadmorOlder, pintoTadmorTime } from '../residence/pintoTadmor.ts';

/** Edges of the bins: share of the outflow that has left, 0 to 1. */
export const flowCuts: Float64Array = Float64Array.from(shareCuts(60, 50));

/** Number of bins. */
export const binCount = flowCuts.length - 1;

/** Dwell over mean dwell. */
export interface DwellBins {
  /** mean of each bin; weighted with the bins' shares it adds up to 1 */
  readonly dwell: Float64Array;
  readonly shortest: number;
  /** share of the volume on orbits without way forward; it sits in the last bin */
  readonly stagnant: number;
}

/** The wide channel's closed form, where no solved orbits can be had. */
export function wideChannelBins(): DwellBins {
  const older = flowCuts.map((share) => (share >= 1 ? 0 : pintoTadmorOlder(pintoTadmorTime(share))));
  const dwell = new Float64Array(binCount);
  for (let i = 0; i < binCount; i++) dwell[i] = (older[i] - older[i + 1]) / (flowCuts[i + 1] - flowCuts[i]);
  return { dwell, shortest: 0.75, stagnant: 0 };
}

/** Bands of orbits that move forward, fastest first. */
export function forwardBands(orbits: Orbits): number[] {
  const bands = [...orbits.flow.keys()].filter((k) => orbits.flow[k] > 0 && orbits.volume[k] > 0);
  return bands.sort((a, b) => orbits.dwell[a] - orbits.dwell[b]);
}

/**
 * Bins of a channel that moves forward on the whole.
 * Melt that makes no way forward is exchanged only by what little mixing there is; its volume is put into the slowest
 * bin (a millionth of the flow), so that the mean stays volume over flow.
 * @returns null where less than half of the volume moves forward
 */
export function dwellBins(orbits: Orbits, shortest: number): DwellBins | null {
  const bands = forwardBands(orbits);
  const total = bands.reduce((sum, k) => sum + orbits.flow[k], 0);
  const moving = bands.reduce((sum, k) => sum + orbits.volume[k], 0);
  if (!(total > 0) || !(moving > 0.5)) return null;
  const dwell = new Float64Array(binCount);
  let bin = 0;
  let left = 0;
  for (const k of bands) {
    const start = left;
    left += orbits.flow[k] / total;
    for (let from = start; from < left && bin < binCount; ) {
      const to = Math.min(left, flowCuts[bin + 1]);
      dwell[bin] += (orbits.volume[k] * (to - from)) / (left - start);
      from = to;
      if (to >= flowCuts[bin + 1] && bin < binCount - 1) bin++;
      else break;
    }
  }
  dwell[binCount - 1] += Math.max(0, 1 - dwell.reduce((sum, volume) => sum + volume, 0));
  for (let i = 0; i < binCount; i++) dwell[i] /= flowCuts[i + 1] - flowCuts[i];
  return { dwell, shortest, stagnant: Math.max(0, 1 - moving) };
}

/** Weighted sum of bins; weights add up to 1. */
export function mixedBins(parts: readonly { readonly bins: DwellBins; readonly weight: number }[]): DwellBins {
  const dwell = new Float64Array(binCount);
  let shortest = 0;
  let stagnant = 0;
  for (const { bins, weight } of parts) {
    for (let i = 0; i < binCount; i++) dwell[i] += weight * bins.dwell[i];
    shortest += weight * bins.shortest;
    stagnant += weight * bins.stagnant;
  }
  return { dwell, shortest, stagnant };
}

/** Bin that holds a share of the outflow (0 to 1). */
export function binOf(share: number): number {
  let low = 0;
  let high = binCount;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (flowCuts[middle] <= share) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * Plain ring: pressure flow of a power-law melt in the slit of the same gap, u = u_max [1 - |y|^p], p = 1 + 1/n; the
 * turning core drags only crosswise. Streamlines from the middle outwards.
 * @param index local power-law index, > 0
 */
export function slitBins(index: number): DwellBins {
  const p = 1 + 1 / index;
  const left = (y: number) => ((p + 1) * y - y ** (p + 1)) / p;
  const heightOf = (share: number) => {
    let [low, high] = [0, 1];
    for (let pass = 0; pass < 50; pass++) {
      const middle = (low + high) / 2;
      if (left(middle) > share) high = middle;
      else low = middle;
    }
    return (low + high) / 2;
  };
  const heights = flowCuts.map((share) => (share >= 1 ? 1 : heightOf(share)));
  const dwell = new Float64Array(binCount);
  for (let i = 0; i < binCount; i++) dwell[i] = (heights[i + 1] - heights[i]) / (flowCuts[i + 1] - flowCuts[i]);
  return { dwell, shortest: p / (p + 1), stagnant: 0 };
}
