import { describe, expect, it } from 'vitest';
import { firstNarrowing, leastClearance, leastRadiusAt, type MeridianPoint } from '../../../core/design/clearance.ts';

const points = (...pairs: [z: number, r: number][]): MeridianPoint[] => pairs.map(([z, r]) => ({ z, r }));

describe('leastClearance', () => {
  const bore = points([0, 7], [20, 7], [20, 2], [40, 2]);

  it('of a flat tip before a flat shoulder is the axial distance', () => {
    expect(leastClearance(points([17, 4], [17, 0]), bore)).toBeCloseTo(3, 12);
    expect(leastClearance(points([19.9, 4], [19.9, 0]), bore)).toBeCloseTo(0.1, 12);
  });

  it('of a cone inside an equal cone is the distance square to the wall', () => {
    const cone = points([0, 7], [20, 7], [20 + 7 / Math.tan(Math.PI / 6), 0], [60, 0]);
    // Walls at 30 degrees to the axis; at z = 22 the outer one is at 7 - 2 tan 30, so 2.4639 square to the inner one.
    const inner = points([22, 3], [22 + 3 / Math.tan(Math.PI / 6), 0]);
    const radial = 7 - 2 * Math.tan(Math.PI / 6) - 3;
    expect(leastClearance(inner, cone)).toBeCloseTo(radial * Math.cos(Math.PI / 6), 9);
  });

  it('is negative where they overlap, whichever has the corner', () => {
    expect(leastClearance(points([21, 4], [21, 0]), bore)).toBeCloseTo(-2, 12);
    expect(leastClearance(points([15, 4], [25, 0]), bore)).toBeCloseTo(0, 12);
    expect(leastClearance(points([15, 5], [25, 0]), bore)).toBeCloseTo(-0.5, 12);
  });

  it('is without measure where the tip comes out of the bore', () => {
    expect(leastClearance(points([15, 1], [41, 1], [41, 0]), bore)).toBe(Number.NEGATIVE_INFINITY);
  });
});

describe('bore lines', () => {
  const bore = points([0, 7], [20, 7], [25, 2], [25, 1], [30, 1]);

  it('give the least radius at a step and nothing beyond the ends', () => {
    expect(leastRadiusAt(bore, 22.5)).toBeCloseTo(4.5, 12);
    expect(leastRadiusAt(bore, 25)).toBe(1);
    expect(leastRadiusAt(bore, 31)).toBeNaN();
  });

  it('tell where they become narrower than a radius', () => {
    expect(firstNarrowing(bore, 6)).toBeCloseTo(21, 12);
    expect(firstNarrowing(bore, 7)).toBe(20);
    expect(firstNarrowing(bore, 1.5)).toBe(25);
    expect(firstNarrowing(bore, 1)).toBe(Number.POSITIVE_INFINITY);
  });
});
