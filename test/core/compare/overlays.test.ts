import { describe, expect, test } from 'vitest';
import { alignmentShift, differingStretches, headProfile, radiusAt } from '../../../core/compare/headProfile.ts';
import { overlayCurves } from '../../../core/compare/overlaidCurves.ts';
import { loadDesign } from '../../helpers/projects.ts';

const outline = (...points: [number, number][]) => ({
  z: Float64Array.from(points, ([z]) => z),
  r: Float64Array.from(points, ([, r]) => r),
});

describe('outlines laid over each other', () => {
  const plain = outline([0, 5], [10, 5]);

  test('the radius between points is linear, at a step that of the side asked for, beyond the ends none', () => {
    const stepped = outline([0, 5], [4, 7], [4, 3], [10, 3]);
    expect(radiusAt(stepped, 2)).toBe(6);
    expect(radiusAt(stepped, 4, 'before')).toBe(7);
    expect(radiusAt(stepped, 4, 'after')).toBe(3);
    expect(radiusAt(stepped, -1)).toBe(0);
    expect(radiusAt(stepped, 11)).toBe(0);
  });

  test('alike outlines differ nowhere, whatever points describe them', () => {
    expect(differingStretches(plain, outline([0, 5], [3, 5], [10, 5]))).toEqual([]);
  });

  test('a groove is one stretch with its ends, radii and depth', () => {
    const grooved = outline([0, 5], [2, 5], [2, 4], [6, 4.5], [6, 5], [10, 5]);
    const [found, ...rest] = differingStretches(plain, grooved);
    expect(rest).toEqual([]);
    expect(found).toEqual({ z: [2, 6], base: [5, 5], other: [4, 4.5], most: 1 });
  });

  test('a part that reaches further differs over what it reaches', () => {
    const [found] = differingStretches(plain, outline([0, 5], [12, 5]));
    expect(found).toMatchObject({ z: [10, 12], base: [0, 0], other: [5, 5] });
  });

  test('a shifted outline is compared where it then lies', () => {
    expect(differingStretches(outline([2, 5], [12, 5]), plain, 2)).toEqual([]);
    expect(differingStretches(plain, plain, 2).map(({ z }) => z)).toEqual([
      [0, 2],
      [10, 12],
    ]);
  });
});

describe('heads of the demo', () => {
  const [a, c] = [headProfile(loadDesign('demo', 'A')), headProfile(loadDesign('demo', 'C'))];

  test('a profile begins with the shank, ends at the orifice and stays inside its outside', () => {
    expect(c.screw.z[0]).toBeLessThan(0);
    expect(c.bore.z.at(-1)).toBe(c.end);
    for (const z of [0.01, 0.05, c.barrelEnd * 0.9]) {
      expect(radiusAt(c.screw, z)).toBeLessThan(radiusAt(c.bore, z));
      expect(radiusAt(c.bore, z)).toBeLessThan(radiusAt(c.outside, z));
    }
  });

  test('a head on itself needs no shift and differs nowhere; another screw differs', () => {
    for (const how of ['feed', 'tip', 'orifice'] as const) expect(alignmentShift(c, c, how)).toBe(0);
    expect(differingStretches(c.screw, c.screw)).toEqual([]);
    expect(differingStretches(c.screw, a.screw, alignmentShift(c, a, 'tip')).length).toBeGreaterThan(0);
  });

  test('the outside has the neck of the heat break, and another neck differs', () => {
    const design = loadDesign('demo', 'C');
    // the example's neck: 17 mm from 44 to 58 mm in a barrel of 28 mm
    expect([0.03, 0.05, 0.07].map((z) => Math.round(2e4 * radiusAt(c.outside, z)) / 10)).toEqual([28, 17, 28]);
    const bare = headProfile({ ...design, barrel: { ...design.barrel, heatBreak: null } });
    const found = differingStretches(bare.outside, c.outside).map(({ z, most }) =>
      [...z, most].map((value) => Math.round(1e7 * value)),
    );
    expect(found).toEqual([[440000, 580000, 55000]]);
  });

  test('laid on the tips, the foremost points coincide; on the orifices, the ends do', () => {
    expect(a.tipEnd + alignmentShift(c, a, 'tip')).toBeCloseTo(c.tipEnd, 12);
    expect(a.end + alignmentShift(c, a, 'orifice')).toBeCloseTo(c.end, 12);
  });
});

describe('curves laid over each other', () => {
  test('they share the union of their abscissas and end where they end', () => {
    const { x, lines } = overlayCurves([
      { id: 'A', x: [0, 2, 4], y: [0, 20, 40] },
      { id: 'B', x: [1, 2, 3], y: [5, 6, 7] },
    ]);
    expect(x).toEqual([0, 1, 2, 3, 4]);
    expect(lines).toEqual([
      { id: 'A', y: [0, 10, 20, 30, 40] },
      { id: 'B', y: [null, 5, 6, 7, null] },
    ]);
  });

  test('gaps stay gaps, and what is no number is one', () => {
    const { lines } = overlayCurves([
      { id: 'A', x: [0, 1, 2, 3, 4], y: [0, 1, null, 3, Number.POSITIVE_INFINITY] },
      { id: 'B', x: [1.5, 2, 3.5], y: [1, 1, 1] },
    ]);
    expect(lines[0]?.y).toEqual([0, 1, null, null, 3, null]);
  });

  test('nothing to lay over gives nothing', () => {
    expect(overlayCurves([{ id: 'A', x: [], y: [] }])).toEqual({ x: [], lines: [{ id: 'A', y: [] }] });
  });
});
