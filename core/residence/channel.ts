/** Residence-time distributions of the parts of the machine, in closed form. */

import { pipeFirstShare } from '../flow/pipe.ts';
import { shareCuts, type TimeAtoms } from './atoms.ts';
import { pintoTadmorOlder, pintoTadmorTime } from './pintoTadmor.ts';

/**
 * Screw channel: the closed form of Pinto & Tadmor 1970 scaled to a mean time.
 * @param mean volume over flow, s, >= 0
 * @returns atoms whose mean is exact: each carries the mean time of its share (its volume over its flow)
 */
export function channelAtoms(mean: number): TimeAtoms {
  const { time, share } = unitChannel;
  return { time: time.map((dwell) => dwell * mean), share, shortest: 0.75 * mean };
}

/** The distribution for a mean of one; the same for every screw, so worked out once. */
const unitChannel = binned(shareCuts(80, 100), (cut) => (cut >= 1 ? 0 : pintoTadmorOlder(pintoTadmorTime(cut))));

/**
 * Pipe-like part (tip and nozzle): laminar flow of a power-law melt.
 * @param mean volume over flow, s, >= 0
 * @param index power-law index, > 0
 * Source: u = u_max [1 - (r/R)^((n+1)/n)]; for n = 1 the laminar distribution in Levenspiel 1999, E = mean²/(2 t³).
 */
export function pipeAtoms(mean: number, index: number): TimeAtoms {
  const power = (index + 1) / index;
  const flux = (x: number) => ((x * x) / 2 - x ** (power + 2) / (power + 2)) / (1 / 2 - 1 / (power + 2));
  const radius = (share: number) => {
    let low = 0;
    let high = 1;
    for (let pass = 0; pass < 40; pass++) {
      const middle = (low + high) / 2;
      if (flux(middle) > share) high = middle;
      else low = middle;
    }
    return (low + high) / 2;
  };
  const { time, share } = binned(shareCuts(40, 50), (cut) => (cut >= 1 ? 0 : 1 - radius(cut) ** 2));
  return { time: time.map((dwell) => dwell * mean), share, shortest: pipeFirstShare(index) * mean };
}

/** Bins between cuts: share = flow, time = volume over flow, from the volume share that is older than each cut. */
function binned(cuts: readonly number[], older: (cut: number) => number) {
  const time = new Float64Array(cuts.length - 1);
  const share = new Float64Array(cuts.length - 1);
  let above = older(cuts[0]);
  for (let i = 0; i + 1 < cuts.length; i++) {
    const next = older(cuts[i + 1]);
    share[i] = cuts[i + 1] - cuts[i];
    time[i] = (above - next) / share[i];
    above = next;
  }
  return { time, share };
}
