/** How what was in the machine leaves after a change at its inlet. */

import { inverseRising } from '../math/interpolate.ts';

/** A distribution as a curve: times (s) and the share that has left by each, both never decreasing. */
export interface LeavingCurve {
  readonly time: Float64Array;
  readonly cumulative: Float64Array;
}

/** A last step of a curve higher than this is meant, as in plug flow; lower, it stands for a tail nobody resolved. */
const meantStep = 0.1;

/** A last piece of no more than this share stands for an unresolved tail as well: distributions are cut there. */
const cutTail = 1.5e-6;

/** Share up to which a curve is resolved; what lies beyond is an unresolved tail of unknown age. */
export function knownShare({ time, cumulative }: LeavingCurve): number {
  const last = cumulative.length - 1;
  if (last < 0) return 0;
  if (last === 0) return Math.min(1, cumulative[0]);
  const piece = cumulative[last] - cumulative[last - 1];
  const atom = time[last] === time[last - 1] && piece <= meantStep;
  return atom || piece <= cutTail ? cumulative[last - 1] : Math.min(1, cumulative[last]);
}

/**
 * Time until the old makes up no more than a share of the outflow after a step change at the inlet: 1 - F.
 * @param oldShare 0 to 1
 * @returns s; null where the curve is not resolved so far
 * Source: Danckwerts 1953, steady flow, old and new melt alike in flow.
 */
export function timeToOldShare(curve: LeavingCurve, oldShare: number): number | null {
  const left = 1 - oldShare;
  // a share that is met to rounding is met
  if (curve.time.length === 0 || left > knownShare(curve) + 1e-12) return null;
  return inverseRising(curve.time, curve.cumulative, left);
}
