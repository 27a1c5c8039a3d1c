/** Distributions of parts in series, joined. */

import { interpolateLinear } from '../math/interpolate.ts';
import { orderOfRuns, reordered } from '../math/orderOfRuns.ts';
import { shareCuts, type TimeAtoms } from './atoms.ts';

/** A whole distribution with its landmarks. s. */
export interface JoinedResidence {
  readonly mean: number;
  readonly min: number;
  readonly t50: number;
  readonly t95: number;
  readonly t99: number;
  /** rising, and the share that has left by then; the first entry is (min, 0) */
  readonly time: Float64Array;
  readonly cumulative: Float64Array;
}

/** Points of the shortened curve. */
const curvePoints = 240;

/**
 * Joins parts passed one after the other, melt mixing between them: E = E1 * E2 (convolution).
 * @param parts at least one; atoms as in atoms.ts
 * The mean is kept exactly (it is the sum of the means). Danckwerts 1953.
 */
export function joinResidence(parts: readonly TimeAtoms[]): JoinedResidence {
  const joined = parts.reduce(convolve);
  const count = joined.time.length;
  const time = new Float64Array(count + 2);
  const cumulative = new Float64Array(count + 2);
  time[0] = joined.shortest;
  let mean = 0;
  let left = 0;
  for (let i = 0; i < count; i++) {
    const t = joined.time[i];
    const share = joined.share[i];
    // an atom stands for a bin of times round its mean: half of its share is younger
    time[i + 1] = Math.max(t, time[i]);
    cumulative[i + 1] = left + share / 2;
    left += share;
    mean += t * share;
  }
  time[count + 1] = time[count];
  cumulative[count + 1] = 1;
  const timeAt = (share: number) => interpolateLinear(cumulative, time, share);
  return {
    mean,
    min: joined.shortest,
    t50: timeAt(0.5),
    t95: timeAt(0.95),
    t99: timeAt(0.99),
    ...shortened(time, cumulative),
  };
}

/** All pair sums, in rising order. Plain loops: this runs at each keystroke. */
function convolve(first: TimeAtoms, second: TimeAtoms): TimeAtoms {
  const count = first.time.length * second.time.length;
  const time = new Float64Array(count);
  const share = new Float64Array(count);
  let at = 0;
  for (let i = 0; i < first.time.length; i++) {
    const [early, part] = [first.time[i], first.share[i]];
    for (let j = 0; j < second.time.length; j++, at++) {
      time[at] = early + second.time[j];
      share[at] = part * second.share[j];
    }
  }
  const order = orderOfRuns(time, second.time.length);
  return {
    time: reordered(time, order),
    share: reordered(share, order),
    shortest: first.shortest + second.shortest,
  };
}

/** The curve at even shares and, beyond nine tenths, at ever finer ones. */
function shortened(time: Float64Array, cumulative: Float64Array): { time: Float64Array; cumulative: Float64Array } {
  if (time.length <= curvePoints) return { time, cumulative };
  const shares = Float64Array.from(shareCuts(curvePoints / 2, curvePoints / 2));
  return { time: shares.map((share) => interpolateLinear(cumulative, time, share)), cumulative: shares };
}
