/** Residence time distribution of one channel from its orbits. Times are over the mean L V/Q unless said otherwise. */

import type { Orbits } from './orbits.ts';

/** Distribution of dwell in the outflow of a channel, by forward flow. */
export interface OrbitTimes {
  /** Dwell over mean dwell, increasing. */
  readonly time: Float64Array;
  /** Share of the forward flow that leaves up to that time; last 1. */
  readonly cumulative: Float64Array;
  /** Shortest dwell. */
  readonly minimum: number;
  /** Dwell at the centre of the main vortex. */
  readonly centre: number;
  /** Share of volume on orbits that make no way forward. */
  readonly noForward: number;
  /** Share of volume in counter-rotating corner eddies. */
  readonly counterEddies: number;
}

/** Bands thinner than this share of volume say nothing about the shortest dwell. */
const LEAST_SHARE = 1e-7;

/** Distribution from orbits; needs a channel with net forward flow. */
export function orbitTimes(orbits: Orbits): OrbitTimes {
  const { flow, volume, dwell, levels } = orbits;
  const forward = [...dwell.keys()].filter((k) => flow[k] > 0 && volume[k] > LEAST_SHARE);
  forward.sort((p, q) => dwell[p] - dwell[q]);
  const time = Float64Array.from(forward, (k) => dwell[k]);
  const total = forward.reduce((sum, k) => sum + flow[k], 0);
  let running = 0;
  const cumulative = Float64Array.from(forward, (k) => {
    running += flow[k] / total;
    return running;
  });
  const centre = [...dwell.keys()].reverse().find((k) => volume[k] > LEAST_SHARE) ?? dwell.length - 1;
  const sumWhere = (test: (k: number) => boolean) => volume.reduce((sum, v, k) => sum + (test(k) ? v : 0), 0);
  return {
    time,
    cumulative,
    minimum: time.length > 0 ? time[0] : Number.POSITIVE_INFINITY,
    centre: dwell[centre],
    noForward: sumWhere((k) => flow[k] <= 0),
    counterEddies: sumWhere((k) => levels[k + 1] <= 0),
  };
}

/** A band's flow is taken to leave evenly between the middles towards its neighbours' times; start of that of band k. */
function bandStart(time: Float64Array, k: number): number {
  if (k === 0) return time[0];
  return k >= time.length ? time[time.length - 1] : (time[k - 1] + time[k]) / 2;
}

/** F: share of the forward flow with a dwell up to a multiple of the mean. */
export function cumulativeAt(times: OrbitTimes, multiple: number): number {
  const { time, cumulative } = times;
  if (time.length === 0 || multiple < time[0]) return 0;
  if (multiple >= time[time.length - 1]) return 1;
  let low = 0;
  let high = time.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (bandStart(time, middle) <= multiple) low = middle;
    else high = middle;
  }
  const before = low > 0 ? cumulative[low - 1] : 0;
  const [start, end] = [bandStart(time, low), bandStart(time, low + 1)];
  return before + ((cumulative[low] - before) * (multiple - start)) / (end - start);
}

/** Share of volume on orbits with a dwell above a multiple of the mean, those without way forward included. */
export function shareOlder(orbits: Orbits, multiple: number): number {
  let sum = 0;
  for (let k = 0; k < orbits.volume.length; k++) {
    if (!(orbits.flow[k] > 0) || orbits.dwell[k] > multiple) sum += orbits.volume[k];
  }
  return sum;
}
