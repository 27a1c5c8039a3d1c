/** Numbers as typed: what is read, and what the refusal says. */

import { expect, test } from 'vitest';
import { plainLook } from '../../../core/index.ts';
import { readNumber } from '../../../renderer/fields/quantity.ts';

const ratio = { key: 'gearRatio', label: 'Gear ratio', unit: 'ratio', help: '' } as const;
const length = { key: 'boreMm', label: 'Bore', unit: 'mm', help: '' } as const;

const said = (text: string, spec: typeof ratio | typeof length): number | string => {
  const read = readNumber(text, spec, [], plainLook);
  return read.ok ? read.value : read.issues.map(({ message }) => message).join(' ');
};

test.each([
  ['5', 5],
  ['5:1', 5],
  ['13,73 : 1', 13.73],
  ['50 %', 0.5],
])('a ratio is read from %s', (text, value) => expect(said(text, ratio)).toBeCloseTo(value, 12));

test('a ratio with a unit is refused without naming units of shares', () => {
  for (const text of ['5 mm', '1:5', '5 x']) expect(said(text, ratio)).toMatch(/bare number/);
});

test('the example beside a ratio that cannot be read has no unit', () => {
  const read = readNumber('NaN', ratio, []);
  expect(read.ok ? '' : read.issues[0]?.remedy).toBe('Write for example "5".');
});

test('an empty field is told apart from text that is no number', () => {
  expect(said(' ', length)).toBe('A number is missing.');
  expect(said('abc', length)).toBe('This does not begin with a number.');
});
