/**
 * Rows of ISO 286-1 up to 250 mm. Standard tolerances IT6 to IT9: as reprinted on mechguru.com ("DIN ISO 286 standard
 * tolerance zone size table") and, as shafts h6 to h9, on precisemetal.in ("Tolerance tables, round bars"). Deviations
 * of f and g: from memory, held by a test against the standard's own formulas 5.5 D^0.41 and 2.5 D^0.34.
 */

/** One step of nominal sizes, mm; tolerances and the fundamental deviations of f and g below nominal, µm. */
export interface FitStep {
  readonly above: number;
  readonly upTo: number;
  readonly it6: number;
  readonly it7: number;
  readonly it8: number;
  readonly it9: number;
  readonly fDeviation: number;
  readonly gDeviation: number;
}

/** Steps in rising size. */
export const limitSteps: readonly FitStep[] = [
  { above: 0, upTo: 3, it6: 6, it7: 10, it8: 14, it9: 25, fDeviation: 6, gDeviation: 2 },
  { above: 3, upTo: 6, it6: 8, it7: 12, it8: 18, it9: 30, fDeviation: 10, gDeviation: 4 },
  { above: 6, upTo: 10, it6: 9, it7: 15, it8: 22, it9: 36, fDeviation: 13, gDeviation: 5 },
  { above: 10, upTo: 18, it6: 11, it7: 18, it8: 27, it9: 43, fDeviation: 16, gDeviation: 6 },
  { above: 18, upTo: 30, it6: 13, it7: 21, it8: 33, it9: 52, fDeviation: 20, gDeviation: 7 },
  { above: 30, upTo: 50, it6: 16, it7: 25, it8: 39, it9: 62, fDeviation: 25, gDeviation: 9 },
  { above: 50, upTo: 80, it6: 19, it7: 30, it8: 46, it9: 74, fDeviation: 30, gDeviation: 10 },
  { above: 80, upTo: 120, it6: 22, it7: 35, it8: 54, it9: 87, fDeviation: 36, gDeviation: 12 },
  { above: 120, upTo: 180, it6: 25, it7: 40, it8: 63, it9: 100, fDeviation: 43, gDeviation: 14 },
  { above: 180, upTo: 250, it6: 29, it7: 46, it8: 72, it9: 115, fDeviation: 50, gDeviation: 15 },
];

/** The steps of small screws, above 6 mm up to 30 mm, for which plays of a shank are told. */
export const fitSteps: readonly FitStep[] = limitSteps.filter(({ above, upTo }) => above >= 6 && upTo <= 30);
