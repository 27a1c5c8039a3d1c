import { expect, test } from 'vitest';
import { enthalpyBetween } from '../../../core/heat/enthalpy.ts';
import { rodTemperature } from '../../../core/heat/rod.ts';

const fill = (n: number, value: number) => new Float64Array(n).fill(value);

/** Fin with an insulated tip: (T - Ta)/(Tb - Ta) = cosh m(L - x)/cosh mL, m² = exchange/(k A). */
function finError(n: number): number {
  const length = 0.1;
  const conduction = 45 * 2e-4;
  const exchange = 0.6;
  const cell = length / n;
  const temperature = rodTemperature({
    cell,
    conduction: fill(n, conduction),
    exchange: fill(n, exchange),
    surroundings: fill(n, 300),
    source: fill(n, 0),
    startTemperature: 500,
    startConductance: (2 * conduction) / cell,
    endTemperature: 300,
    endConductance: 0,
  });
  const m = Math.sqrt(exchange / conduction);
  return temperature.reduce((worst, value, i) => {
    const exact = 300 + (200 * Math.cosh(m * (length - (i + 0.5) * cell))) / Math.cosh(m * length);
    return Math.max(worst, Math.abs(value - exact));
  }, 0);
}

test('a fin with an insulated tip follows cosh, second order in the cell', () => {
  expect(finError(80)).toBeLessThan(0.02);
  const order = Math.log2(finError(20) / finError(40));
  expect(order).toBeGreaterThan(1.8);
  expect(order).toBeLessThan(2.2);
});

test('a thin sleeve takes the drop of the wall it replaces: conductances in series', () => {
  const n = 100;
  const conduction = Float64Array.from({ length: n }, (_, i) => (i >= 40 && i < 60 ? 1e-4 : 1e-2));
  const temperature = rodTemperature({
    cell: 1e-3,
    conduction,
    exchange: fill(n, 0),
    surroundings: fill(n, 300),
    source: fill(n, 0),
    startTemperature: 300,
    startConductance: 20,
    endTemperature: 450,
    endConductance: 20,
  });
  const drop = temperature[60] - temperature[39];
  const flow = 150 / (0.02 / 1e-4 + 0.08 / 1e-2 + 0.1);
  expect(Math.abs(drop / (flow * (0.02 / 1e-4)) - 1)).toBeLessThan(0.01);
});

test('sources warm an insulated rod until the ends carry the heat off', () => {
  const n = 50;
  const temperature = rodTemperature({
    cell: 2e-3,
    conduction: fill(n, 1e-2),
    exchange: fill(n, 0),
    surroundings: fill(n, 300),
    source: fill(n, 100),
    startTemperature: 300,
    startConductance: 1,
    endTemperature: 300,
    endConductance: 1,
  });
  // 10 W leave through two ends of 1 W/K
  expect(temperature[0]).toBeCloseTo(305, 6);
  expect(temperature[n - 1]).toBeCloseTo(305, 6);
});

test('enthalpy adds up over any intermediate temperature, and fusion is counted once', () => {
  const content = { heatCapacitySolid: 1500, heatCapacityMelt: 2100, heatOfFusion: 8e4, melting: 430 };
  const whole = enthalpyBetween(content, 295, 480);
  expect(whole).toBeCloseTo(1500 * 135 + 8e4 + 2100 * 50, 6);
  for (const middle of [300, 429.9, 430, 431]) {
    expect(enthalpyBetween(content, 295, middle) + enthalpyBetween(content, middle, 480)).toBeCloseTo(whole, 6);
  }
});
