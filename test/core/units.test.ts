import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  allUnits,
  type Dimension,
  dimensionOf,
  displayUnits,
  formatNumber,
  formatQuantity,
  fromSi,
  parseQuantity,
  toSi,
  type Unit,
  unitLabel,
  unitsOf,
} from '../../core/units.ts';

const seed = 20261125;
const anyUnit = fc.constantFrom(...allUnits);
const read = (text: string, dimension: Dimension, unit?: Unit): number => {
  const result = parseQuantity(text, dimension, unit);
  if (!result.ok) throw new Error(result.issues[0]?.message);
  return result.value;
};

describe('conversion', () => {
  // Inch and pound: international yard and pound agreement of 1959; temperatures: definition of the degree Celsius (SI
  // Brochure); psi and lbf·in follow from them with standard gravity. The last column is arithmetic.
  it.each<[number, Unit, number]>([
    [14, 'mm', 0.014],
    [1, 'in', 0.0254],
    [60, 'rpm', 1],
    [0, '°C', 273.15],
    [32, '°F', 273.15],
    [374, '°F', 463.15],
    [90, 'Δ°F', 50],
    [1, 'MPa', 1e6],
    [1, 'bar', 1e5],
    [1, 'psi', 6894.757293168],
    [1, 'g/min', 1 / 60000],
    [3.6, 'kg/h', 0.001],
    [20, 'mm³/s', 2e-8],
    [72, 'cm³/h', 2e-8],
    [180, '°', Math.PI],
    [12, '%', 0.12],
    [1, 'lbf·in', 0.1129848290276],
    [42, 'lb/ft³', (42 * 0.45359237) / 0.3048 ** 3],
    [28.5, 'kcal/mol', 119244],
  ])('%d %s is %d in SI', (shown, unit, si) => {
    expect(Math.abs(toSi(shown, unit) / si - 1)).toBeLessThan(1e-10);
  });

  it('goes there and back for every unit', () => {
    const number = fc.double({ min: -1e9, max: 1e9, noNaN: true });
    fc.assert(
      fc.property(anyUnit, number, (unit, shown) => {
        expect(Math.abs(fromSi(toSi(shown, unit), unit) - shown)).toBeLessThanOrEqual(1e-12 * (Math.abs(shown) + 1000));
      }),
      { seed, numRuns: 2000 },
    );
  });

  it('has a shown unit for each dimension in both habits', () => {
    for (const system of [displayUnits.metric, displayUnits.inch]) {
      for (const [dimension, unit] of Object.entries(system)) expect(dimensionOf(unit)).toBe(dimension);
    }
  });
});

describe('parseQuantity', () => {
  it.each<[string, Dimension, number]>([
    ['3 mm', 'length', 0.003],
    ['3mm', 'length', 0.003],
    ['3,5 mm', 'length', 0.0035],
    ['.5 in', 'length', 0.0127],
    ['1/8 in', 'length', 0.003175],
    ['1 1/2"', 'length', 0.0381],
    ['1½ in', 'length', 0.0381],
    ['-1 1/2 in', 'length', -0.0381],
    ['1-1/2 in', 'length', 0.0381],
    ['1/8 in.', 'length', 0.003175],
    ['⅓ m', 'length', 1 / 3],
    ['Ø14', 'length', 0.014],
    ['0.5 N.m', 'torque', 0.5],
    ['0.5 N-m', 'torque', 0.5],
    ['190 degrees C', 'temperature', 463.15],
    ['190 deg. C'.replace('.', ''), 'temperature', 463.15],
    ['3', 'length', 0.003],
    ['2e-3 m', 'length', 0.002],
    ['0,125 in', 'length', 0.003175],
    ['40 μm', 'length', 4e-5],
    ['12 rpm', 'rotation', 0.2],
    ['12 RPM', 'rotation', 0.2],
    ['12 1/min', 'rotation', 0.2],
    ['0.2 rev/s', 'rotation', 0.2],
    ['0.5 Nm', 'torque', 0.5],
    ['0.5 N·m', 'torque', 0.5],
    ['0.5 N m', 'torque', 0.5],
    ['0.5 N*m', 'torque', 0.5],
    ['50 N⋅cm', 'torque', 0.5],
    ['190 C', 'temperature', 463.15],
    ['190 °C', 'temperature', 463.15],
    ['190°c', 'temperature', 463.15],
    ['374 F', 'temperature', 463.15],
    ['463.15 K', 'temperature', 463.15],
    ['−20 °C', 'temperature', 253.15],
    ['10 C', 'temperatureDifference', 10],
    ['5 MPa', 'pressure', 5e6],
    ['50 bar', 'pressure', 5e6],
    ['8 g/min', 'massFlow', 8 / 60000],
    ['20 mm3/s', 'volumeFlow', 2e-8],
    ['20 mm^3/s', 'volumeFlow', 2e-8],
    ['72 cm³/h', 'volumeFlow', 2e-8],
    ['1040 kg/m3', 'density', 1040],
    ['1200 mPa·s', 'viscosity', 1.2],
    ['5 1/s', 'rate', 5],
    ['5 s^-1', 'rate', 5],
    ['30 deg', 'angle', Math.PI / 6],
    ['30°', 'angle', Math.PI / 6],
    ['15 %', 'share', 0.15],
    ['2 min', 'time', 120],
    ['\u00a0 7 \u2009 W ', 'power', 7],
  ])('reads %j as %s', (text, dimension, si) => {
    expect(read(text, dimension)).toBeCloseTo(si, 12);
  });

  it('takes a bare number in the unit that is given', () => {
    expect(read('1/2', 'length', 'in')).toBeCloseTo(0.0127, 12);
    expect(read('374', 'temperature', '°F')).toBeCloseTo(463.15, 9);
  });

  it.each<[string, Dimension, string]>([
    ['', 'length', 'bad-quantity'],
    ['mm', 'length', 'bad-quantity'],
    ['three mm', 'length', 'bad-quantity'],
    ['1/0 in', 'length', 'bad-quantity'],
    ['NaN', 'length', 'bad-quantity'],
    ['Infinity mm', 'length', 'bad-quantity'],
    ['1e999 mm', 'length', 'bad-quantity'],
    ['-300 °C', 'temperature', 'bad-quantity'],
    [`${'9'.repeat(200)} mm`, 'length', 'bad-quantity'],
    ['1,000 mm', 'length', 'ambiguous-number'],
    ['1.234,5 mm', 'length', 'ambiguous-number'],
    ['1,234.5 mm', 'length', 'ambiguous-number'],
    ['1 234 mm', 'length', 'ambiguous-number'],
    ["1'234'567 mm", 'length', 'ambiguous-number'],
    ['3 furlongs', 'length', 'unknown-unit'],
    ['3 mm mm', 'length', 'unknown-unit'],
    ['3 constructor', 'length', 'unknown-unit'],
    ['190 C', 'length', 'wrong-unit'],
    ['3 mm', 'rotation', 'wrong-unit'],
  ])('refuses %j as %s: %s', (text, dimension, code) => {
    const result = parseQuantity(text, dimension);
    expect(result.ok).toBe(false);
    if (result.ok) return;
    expect(result.issues.map((issue) => issue.code)).toEqual([code]);
    for (const unit of unitsOf(dimension)) expect(result.issues[0]?.allowed).toContain(unitLabel(unit));
  });

  it('takes a sign with three digits behind it as decimals only where the reader writes decimals so', () => {
    const codes = (text: string, decimal: '.' | ',') => {
      const result = parseQuantity(text, 'length', 'mm', decimal);
      return result.ok ? result.value : result.issues[0]?.code;
    };
    expect(codes('1,234 mm', ',')).toBeCloseTo(0.001234, 12);
    expect(codes('1.234 mm', '.')).toBeCloseTo(0.001234, 12);
    expect(codes('1.234 mm', ',')).toBe('ambiguous-number');
    expect(codes('1.5 mm', ',')).toBeCloseTo(0.0015, 12);
    const told = parseQuantity('1.234', 'length', 'mm', ',');
    expect(told.ok ? '' : told.issues[0]?.message).toMatch(/point could mark thousands/);
    expect(told.ok ? '' : told.issues[0]?.remedy).toMatch(/comma/);
  });

  it('keeps mega and milli apart', () => {
    expect(read('1 MPa·s'.replace('MPa', 'mPa'), 'viscosity')).toBeCloseTo(0.001, 15);
    expect(read('1 mW', 'power')).toBeCloseTo(0.001, 15);
    expect(read('1 mpa', 'pressure')).toBe(1e6);
  });

  it('reads back what it wrote, for every unit', () => {
    const number = fc.double({ min: -1e6, max: 1e6, noNaN: true }).filter((x) => x === 0 || Math.abs(x) > 1e-6);
    fc.assert(
      fc.property(anyUnit, number, (unit, raw) => {
        const shown = dimensionOf(unit) === 'temperature' ? Math.abs(raw) : raw;
        const si = toSi(shown, unit);
        const back = read(formatQuantity(si, unit, 17), dimensionOf(unit));
        expect(Math.abs(fromSi(back, unit) - shown)).toBeLessThanOrEqual(1e-9 * (Math.abs(shown) + 1));
      }),
      { seed, numRuns: 2000 },
    );
  });

  it('never throws, whatever is typed', () => {
    const dimension = fc.constantFrom(...(Object.keys(displayUnits.metric) as Dimension[]));
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 100 }), dimension, (text, what) => {
        const result = parseQuantity(text, what);
        if (result.ok) expect(Number.isFinite(result.value)).toBe(true);
        else expect(result.issues).toHaveLength(1);
      }),
      { seed, numRuns: 2000 },
    );
  });
});

describe('formatting', () => {
  it.each<[number, Unit, number, string]>([
    [0.014, 'mm', 4, '14 mm'],
    [0.0123456, 'mm', 3, '12.3 mm'],
    [0.003175, 'in', 4, '0.125 in'],
    [Math.PI / 6, '°', 3, '30°'],
    [463.15, '°C', 4, '190 °C'],
    [50, 'Δ°F', 3, '90 °F'],
    [0.12, '%', 3, '12 %'],
    [0, 'mm', 3, '0 mm'],
    [Number.NaN, 'mm', 3, '–'],
    [3.317e9, 'Pa·s', 3, '3.32e9 Pa·s'],
    [1.234e-9, 'm³/s', 3, '1.23e-9 m³/s'],
    [9.9996, 'W', 4, '10 W'],
    [123456, 'W', 3, '123000 W'],
  ])('%d in %s with %d digits is %s', (si, unit, digits, text) => {
    expect(formatQuantity(si, unit, digits)).toBe(text);
  });

  it('rounds to the digits that are asked for', () => {
    const size = fc.double({ min: 1e-9, max: 1e12, noNaN: true });
    fc.assert(
      fc.property(size, fc.integer({ min: 1, max: 12 }), (value, digits) => {
        expect(Math.abs(Number(formatNumber(value, digits)) / value - 1)).toBeLessThanOrEqual(
          0.51 * 10 ** (1 - digits),
        );
      }),
      { seed, numRuns: 1000 },
    );
  });
});
