/** Extents along temperature histories against analytic solutions and a fine numerical integration. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rateConstant } from '../../../core/age/arrhenius.ts';
import { extentOfOrder, extentWithLag } from '../../../core/age/extentForms.ts';
import { extentAlong, type HeatSegment } from '../../../core/age/kinetics.ts';
import type { DegradationLaw } from '../../../core/design/types.ts';
import type { KineticLaw, LagLaw, TwoStepLaw } from '../../../core/material/kineticLaws.ts';

const exact = (value: number) => ({ value, low: value, high: value });
const range = { referenceTemperature: 473.15, validFrom: 433.15, validTo: 483.15 };
const orderLaw = (order: number, rate = 0.01): DegradationLaw => ({
  id: 'test',
  observed: 'test',
  order,
  rateAtReference: { value: rate, low: rate / 2, high: rate * 2 },
  activation: { value: 100e3, low: 80e3, high: 120e3 },
  ...range,
});
const twoStep = (first: number, second: number): TwoStepLaw => ({
  kind: 'twoStep',
  id: 'series',
  observed: 'mass',
  ...range,
  first: { rateAtReference: exact(first), activation: exact(76e3), solidYield: 0.8 },
  second: { rateAtReference: exact(second), activation: exact(152e3), solidYield: 0.4 },
});
const lagLaw: LagLaw = {
  kind: 'lag',
  id: 'lag',
  observed: 'browning',
  ...range,
  rateAtReference: exact(0.01),
  activation: exact(100e3),
  lagAtReference: 200,
};
const at = (duration: number, temperature = 473.15): HeatSegment => ({ duration, temperature });
const extent = (law: KineticLaw, ...segments: HeatSegment[]) => extentAlong(law, segments).extent;

/** Classical fourth-order Runge-Kutta. */
function integrate(slope: (y: number[]) => number[], start: number[], duration: number, steps: number): number[] {
  const h = duration / steps;
  const add = (y: number[], k: number[], f: number) => y.map((v, i) => v + f * k[i]);
  let y = start;
  for (let i = 0; i < steps; i++) {
    const k1 = slope(y);
    const k2 = slope(add(y, k1, h / 2));
    const k3 = slope(add(y, k2, h / 2));
    const k4 = slope(add(y, k3, h));
    y = y.map((v, j) => v + (h / 6) * (k1[j] + 2 * k2[j] + 2 * k3[j] + k4[j]));
  }
  return y;
}

describe('order-based laws', () => {
  it('zero order grows without bound, first order as 1 - exp(-kt), second as kt/(1 + kt)', () => {
    expect(extent(orderLaw(0), at(500))).toBeCloseTo(5, 12);
    expect(extent(orderLaw(1), at(500))).toBeCloseTo(1 - Math.exp(-5), 12);
    expect(extent(orderLaw(2), at(500))).toBeCloseTo(5 / 6, 12);
  });

  it('half order is used up at kt = 2 and stays there', () => {
    expect(extent(orderLaw(0.5), at(100))).toBeCloseTo(1 - 0.25, 12);
    expect(extent(orderLaw(0.5), at(200))).toBe(1);
    expect(extent(orderLaw(0.5), at(300))).toBe(1);
  });

  it('any order agrees with direct integration of dα/dt = k(1 - α)^n', () => {
    for (const order of [0.5, 0.9, 1, 1.5, 3]) {
      const [alpha] = integrate(([y]) => [(1 - y) ** order], [0], 0.8, 4000);
      expect(extentOfOrder(order, 0.8)).toBeCloseTo(alpha, 9);
    }
  });

  it('is continuous in the order at 1', () => {
    expect(extentOfOrder(1 + 1e-9, 2)).toBeCloseTo(extentOfOrder(1, 2), 8);
    expect(extentOfOrder(1 - 1e-9, 2)).toBeCloseTo(extentOfOrder(1, 2), 8);
  });

  it('keeps digits of tiny extents', () => expect(extentOfOrder(2, 1e-14) / 1e-14).toBeCloseTo(1, 10));
});

describe('temperature', () => {
  it('follows Arrhenius: ln k is straight in 1/T with slope -Ea/R', () => {
    const k = (temperature: number) => rateConstant(0.01, 100e3, 473.15, temperature);
    expect(k(473.15)).toBe(0.01);
    const slope = Math.log(k(500) / k(450)) / (1 / 500 - 1 / 450);
    expect(slope).toBeCloseTo(-100e3 / 8.314462618, 6);
  });

  it('reports time below and above the measured range, and nothing inside', () => {
    const mixed = extentAlong(orderLaw(1), [at(10, 420), at(20, 470), at(5, 500)]);
    expect([mixed.below, mixed.above]).toEqual([10, 5]);
    expect(mixed.doubt).toContain('160 °C to 210 °C');
    expect(mixed.doubt).toContain('147 °C to 227 °C');
    expect(extentAlong(orderLaw(1), [at(10, 470), at(0, 600)]).doubt).toBeNull();
  });

  it('refuses what is not a history', () => {
    for (const segment of [at(-1), at(Number.NaN), at(1, 0), at(1, Number.NaN), at(Infinity)])
      expect(() => extentAlong(orderLaw(1), [segment])).toThrow(RangeError);
  });

  it('takes the ends of the doubt ranges on demand', () => {
    const high = extentAlong(orderLaw(0), [at(500)], { rate: 'high', activation: 'value' });
    expect(high.extent).toBeCloseTo(10, 12);
  });
});

describe('series of two steps', () => {
  const solved = (k1: number, k2: number, duration: number) => {
    const slope = ([a, b, c]: number[]) => [-k1 * a, 0.8 * k1 * a - k2 * b, 0.4 * k2 * b + 0 * c];
    const [a, b, c] = integrate(slope, [1, 0, 0], duration, 4000);
    return 1 - a - b - c;
  };

  it.each([
    [0.01, 0.003],
    [0.003, 0.01],
    [0.01, 0.01],
    [0.01, 0.01 * (1 + 1e-12)],
    [0.5, 1e-4],
  ])('k1 %d, k2 %d agree with direct integration', (k1, k2) => {
    expect(extent(twoStep(k1, k2), at(150))).toBeCloseTo(solved(k1, k2, 150), 9);
  });

  it('without a second step loses 1 - yield, with both 1 - yield1 yield2', () => {
    expect(extent(twoStep(1, 0), at(1e4))).toBeCloseTo(0.2, 12);
    expect(extent(twoStep(1, 1), at(1e4))).toBeCloseTo(1 - 0.32, 12);
  });
});

describe('lag', () => {
  it('starts at 0, ends at 1, and rises steepest with the stated rate', () => {
    expect(extentWithLag(0, 0)).toBe(0);
    expect(extentWithLag(50, 2)).toBeCloseTo(1, 12);
    const slopes = Array.from(
      { length: 2000 },
      (_, i) => (extentWithLag((i + 1) / 200, 2) - extentWithLag(i / 200, 2)) * 200,
    );
    expect(Math.max(...slopes)).toBeCloseTo(1, 3);
  });

  it('hardly moves within the lag: its steepest tangent crosses zero there', () => {
    expect(extent(lagLaw, at(100))).toBeLessThan(1e-3);
    // Gompertz inflects at 1/e, one 1/e of reduced time behind the lag
    expect(extent(lagLaw, at(200 + 100 / Math.E))).toBeCloseTo(1 / Math.E, 6);
  });

  it('lags less where it is hotter', () => {
    const hot = at(100, 493.15);
    const factor = rateConstant(1, 100e3, 473.15, 493.15);
    expect(extent(lagLaw, hot)).toBeCloseTo(extent(lagLaw, at(100 * factor)), 12);
  });
});

describe('properties of every law', () => {
  const laws = [orderLaw(0), orderLaw(1), orderLaw(1.7), twoStep(0.01, 0.004), lagLaw];
  const stretch = fc.record({
    duration: fc.double({ min: 0, max: 300, noNaN: true }),
    temperature: fc.double({ min: 440, max: 490, noNaN: true }),
  });

  it('splitting a stretch changes nothing, and more time never undoes', () => {
    fc.assert(
      fc.property(
        fc.array(stretch, { maxLength: 5 }),
        stretch,
        fc.double({ min: 0, max: 1, noNaN: true }),
        (before, last, cut) => {
          for (const law of laws) {
            const whole = extent(law, ...before, last);
            const first = { ...last, duration: last.duration * cut };
            const second = { ...last, duration: last.duration * (1 - cut) };
            expect(Math.abs(extent(law, ...before, first, second) - whole)).toBeLessThan(1e-10 * (1 + whole));
            expect(whole).toBeGreaterThanOrEqual(extent(law, ...before) - 1e-12);
          }
        },
      ),
      { seed: 20240611, numRuns: 200 },
    );
  });
});
