/** Fits of a bored hole and a turned shaft after ISO 286, for the sizes of small screws. */

import { type FitStep, fitSteps } from './isoFitTable.ts';

/** Play between hole and shaft, m: least and most. */
export interface FitGap {
  readonly least: number;
  readonly most: number;
}

/** Shafts that run or slide in an H7 hole: g6 turns and slides, h6 is set by hand. */
export type SlidingShaft = 'g6' | 'h6';

const stepOf = (diameter: number): FitStep | undefined => {
  const millimetres = diameter * 1e3;
  return fitSteps.find(({ above, upTo }) => millimetres > above && millimetres <= upTo);
};

/**
 * Play of a shaft in an H7 hole.
 * @param diameter nominal, m, above 6 mm up to 30 mm
 * @returns m; null outside the table's sizes
 */
export function slidingFit(diameter: number, shaft: SlidingShaft): FitGap | null {
  const step = stepOf(diameter);
  if (!step) return null;
  const below = shaft === 'g6' ? step.gDeviation : 0;
  return { least: below * 1e-6, most: (step.it7 + below + step.it6) * 1e-6 };
}
