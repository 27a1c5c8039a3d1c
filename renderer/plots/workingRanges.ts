/** Ranges of screw speed in which the machine works. */

import type { OutputCurve } from '../../core/index.ts';

/**
 * Neighbouring speeds that work, as first and last of each run, in the curve's unit of speed (rev/s).
 * @param forDemand speed that just meets the demand: a run begins there where it lies within the step before its first
 */
export function workingRanges(
  { screwSpeed, works }: Pick<OutputCurve, 'screwSpeed' | 'works'>,
  forDemand: number | null,
): readonly (readonly [number, number])[] {
  const ranges: [number, number][] = [];
  screwSpeed.forEach((speed, i) => {
    const last = ranges.at(-1);
    if (!works[i]) return;
    if (last && works[i - 1]) {
      last[1] = speed;
      return;
    }
    const before = screwSpeed[i - 1] ?? 0;
    ranges.push([forDemand !== null && forDemand > before && forDemand < speed ? forDemand : speed, speed]);
  });
  return ranges;
}
