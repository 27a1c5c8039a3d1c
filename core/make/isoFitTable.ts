/**
 * Rows of ISO 286 for nominal sizes above 6 mm up to 30 mm: tolerances from several published tables; the deviation of g
 * was seen at 25 mm, the other two are from memory.
 */

/** One step of nominal sizes, mm; tolerances and the fundamental deviation of g below nominal, µm. */
export interface FitStep {
  readonly above: number;
  readonly upTo: number;
  readonly it6: number;
  readonly it7: number;
  readonly gDeviation: number;
}

/** Steps in rising size. */
export const fitSteps: readonly FitStep[] = [
  { above: 6, upTo: 10, it6: 9, it7: 15, gDeviation: 5 },
  { above: 10, upTo: 18, it6: 11, it7: 18, gDeviation: 6 },
  { above: 18, upTo: 30, it6: 13, it7: 21, gDeviation: 7 },
];
