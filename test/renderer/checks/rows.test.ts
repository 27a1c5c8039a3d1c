import { expect, test } from 'vitest';
import type { CheckResult } from '../../../core/checks/types.ts';
import { asText, chosen, errorText, withUnit } from '../../../renderer/checks/rows.ts';

const one = (change: Partial<CheckResult>): CheckResult => ({
  id: 'channel.flow',
  stage: 'channel',
  quantity: 'Flow of a screw',
  unit: 'cm³/s',
  expected: 35.25,
  limit: 1e-4,
  measure: 'relative',
  kind: 'published',
  source: 'a book, table 1',
  got: 35.2502,
  error: 0.0002 / 35.25,
  pass: true,
  fault: null,
  ...change,
});

test('numbers show digits enough to see the error, with their unit', () => {
  expect(withUnit(one({}), 35.2502)).toBe('35.2502\u00A0cm³/s');
  expect(withUnit(one({ unit: '' }), null)).toBe('–');
});

test('an error is a share in per cent or stands in the unit', () => {
  expect(errorText(one({}), 0.012)).toBe('1.2\u00A0%');
  expect(errorText(one({ measure: 'absolute', unit: 'mm' }), 0.05)).toBe('0.05\u00A0mm');
});

test('a choice keeps stage, kind and what failed, in the order of the way through', () => {
  const print = one({ id: 'print.line', stage: 'print', kind: 'exact', pass: false });
  const all = [print, one({})];
  const every = { stage: 'all', kind: 'all', onlyFailed: false };
  expect(chosen(all, every).map(({ id }) => id)).toEqual(['channel.flow', 'print.line']);
  expect(chosen(all, { ...every, onlyFailed: true })).toEqual([print]);
  expect(chosen(all, { ...every, kind: 'published' }).map(({ id }) => id)).toEqual(['channel.flow']);
  expect(chosen(all, { ...every, stage: 'heat' })).toEqual([]);
});

test('the copied table has a line a check, with plain numbers', () => {
  const [heads, line] = asText([one({})]).split('\n');
  expect(heads?.split('\t').length).toBe(line?.split('\t').length);
  expect(line).toContain('\t35.25\t35.2502\t');
});
