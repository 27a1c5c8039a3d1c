/** Extent of degradation along a temperature-time history. */

import type { DegradationLaw } from '../design/types.ts';
import { celsiusText } from './celsiusText.ts';
import { durationOf, type HeatSegment, lawRun } from './lawRun.ts';
import { type Corner, type KineticLaw, nominalCorner } from './laws.ts';

export { molarMassAfter } from './extentForms.ts';
export type { HeatSegment } from './lawRun.ts';

/** How far a law has run, and whether it was asked outside its range. */
export interface Extent {
  /** unit of the law: observed quantity for zero order, scissions per repeat unit, else 0 to 1 */
  readonly extent: number;
  /** s spent below and above the temperatures at which the law was measured */
  readonly below: number;
  readonly above: number;
  /** null inside the range, else in words */
  readonly doubt: string | null;
}

/** Extent alone, as of `extentAlong` but for segments already checked: the inner step of averages over many ages. */
function extentOfChecked(law: KineticLaw, segments: readonly HeatSegment[], corner: Corner): number {
  const run = lawRun(law, corner);
  return run.extentOf(run.through(segments)(run.fresh, durationOf(segments)));
}

/** Time outside the law's range and the words for it. */
export function rangeDoubt(
  law: Pick<DegradationLaw, 'id' | 'validFrom' | 'validTo'>,
  segments: readonly HeatSegment[],
): Pick<Extent, 'below' | 'above' | 'doubt'> {
  const timeWhere = (test: (temperature: number) => boolean) =>
    segments.reduce((sum, segment) => (test(segment.temperature) ? sum + segment.duration : sum), 0);
  const below = timeWhere((temperature) => temperature < law.validFrom);
  const above = timeWhere((temperature) => temperature > law.validTo);
  if (below === 0 && above === 0) return { below, above, doubt: null };
  const used = segments.filter((segment) => segment.duration > 0).map((segment) => segment.temperature);
  const span = `${celsiusText(Math.min(...used))} to ${celsiusText(Math.max(...used))}`;
  const measured = `${celsiusText(law.validFrom)} to ${celsiusText(law.validTo)}`;
  const doubt = `The law ${law.id} was measured from ${measured}; it is asked for ${span}, so it is extrapolated.`;
  return { below, above, doubt };
}

/**
 * Extent of a degradation law along a history of constant-temperature stretches, in order of passing.
 * @param law order-based or richer law
 * @param segments s and K
 * @param corner which end of the doubt ranges the constants take; the stated values by default
 * @returns extent in the law's unit, the time outside its measured range and the doubt in words
 * @throws RangeError for a negative or non-finite duration or a temperature that is not above 0 K
 * Exact for each law: order and lag laws depend on the integral of k dt alone, the series is solved per stretch.
 */
export function extentAlong(law: KineticLaw, segments: readonly HeatSegment[], corner: Corner = nominalCorner): Extent {
  const wrong = segments.find((s) => !(s.duration >= 0 && s.duration < Infinity && s.temperature > 0));
  if (wrong) throw new RangeError(`Not a heat segment: ${wrong.duration} s at ${wrong.temperature} K`);
  return { extent: extentOfChecked(law, segments, corner), ...rangeDoubt(law, segments) };
}
