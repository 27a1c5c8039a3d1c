import { describe, expect, test } from 'vitest';
import { slidingFit } from '../../core/make/isoFits.ts';
import { fitSteps } from '../../core/make/isoFitTable.ts';
import { guidelineClearance, newClearanceShare } from '../../core/make/runningClearance.ts';

/** Standard tolerance of ISO 286-1 before rounding, µm: 10 i for IT6, 16 i for IT7; D in mm, i in µm. */
const formula = (millimetres: number, grades: 10 | 16): number =>
  grades * (0.45 * Math.cbrt(millimetres) + 0.001 * millimetres);

describe('ISO 286', () => {
  /** Play of H7/g6 in µm; rows for g from memory, consistent with the grades. */
  test.each([
    [8, 5, 29],
    [12, 6, 35],
    [20, 7, 41],
  ])('%s mm: H7/g6 has %s to %s µm, H7/h6 none to 5 to 7 µm less', (size, least, most) => {
    const fit = slidingFit(size * 1e-3, 'g6');
    expect([fit?.least, fit?.most].map((value) => Math.round((value ?? 0) * 1e6))).toEqual([least, most]);
    const set = slidingFit(size * 1e-3, 'h6');
    expect([set?.least, set?.most].map((value) => Math.round((value ?? 0) * 1e6))).toEqual([0, most - least]);
  });

  test('the table is the formula i = 0.45 cbrt(D) + 0.001 D, rounded: 8.98, 10.8, 13.1 and 14.4, 17.3, 20.9 µm', () => {
    for (const { above, upTo, it6, it7 } of fitSteps) {
      const mean = Math.sqrt(above * upTo);
      expect(Math.abs(formula(mean, 10) - it6)).toBeLessThan(0.25);
      expect(Math.abs(formula(mean, 16) - it7)).toBeLessThan(0.75);
    }
  });

  test('outside the table nothing is made up', () => {
    expect(slidingFit(0.006, 'g6')).toBeNull();
    expect(slidingFit(0.0301, 'g6')).toBeNull();
  });
});

describe('clearance of the flight', () => {
  test('0.001 D new and 0.0015 D as a guideline: 12 and 18 µm at 12 mm, 37.5 at 25 mm (screw-wear and coating pages)', () => {
    expect(guidelineClearance(0.012, newClearanceShare)).toBeCloseTo(12e-6, 12);
    expect(guidelineClearance(0.012)).toBeCloseTo(18e-6, 12);
    expect(guidelineClearance(0.025)).toBeCloseTo(37.5e-6, 12);
  });
});
