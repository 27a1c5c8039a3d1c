/** Degradation laws as the ages see them, and the ends of their doubt ranges. */

import type { Ranged } from '../design/types.ts';

export type { KineticLaw, ScissionLaw, Step, TwoStepLaw } from '../material/kineticLaws.ts';

/** Which end of its doubt range each constant takes. */
export interface Corner {
  readonly rate: keyof Ranged;
  readonly activation: keyof Ranged;
}

/** The stated values themselves. */
export const nominalCorner: Corner = { rate: 'value', activation: 'value' };

/** The four ends of the doubt ranges of rate and activation. */
export const rangeCorners: readonly Corner[] = [
  { rate: 'low', activation: 'low' },
  { rate: 'low', activation: 'high' },
  { rate: 'high', activation: 'low' },
  { rate: 'high', activation: 'high' },
];
