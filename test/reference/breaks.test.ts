import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { checks } from '../../core/checks/checks.ts';
import { checkStages } from '../../core/checks/types.ts';
import { breaks } from './breaks/index.ts';

/** Pieces between the places where a text stands: one more than it has places. */
const places = (file: string, text: string) => readFileSync(file, 'utf8').split(text).length - 1;

const twice = (names: readonly string[]) => names.filter((name, i) => names.indexOf(name) !== i);

test('every check has a break, and every break a check', () => {
  const broken = new Set(breaks.map(({ check }) => check));
  const known = new Set(checks.map(({ id }) => id));
  expect([...known].filter((id) => !broken.has(id))).toEqual([]);
  expect([...broken].filter((id) => !known.has(id))).toEqual([]);
});

test('what a break changes stands exactly once in its file of core, outside the checks', () => {
  const lost = breaks.filter(({ file, from, to }) => places(file, from) !== 1 || from === to);
  expect(lost).toEqual([]);
  // a changed check would fail for nothing that the prediction does
  expect(breaks.filter(({ file }) => !/^core\/(?!checks\/)/.test(file))).toEqual([]);
});

test('no check is named twice, and each is named after its stage', () => {
  expect(twice(checks.map(({ id }) => id))).toEqual([]);
  expect(checks.filter(({ id, stage }) => !id.startsWith(`${stage}.`)).map(({ id }) => id)).toEqual([]);
});

test('checks cover every stage, and most come from outside', () => {
  expect(checkStages.filter((stage) => !checks.some((check) => check.stage === stage))).toEqual([]);
  expect(checks.length).toBeGreaterThanOrEqual(60);
  const outside = checks.filter(({ kind }) => kind === 'published' || kind === 'independent');
  expect(outside.length).toBeGreaterThanOrEqual(40);
});
