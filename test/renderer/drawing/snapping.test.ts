import { describe, expect, test } from 'vitest';
import { snap, stepFor } from '../../../renderer/drawing/snapping.ts';

const plain = { unit: 'mm', fine: false, magnets: [] } as const;

describe('steps follow the zoom', () => {
  test.each([
    [0.02, 0.1],
    [0.1, 0.1],
    [0.3, 0.5],
    [0.8, 1],
    [4, 5],
    [40, 5],
  ])('%d mm per px: steps of %d mm', (perPixel, step) => {
    expect(stepFor({ ...plain, perPixel })).toBe(step);
    expect(stepFor({ ...plain, perPixel: -perPixel, fine: true })).toBeCloseTo(step / 10, 9);
  });

  test('angles step by one or five degrees, inches by thousandths', () => {
    expect(stepFor({ unit: '°', perPixel: 0.2, fine: false })).toBe(1);
    expect(stepFor({ unit: '°', perPixel: 3, fine: false })).toBe(5);
    expect(stepFor({ unit: 'in', perPixel: 0.02, fine: false })).toBeCloseTo(0.127, 9);
  });
});

describe('rounding a pull', () => {
  const bore = { value: 14, name: 'the bore' };

  test('falls on whole steps, without the dust of arithmetic', () => {
    expect(snap(55.2999, { ...plain, perPixel: 0.02 })).toEqual({ value: 55.3, magnet: null });
    expect(snap(0.30000001, { ...plain, perPixel: 0.02 }).value).toBe(0.3);
  });

  test('sticks to a near neighbour, not to a far one, and not with Alt', () => {
    const rounding = { ...plain, perPixel: 0.1, magnets: [bore, { value: 14.4, name: 'x' }] };
    expect(snap(13.7, rounding)).toEqual({ value: 14, magnet: bore });
    expect(snap(13.2, rounding)).toEqual({ value: 13.2, magnet: null });
    expect(snap(13.93, { ...rounding, fine: true })).toEqual({ value: 13.93, magnet: null });
  });
});
