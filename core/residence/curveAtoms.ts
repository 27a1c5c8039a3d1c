/** Atoms of a distribution that is given as a curve. */

import { interpolateLinear } from '../math/interpolate.ts';
import type { TimeAtoms } from './atoms.ts';

/**
 * Cuts a curve at shares; each atom has the mean time of its share, the curve being straight between its points.
 * @param time s, never decreasing; @param cumulative share that has left by then, never decreasing, ending at 1
 * @param cuts rising from 0 to 1
 * @param mean s; where given, times are scaled to this mean, which takes out what straight pieces miss of a curved tail
 */
export function curveAtoms(
  time: Float64Array,
  cumulative: Float64Array,
  cuts: readonly number[],
  mean?: number,
): TimeAtoms {
  const passed = integralTo(time, cumulative);
  const share = Float64Array.from({ length: cuts.length - 1 }, (_, i) => cuts[i + 1] - cuts[i]);
  const own = share.map((part, i) => (passed(cuts[i + 1]) - passed(cuts[i])) / part);
  const found = passed(1);
  const scale = mean !== undefined && found > 0 ? mean / found : 1;
  return { time: own.map((t) => t * scale), share, shortest: (time[0] ?? 0) * scale };
}

/**
 * Shares at which a part is cut when it is convolved with another: few, and finest from 0.8 to 0.999, where the 95th and
 * 99th percentile of the whole are made.
 * @param even, fine, tail numbers of bins below 0.8, up to 0.999 and up to 1e-6 before the end
 */
export function convolvedCuts(even: number, fine: number, tail: number): number[] {
  const cuts = Array.from({ length: even }, (_, i) => (0.8 * i) / even);
  for (let i = 0; i < fine; i++) cuts.push(1 - 0.2 * 200 ** (-i / fine));
  for (let i = 0; i <= tail; i++) cuts.push(1 - 1e-3 * 10 ** ((-3 * i) / tail));
  return [...cuts, 1];
}

/** Integral of the time over the share from 0 up to a share, s. */
function integralTo(time: Float64Array, cumulative: Float64Array): (share: number) => number {
  const sums = new Float64Array(time.length);
  sums[0] = time[0] * cumulative[0];
  for (let i = 1; i < time.length; i++) {
    sums[i] = sums[i - 1] + ((time[i] + time[i - 1]) / 2) * (cumulative[i] - cumulative[i - 1]);
  }
  return (share) => {
    if (share <= cumulative[0]) return time[0] * share;
    const last = cumulative.length - 1;
    if (share >= cumulative[last]) return sums[last] + time[last] * (share - cumulative[last]);
    let low = 0;
    let high = last;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (cumulative[middle] < share) low = middle;
      else high = middle;
    }
    const reached = interpolateLinear([cumulative[low], cumulative[high]], [time[low], time[high]], share);
    return sums[low] + ((time[low] + reached) / 2) * (share - cumulative[low]);
  };
}
