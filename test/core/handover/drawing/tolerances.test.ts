import { describe, expect, test } from 'vitest';
import { angleText, linearTolerance, toleranceName } from '../../../../core/handover/drawing/generalTolerance.ts';
import { angularSteps } from '../../../../core/handover/drawing/generalToleranceTable.ts';
import { degreesText, fittedSize, numberText, plainSize, sizeText } from '../../../../core/handover/drawing/size.ts';
import { limitSteps } from '../../../../core/make/isoFitTable.ts';
import { isoLimits, type LimitClass } from '../../../../core/make/isoLimits.ts';

describe('general tolerances', () => {
  // ISO 2768-1 table 1 as reprinted by several shops, see the data file; class m also at "Tolerance ISO 2768 mK"
  test.each([
    [0.5, 'm', 0.1],
    [3, 'm', 0.1],
    [6, 'm', 0.1],
    [6.01, 'm', 0.2],
    [30, 'm', 0.2],
    [400, 'm', 0.5],
    [1000, 'm', 0.8],
    [2000, 'm', 1.2],
    [20, 'f', 0.1],
    [20, 'c', 0.5],
    [20, 'v', 1],
    [4000, 'v', 8],
  ] as const)('of %d mm in class %s is %d mm', (size, grade, limit) => {
    expect(linearTolerance(size, grade)).toBe(limit);
  });

  test('are null where the standard gives none', () => {
    expect([
      linearTolerance(0.49, 'm'),
      linearTolerance(2, 'v'),
      linearTolerance(3000, 'f'),
      linearTolerance(4001, 'm'),
    ]).toEqual([null, null, null, null]);
  });

  // ISO 2768-1 table 3 as reprinted on a page of a web index ("DIN ISO 2768", angular table)
  test.each([
    [10, 'm', '1°'],
    [120, 'm', "0°20'"],
    [400, 'm', "0°10'"],
    [500, 'm', "0°5'"],
    [10, 'c', "1°30'"],
    [100, 'c', "0°30'"],
    [300, 'c', "0°15'"],
    [10, 'v', '3°'],
    [50, 'v', '2°'],
  ] as const)('of an angle with a leg of %d mm in class %s is %s', (leg, grade, text) => {
    expect(angleText(angularSteps.find(({ upTo }) => leg <= upTo)?.[grade] ?? Number.NaN)).toBe(text);
  });

  test('grow with size and with coarser classes', () => {
    for (let size = 0.6; size < 2000; size *= 1.3) {
      const [f, m, c, v] = (['f', 'm', 'c', 'v'] as const).map((grade) => linearTolerance(size, grade));
      expect(f ?? 0).toBeLessThanOrEqual(m ?? 0);
      expect(m ?? 0).toBeLessThanOrEqual(c ?? 0);
      if (v !== null && v !== undefined) expect(v).toBeGreaterThan(c ?? 0);
    }
    expect(toleranceName('m')).toBe('ISO 2768-m');
  });
});

describe('limits of ISO 286', () => {
  // H and h: tables of ISO tolerances at deepri.com and of bright bars at precisemetal.in; 25 g6: common fit tables
  test.each([
    [10, 'H7', 15, 0],
    [10.5, 'H7', 18, 0],
    [30, 'H8', 33, 0],
    [5, 'H9', 30, 0],
    [10, 'h6', 0, -9],
    [200, 'h9', 0, -115],
    [25, 'g6', -7, -20],
    [10, 'g6', -5, -14],
  ] as const)('%d %s is %d to %d µm', (size, name, upper, lower) => {
    const limits = isoLimits(size * 1e-3, name);
    expect(limits?.upper).toBeCloseTo(upper * 1e-6, 12);
    expect(limits?.lower).toBeCloseTo(lower * 1e-6, 12);
  });

  test('end with the table', () => {
    expect(isoLimits(0.2501, 'H7')).toBeNull();
    expect(isoLimits(0, 'h6' satisfies LimitClass)).toBeNull();
  });

  test('f and g follow the formulas of ISO 286-1: 5.5 D^0.41 and 2.5 D^0.34, rounded', () => {
    for (const { above, upTo, fDeviation, gDeviation } of limitSteps.slice(1)) {
      const mean = Math.sqrt(above * upTo);
      expect(Math.abs(fDeviation - 5.5 * mean ** 0.41)).toBeLessThan(1.1);
      expect(Math.abs(gDeviation - 2.5 * mean ** 0.34)).toBeLessThan(1.1);
    }
  });
});

describe('sizes as text', () => {
  test('carry their sign, class and limits', () => {
    expect(sizeText(fittedSize(0.014, 'H7', 1))).toBe('⌀14 H7 (+18/0 µm)');
    expect(sizeText(fittedSize(0.01, 'g6', 1))).toBe('⌀10 g6 (−5/−14 µm)');
    expect(sizeText(fittedSize(0.014, 'none', 1))).toBe('⌀14');
    expect(sizeText(fittedSize(0.3, 'H7', 1))).toBe('⌀300');
    expect(sizeText(plainSize(1.2, 'R', 1))).toBe('R1.2');
    expect(sizeText({ ...plainSize(9.00666, '', 1), auxiliary: true })).toBe('(9.01)');
    expect(numberText(2.5981)).toBe('2.598');
    // halves that are no binary numbers: toFixed would give 21.48 and 1
    expect(sizeText({ ...plainSize(21.485, '', 1), auxiliary: true })).toBe('(21.49)');
    expect(numberText(1.0005)).toBe('1.001');
    expect(numberText(-0.00001)).toBe('0');
    expect(degreesText(59.9999999)).toBe('60°');
  });
});
