/** Which part of the machine the colour comes from. */

import type { ColourOrigin } from '../prediction/types.ts';
import { type AgingState, durationOf, type HeatSegment, lawRun } from './lawRun.ts';
import { type KineticLaw, nominalCorner } from './laws.ts';

/** Mean passage of one part. */
export interface PartPassage {
  readonly part: ColourOrigin['part'];
  /** s and K, in order of passing */
  readonly heat: readonly HeatSegment[];
}

/** Time-weighted mean temperature of a passage with time in it, K. */
export const meanTemperature = (heat: readonly HeatSegment[]): number =>
  heat.reduce((sum, { duration, temperature }) => sum + duration * temperature, 0) / durationOf(heat);

/**
 * What each part adds along the mean passage.
 * @param passages in order of passing
 * @returns shares of the integral of k dt; of two steps in series, shares of the extent as it grows on the way
 */
export function colourOrigin(law: KineticLaw, passages: readonly PartPassage[]): ColourOrigin[] {
  const run = lawRun(law, nominalCorner);
  const measure = (state: AgingState) => ('kind' in law && law.kind === 'twoStep' ? run.extentOf(state) : state.a);
  let state = run.fresh;
  let before = measure(state);
  const grown = passages.map(({ heat }) => {
    state = run.through(heat)(state, durationOf(heat));
    const now = measure(state);
    const own = now - before;
    before = now;
    return own;
  });
  const total = grown.reduce((sum, own) => sum + own, 0);
  return passages.map(({ part, heat }, i) => ({
    part,
    time: durationOf(heat),
    temperature: meanTemperature(heat),
    share: total > 0 ? grown[i] / total : 0,
  }));
}
