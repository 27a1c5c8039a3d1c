import { describe, expect, test } from 'vitest';
import { measured, sharpVertices, snapped } from '../../../renderer/scene/measuring.ts';

describe('lengths between two places', () => {
  test('are split along the axis, radially and round it', () => {
    const lengths = measured([10, 3, 0], [14, 0, 6]);
    expect(lengths.distance).toBeCloseTo(Math.hypot(4, 3, 6) / 1000, 12);
    expect(lengths.axial).toBeCloseTo(0.004, 12);
    expect(lengths.radial).toBeCloseTo(0.003, 12);
    expect(lengths.around).toBeCloseTo(Math.PI / 2, 12);
  });

  test('go round the shorter way, and a place on the axis has no direction', () => {
    const at = (degrees: number) =>
      [0, 5 * Math.sin((degrees * Math.PI) / 180), 5 * Math.cos((degrees * Math.PI) / 180)] as const;
    expect(measured(at(170), at(-170)).around).toBeCloseTo((20 * Math.PI) / 180, 9);
    expect(measured([0, 0, 0], at(90)).around).toBe(0);
  });
});

describe('drawing to edges', () => {
  const corners = [
    [0, 0, 0],
    [10, 0, 0],
    [0, 10, 0],
  ] as const;

  test('a sharp corner within reach is taken before an edge that is nearer', () => {
    expect(snapped([0.6, 0.1, 0], corners, [true, true, false], 1)).toEqual({ at: [0, 0, 0], on: 'corner' });
  });

  test('else the nearest point of a sharp edge', () => {
    const found = snapped([5, 0.5, 0], corners, [true, true, false], 1);
    expect(found.on).toBe('edge');
    expect(found.at[0]).toBeCloseTo(5, 12);
    expect(found.at[1]).toBeCloseTo(0, 12);
  });

  test.each([
    ['the edge is not sharp', [5, 0.5, 0] as const, [true, false, false] as const],
    ['it is out of reach', [3, 3, 0] as const, [true, true, true] as const],
  ])('the place stays where %s', (_why, place, sharp) => {
    expect(snapped(place, corners, sharp, 1)).toEqual({ at: place, on: 'surface' });
  });

  test('vertices that share a place lie on a sharp edge', () => {
    expect(Array.from(sharpVertices([0, 0, 0, 1, 0, 0, 0, 0, 0, 2, 0, 0]))).toEqual([1, 0, 1, 0]);
  });
});
