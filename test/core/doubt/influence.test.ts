import { describe, expect, test } from 'vitest';
import { strengthsOf } from '../../../core/doubt/influence.ts';
import { latinHypercube } from '../../../core/doubt/latin.ts';

/** Columns of a hypercube. */
function columnsOf(samples: number, inputs: number): Float64Array[] {
  const unit = latinHypercube(samples, inputs, 3);
  return Array.from({ length: inputs }, (_, input) =>
    Float64Array.from({ length: samples }, (_, i) => unit[i * inputs + input]),
  );
}

describe('strengths of inputs', () => {
  test('are those of a linear function: 3, -2, 1 and 0 over the root of 14', () => {
    const columns = columnsOf(300, 4);
    const output = columns[0].map((_, i) => 3 * columns[0][i] - 2 * columns[1][i] + columns[2][i]);
    const { method, strength, explained, noiseFloor } = strengthsOf(columns, output);
    expect(method).toBe('rank regression');
    // Uniform inputs: the standardised coefficients are exact for values, and within a few hundredths for ranks.
    [3, -2, 1, 0].forEach((factor, i) => {
      expect(Math.abs(strength[i] - factor / Math.sqrt(14))).toBeLessThan(0.05);
    });
    expect(explained).toBeGreaterThan(0.95);
    expect(Math.abs(strength[3])).toBeLessThan(noiseFloor * 2);
    expect(Math.abs(strength[2])).toBeGreaterThan(noiseFloor);
  });

  test('see a bent but rising function whole', () => {
    const [x, y] = columnsOf(100, 2);
    const { strength } = strengthsOf(
      [x, y],
      x.map((value) => Math.exp(9 * value)),
    );
    expect(strength[0]).toBeCloseTo(1, 6);
    expect(strength[1]).toBeCloseTo(0, 6);
  });

  test('say by the explained share that they miss what rises and falls', () => {
    const [x, y] = columnsOf(200, 2);
    expect(
      strengthsOf(
        [x, y],
        x.map((value) => (value - 0.5) ** 2),
      ).explained,
    ).toBeLessThan(0.1);
  });

  test('become correlations with few samples, and nothing without change', () => {
    const [x, y] = columnsOf(8, 2);
    const few = strengthsOf([x, y], x);
    expect(few.method).toBe('rank correlation');
    expect(few.strength[0]).toBeCloseTo(1, 12);
    expect(few.noiseFloor).toBeGreaterThan(0.5);
    const still = strengthsOf(
      [x, x.map(() => 2)],
      x.map(() => 7),
    );
    expect(Array.from(still.strength)).toEqual([Number.NaN, Number.NaN]);
    expect(strengthsOf([x, x.map(() => 2)], x).strength[1]).toBeNaN();
    expect(strengthsOf([[]], []).strength[0]).toBeNaN();
  });
});
