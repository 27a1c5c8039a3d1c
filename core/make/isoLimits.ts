/** Limits of one size of a shaft or a hole after ISO 286, for drawings. */

import { limitSteps } from './isoFitTable.ts';

/** Tolerance classes kept here. */
export const limitClasses = ['H7', 'H8', 'H9', 'f7', 'g6', 'h6', 'h7', 'h8', 'h9'] as const;
/** A tolerance class: letter of its place, number of its grade. */
export type LimitClass = (typeof limitClasses)[number];

/** Allowed deviations from the nominal size, m. */
export interface Limits {
  readonly upper: number;
  readonly lower: number;
}

/**
 * Limit deviations of a size.
 * @param diameter nominal, m, above 0 up to 0.25
 * @returns m; null outside the table's sizes. H lies above nominal, h below, f and g below by their deviation (ISO 286-1)
 */
export function isoLimits(diameter: number, limitClass: LimitClass): Limits | null {
  // sizes reach here as millimetres times 1e-3: a step's edge must not be missed by the last digit
  const millimetres = Number((diameter * 1e3).toPrecision(12));
  const step = limitSteps.find(({ above, upTo }) => millimetres > above && millimetres <= upTo);
  if (!step) return null;
  const grade = { 6: step.it6, 7: step.it7, 8: step.it8, 9: step.it9 }[Number(limitClass.slice(1)) as 6 | 7 | 8 | 9];
  if (limitClass.startsWith('H')) return { upper: grade * 1e-6, lower: 0 };
  const below = { f: step.fDeviation, g: step.gDeviation, h: 0 }[limitClass[0] as 'f' | 'g' | 'h'];
  return { upper: below === 0 ? 0 : -below * 1e-6, lower: -(below + grade) * 1e-6 };
}
