/** Width factors of the rectangular channel against tables and exact values. */

import { describe, expect, test } from 'vitest';
import { dragShapeFactor, pressureShapeFactor } from '../../core/flow/shapeFactors.ts';

/** H/W, F_d, F_p, f Re (Fanning, hydraulic diameter): series of Rowell & Finlayson 1928 summed in double precision. */
const table = [
  [0.01, 0.994572, 0.993698, 23.6763],
  [0.02, 0.989145, 0.987395, 23.3625],
  [0.05, 0.972862, 0.968488, 22.477],
  [0.1, 0.945725, 0.936975, 21.1689],
  [0.15, 0.918587, 0.905463, 20.0422],
  [0.2, 0.891449, 0.87395, 19.0705],
  [0.25, 0.864312, 0.842439, 18.2328],
  [0.3, 0.837182, 0.810936, 17.5121],
  [0.4, 0.783058, 0.748095, 16.3681],
  [0.5, 0.729585, 0.686045, 15.5481],
  [0.6, 0.677625, 0.625836, 14.98],
  [0.8, 0.58175, 0.515198, 14.3778],
  [1, 0.5, 0.421731, 14.2271],
  [2, 0.270415, 0.171511, 15.5481],
] as const;

describe('width factors', () => {
  test.each(table)('H/W = %s', (ratio, drag, pressure, friction) => {
    expect(Math.abs(dragShapeFactor(ratio) - drag)).toBeLessThan(2e-6);
    expect(Math.abs(pressureShapeFactor(ratio) - pressure)).toBeLessThan(2e-6);
    // f Re = 24/((1 + r)² F_p)
    expect(24 / ((1 + ratio) ** 2 * pressureShapeFactor(ratio))).toBeCloseTo(friction, 3);
  });

  test('small ratios fall with slopes 0.5428 and 0.6302 (derived)', () => {
    expect((1 - dragShapeFactor(0.001)) / 0.001).toBeCloseTo(0.5428, 3);
    expect((1 - pressureShapeFactor(0.001)) / 0.001).toBeCloseTo(0.6302, 3);
  });

  test('both are one for an infinitely wide channel', () => {
    expect(dragShapeFactor(0)).toBe(1);
    expect(pressureShapeFactor(0)).toBe(1);
  });

  /** Torsion constant k1 of rectangular bars, long over short side: Timoshenko & Goodier; seen on a structural page; more of it is in the checks. */
  test.each([
    [1.5, 0.196],
    [2, 0.229],
    [3, 0.263],
    [4, 0.281],
  ])('F_p = 3 k1 by the membrane analogy at ratio %s', (longOverShort, k1) => {
    expect(Math.abs(pressureShapeFactor(1 / longOverShort) / 3 - k1)).toBeLessThan(6e-4);
  });

  /** Duct friction f Re of Shah & London 1978 (from memory). */
  test.each([
    [1, 14.227],
    [0.5, 15.548],
    [0.25, 18.233],
  ])('f Re at H/W = %s', (ratio, friction) => {
    expect(24 / ((1 + ratio) ** 2 * pressureShapeFactor(ratio))).toBeCloseTo(friction, 2);
  });

  test('linear textbook fits stay within 1 % and 0.2 % up to 0.3 (Rauwendaal, from memory)', () => {
    for (const ratio of [0.05, 0.1, 0.2, 0.3]) {
      expect(Math.abs((1 - 0.571 * ratio) / dragShapeFactor(ratio) - 1)).toBeLessThan(0.0105);
      expect(Math.abs((1 - 0.625 * ratio) / pressureShapeFactor(ratio) - 1)).toBeLessThan(0.0021);
    }
  });
});
