/** General tolerances after ISO 2768-1. */

import { linearSteps, type ToleranceClass, type ToleranceStep } from './generalToleranceTable.ts';

/** The first step begins at its lower end itself. */
const stepAt = (size: number): ToleranceStep | undefined =>
  linearSteps.find(({ above, upTo }) => (size > above || size === linearSteps[0].above) && size <= upTo);

/** Plus and minus for a length or diameter, mm; null below 0.5 mm, above 4000 mm and where the class gives none. */
export const linearTolerance = (millimetres: number, grade: ToleranceClass): number | null =>
  stepAt(millimetres)?.[grade] ?? null;

/** How the class is written on a sheet. */
export const toleranceName = (grade: ToleranceClass): string => `ISO 2768-${grade}`;

/** Degrees and minutes, e.g. `0°30'`. */
export function angleText(degrees: number): string {
  const minutes = Math.round(degrees * 60);
  return `${Math.floor(minutes / 60)}°${minutes % 60 === 0 ? '' : `${minutes % 60}'`}`;
}
