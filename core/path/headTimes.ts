/** Times of the melt in tip and nozzle, from the solved age field. */

import type { TimeAtoms } from '../residence/atoms.ts';
import type { HeadField } from './headField.ts';

/** Most bins of the outflow's distribution. */
const mostBins = 48;

/**
 * Outflow of the head.
 * @param mean volume over flow without the ring before the tip, s; ages are scaled to it
 */
export function headTimeAtoms(head: HeadField, mean: number): TimeAtoms {
  const samples = head.field.residence ?? [];
  const time: number[] = [];
  const share: number[] = [];
  const perBin = Math.max(1, Math.ceil(samples.length / mostBins));
  let passed = 0;
  let [flow, weighted] = [0, 0];
  samples.forEach((sample, i) => {
    // each sample stands in the middle of its own share
    const own = 2 * (sample.fraction - passed);
    passed += own;
    flow += own;
    weighted += own * sample.time;
    if ((i + 1) % perBin !== 0 && i + 1 < samples.length) return;
    if (flow > 0) {
      time.push(weighted / flow);
      share.push(flow);
    }
    [flow, weighted] = [0, 0];
  });
  const total = time.reduce((sum, t, i) => sum + t * share[i], 0);
  const scale = total > 0 ? mean / total : 0;
  return {
    time: Float64Array.from(time, (t) => t * scale),
    share: Float64Array.from(share),
    shortest: (samples[0]?.time ?? 0) * scale,
  };
}

/** Seconds per unit of the field's age, scaled as in headTimeAtoms. */
export function headTimeScale(head: HeadField, mean: number): number {
  const solvedMean = head.field.statistics?.meanTime ?? 0;
  return solvedMean > 0 ? mean / solvedMean : head.timeUnit;
}

/**
 * Share of the head's melt older than a time.
 * @param limit s in the head, @param scale from headTimeScale
 */
export function headOlder(head: HeadField, scale: number, limit: number): number {
  const { z, r, triangles, age } = head.field;
  let [all, old] = [0, 0];
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t], triangles[t + 1], triangles[t + 2]];
    const area = Math.abs((z[b] - z[a]) * (r[c] - r[a]) - (z[c] - z[a]) * (r[b] - r[a])) / 2;
    // Pappus; the common factor drops out
    const volume = area * (r[a] + r[b] + r[c]);
    all += volume;
    if (((age[a] + age[b] + age[c]) / 3) * scale > limit) old += volume;
  }
  return all > 0 ? old / all : 0;
}
