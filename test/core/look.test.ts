import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lookRow } from '../../core/present/lookRow.ts';
import { quantityRow, textRow } from '../../core/present/row.ts';
import { lookNumber, lookQuantity, lookStored, lookText, plainLook } from '../../core/units.ts';

const inch = { system: 'inch', decimal: '.' } as const;
const comma = { system: 'metric', decimal: ',' } as const;

describe('a stored number in a field', () => {
  it.each([
    [25.4, '1'],
    [14, '0.5512'],
    [3.175, '0.125'],
    [0.1, '0.003937'],
    [166, '6.5354'],
    [2000, '78.7402'],
    [0, '0'],
  ])('%d mm is %s in', (mm, text) => {
    expect(lookStored(mm, 'mm', inch)).toBe(text);
    expect(lookStored(mm, 'mm', plainLook)).toBe(String(mm));
  });

  it('is never further from the stored one than any lathe holds', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 3000, noNaN: true }), (mm) => {
        expect(Math.abs(Number(lookStored(mm, 'mm', inch)) * 25.4 - mm)).toBeLessThanOrEqual(0.00128);
      }),
      { seed: 7, numRuns: 300 },
    );
  });

  it('keeps temperatures, pressures and speeds in the units of controllers', () => {
    expect([lookStored(190, '°C', inch), lookStored(12, 'MPa', inch), lookStored(20, 'mm/s', inch)]).toEqual([
      '190',
      '12',
      '20',
    ]);
  });
});

it('a decimal comma stands in numbers and quantities, and in nothing else', () => {
  expect(lookNumber(1234.5, 6, comma)).toBe('1234,5');
  expect(lookNumber(1.5e-7, 3, comma)).toBe('1,5e-7');
  expect(lookQuantity(0.0125, 'mm', 3, comma)).toBe('12,5 mm');
  expect(lookText('0.5 to 2 mm, see version 0.1.0 and file a.b', comma)).toBe(
    '0,5 to 2 mm, see version 0.1.0 and file a.b',
  );
});

describe('a text with lengths', () => {
  it.each([
    ['a number from 0.5 to 2000 mm', 'a number from 0.0197 to 78.74 in'],
    ['at most 13.6 mm', 'at most 0.535 in'],
    ['12.7 mm', '0.500 in'.replace('00', '')],
    ['melt flows at 20 mm/s, 8 mm³/s and 190 °C', 'melt flows at 20 mm/s, 8 mm³/s and 190 °C'],
    ['0.50 … 0.75 mm', '0.0197 … 0.0295 in'],
    ['45 mm²', '0.0698 in²'],
    ['40 µm', '1.57 thou'],
    ['2, 3 and 4 mm', '0.0787, 0.118 and 0.157 in'],
    ['2, 3, 4 mm', '0.0787, 0.118, 0.157 in'],
    ['10 × 12 mm and 10×12 mm', '0.394 × 0.472 in and 0.394×0.472 in'],
    ['3-12 mm, 3–12 mm, -3 mm', '0.118-0.472 in, 0.118–0.472 in, -0.118 in'],
    ['Section 2 to 12 mm', 'Section 2 to 0.472 in'],
    ['zone 3 and 5 mm', 'zone 3 and 0.197 in'],
    ['pieces 1, 2 and 5 mm', 'pieces 1, 2 and 0.197 in'],
    ['the entry 0.5 to 2 mm deep, a section 12 mm long', 'the entry 0.0197 to 0.0787 in deep, a section 0.472 in long'],
    ['3 of 4, 12 mm; M3 × 12 mm', '3 of 4, 0.472 in; M3 × 0.472 in'],
    ['1 mm to 3 mm, then 2.1.3 mm and 1/8 mm', '0.0394 in to 0.118 in, then 2.1.3 mm and 1/8 mm'],
  ])('%j reads %j', (metric, turned) => {
    expect(lookText(metric, inch)).toBe(turned);
    expect(lookText(metric, plainLook)).toBe(metric);
  });
});

it('a presented row is turned with its value, its unit and its text; others only get their sign', () => {
  const words = { id: 'x', label: 'x', help: '' };
  expect(lookRow(quantityRow(words, 0.0127, 'mm'), inch)).toMatchObject({ value: 0.5, unit: 'in', text: '0.5 in' });
  expect(lookRow(quantityRow(words, 0.0127, 'mm'), comma)).toMatchObject({ value: 12.7, unit: 'mm', text: '12,7 mm' });
  expect(lookRow(textRow(words, '1.5 mm, twice'), inch).text).toBe('0.0591 in, twice');
  const pressure = quantityRow(words, 5e6, 'MPa');
  expect(lookRow(pressure, inch)).toEqual(pressure);
  expect(lookRow(pressure, plainLook)).toBe(pressure);
});
