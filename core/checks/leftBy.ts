/** Reading a curve of residence times. */

import type { ResidenceSample } from '../flow/tip/ageStatistics.ts';
import { interpolateLinear } from '../math/interpolate.ts';
import type { LeavingCurve } from '../residence/washout.ts';

/** Share of the outflow that has left a curve's part by a time, s; linear between its points. */
export const leftBy = ({ time, cumulative }: LeavingCurve, at: number): number =>
  at < time[0] ? 0 : interpolateLinear(time, cumulative, at);

/** The outlet samples of a solved field as such a curve; all has left by the last. */
export const curveOf = (samples: readonly ResidenceSample[]): LeavingCurve => ({
  time: Float64Array.from(samples, ({ time }) => time),
  cumulative: Float64Array.from(samples, ({ fraction }) => fraction),
});
