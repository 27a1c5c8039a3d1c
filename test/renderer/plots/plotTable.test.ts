import { expect, test } from 'vitest';
import { columnNames, tableText } from '../../../renderer/plots/plotTable.ts';
import { keptRange } from '../../../renderer/plots/plotZoom.ts';

const options = {
  series: [{ label: 'Screw speed' }, { label: 'Comes out' }, { label: 'Age', scale: 't' }],
  axes: [{ label: 'Screw speed, rpm' }, { label: 'Output, mm³/s' }, { label: 'Time, s', scale: 't' }],
};

test('columns are named with the units of their axes', () => {
  expect(columnNames(options)).toEqual(['Screw speed, rpm', 'Comes out, mm³/s', 'Age, s']);
});

test('a line without a name takes that of its axis; without axes names stand alone', () => {
  expect(columnNames({ series: [{}, {}], axes: [{ label: 'z, mm' }, { label: 'Pressure, MPa' }] })).toEqual([
    'z, mm',
    'Pressure, MPa',
  ]);
  expect(columnNames({ series: [{ label: 'a' }, { label: 'b' }] })).toEqual(['a', 'b']);
});

test('the copied data are the plotted numbers, digit for digit, and what is not drawn stays empty', () => {
  const data = [
    [0.1, 0.2 + 0.1, 1e-9],
    [1 / 3, null, Number.NaN],
  ] as const;
  const rows = tableText(['x, mm', 'y\tz, MPa'], data).trimEnd().split('\n');
  expect(rows[0]).toBe('x, mm\ty z, MPa');
  const read = rows.slice(1).map((row) => row.split('\t'));
  expect(read.map(([x]) => Number(x))).toEqual([...data[0]]);
  expect(Number(read[0]?.[1])).toBe(1 / 3);
  expect(read.slice(1).map(([, y]) => y ?? '')).toEqual(['', '']);
});

test.each([
  [
    [2, 4],
    [2, 4],
  ],
  [
    [4, 2],
    [2, 4],
  ],
  [
    [-5, 4],
    [0, 4],
  ],
  [[-1, 11], null],
  [[3, 3], null],
  [[20, 30], null],
] as const)('a wanted range %j is kept inside the whole: %j', (wanted, kept) => {
  expect(keptRange(wanted, [0, 10])).toEqual(kept);
});
