import { expect, test } from 'vitest';
import { enthalpyBetween, enthalpyOf, warmthOf } from '../../../core/heat/enthalpy.ts';

const content = { heatCapacitySolid: 1500, heatCapacityMelt: 2100, heatOfFusion: 8e4, melting: 430 };

test('enthalpy adds up over any intermediate temperature, and fusion is counted once', () => {
  const whole = enthalpyBetween(content, 295, 480);
  expect(whole).toBeCloseTo(1500 * 135 + 8e4 + 2100 * 50, 6);
  for (const middle of [300, 429.9, 430, 431]) {
    expect(enthalpyBetween(content, 295, middle) + enthalpyBetween(content, middle, 480)).toBeCloseTo(whole, 6);
  }
});

test('warmth gives back its enthalpy, with and without fusion', () => {
  for (const own of [content, { ...content, heatOfFusion: 0 }]) {
    for (const enthalpy of [-2e5, -1, 0, 1, 4e4, 8e4, 8.1e4, 3e5]) {
      expect(enthalpyOf(own, warmthOf(own, enthalpy))).toBeCloseTo(enthalpy, 6);
    }
  }
  expect(warmthOf(content, 2e4)).toEqual({ temperature: 430, fused: 0.25 });
});
