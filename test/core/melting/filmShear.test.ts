import { describe, expect, test } from 'vitest';
import { filmShear, thinnedShear } from '../../../core/melting/filmShear.ts';

/** Integrals over the film by the midpoint rule, from the shear rate's own profile. */
function byNumbers(viscosity: number, index: number, b: number, speed: number, steps = 4000) {
  const rates = Array.from({ length: steps }, (_, i) => Math.exp((b * (i + 0.5)) / steps));
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0) / steps;
  const scale = 1 / sum(rates);
  // stress over that of a film without thinning, thickness 1
  const stress = viscosity * speed ** index * speed ** (1 - index) * scale ** index;
  const speeds: number[] = [];
  let at = 0;
  for (const rate of rates) {
    speeds.push(at + (rate * scale) / (2 * steps));
    at += (rate * scale) / steps;
  }
  const heights = rates.map((_, i) => (i + 0.5) / steps);
  return {
    whole: stress * speed * sum(rates) * scale,
    toBed: stress * speed * scale * sum(rates.map((rate, i) => rate * (1 - heights[i]))),
    carried: 2 * sum(speeds),
    mean: sum(speeds.map((v, i) => v * heights[i])) / sum(speeds),
  };
}

describe('shear of a film', () => {
  test.each([
    [1, 1e-6],
    [1, 0.02],
    [0.4, 1.5],
    [0.7, 6],
  ])('index %d, thinning %d: closed form as by numbers', (index, b) => {
    const shear = thinnedShear(700, index, b, 0.05, 30, 0.2);
    const numbers = byNumbers(700, index, b, 0.05);
    expect(shear.whole / numbers.whole).toBeCloseTo(1, 5);
    expect(shear.toBed / numbers.toBed).toBeCloseTo(1, 5);
    expect(shear.carried / numbers.carried).toBeCloseTo(1, 5);
    expect((shear.rise - shear.toBed / 1.2) / 30 / numbers.mean).toBeCloseTo(1, 5);
  });

  test('Newtonian: half of mu V² goes to the bed; mean temperature 2/3 + Br/12', () => {
    const law = { model: 'newtonian', viscosity: 500 } as const;
    const { toBed, whole, carried, rise } = filmShear(law, law, 0.04, 1e-3, 20, 0.25);
    expect(whole).toBeCloseTo(0.8, 9);
    expect(toBed).toBeCloseTo(0.4, 9);
    expect(carried).toBeCloseTo(1, 9);
    expect(rise / 20).toBeCloseTo(2 / 3 + 0.8 / (0.25 * 20) / 12, 9);
  });

  test('power law: stress from the local rate; no jump where the series hands over', () => {
    const law = { model: 'powerLaw', consistency: 8000, index: 0.4, regularisingRate: 0 } as const;
    expect(filmShear(law, law, 0.03, 5e-4, 0, 0.2).whole).toBeCloseTo(8000 * 60 ** -0.6 * 9e-4, 6);
    for (const key of ['whole', 'toBed', 'carried', 'rise'] as const) {
      const at = (b: number) => thinnedShear(500, 0.5, b, 0.04, 20, 0.2)[key];
      expect(at(0.999e-3) / at(1.001e-3)).toBeCloseTo(1, 5);
    }
  });

  test('a barrel far hotter than melting shears in a thin skin: little heat goes to the bed, nothing is infinite', () => {
    const { toBed, whole } = thinnedShear(1e5, 0.4, 1e3, 0.05, 200, 0.2);
    expect(toBed / whole).toBeLessThan(0.03);
    expect(Number.isFinite(whole)).toBe(true);
  });
});
