import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { channelCaseResults } from '../../core/reference/channelCases.ts';

/**
 * Stored solutions of an independent general finite-element package (P2/P1 Taylor-Hood, refinement stated per entry);
 * the limits are those of the comparison itself: flow 1 % Newtonian, 2 % shear-thinning; stream function 1 %;
 * dissipation 2 %; dwell and F 0.02; area 0.03.
 */
const load = (name: string) => JSON.parse(readFileSync(new URL(`flow/${name}.json`, import.meta.url), 'utf8'));

describe.each(['caseA', 'caseB', 'caseD'])('%s', (name) => {
  const { case: kind, entries } = load(name);
  test.each<[number]>(entries.map((_: unknown, k: number) => [k]))(
    'entry %i agrees in every quantity',
    (k) => {
      const [result] = channelCaseResults({ case: kind, entries: [entries[k]] }) ?? [];
      expect(result.rows.length).toBeGreaterThan(3);
      expect(result.rows.filter((row) => !row.pass)).toEqual([]);
    },
    60_000,
  );
});

test('a stored value off by 5 % is noticed', () => {
  const { entries } = load('caseD');
  const wrong = structuredClone(entries[0]);
  wrong.rows[4].Q_m3_per_s *= 1.05;
  const [result] = channelCaseResults({ case: 'D', entries: [wrong] }) ?? [];
  expect(result.rows.filter((row) => !row.pass).map((row) => row.quantity)).toEqual(['flow at 0 of closed, m3/s']);
});

test('a missing input is named', () => {
  const { entries } = load('caseD');
  const broken = structuredClone(entries[0]);
  delete broken.inputs.pitch_m;
  expect(() => channelCaseResults({ case: 'D', entries: [broken] })).toThrow('pitch_m is not a number');
});

test('a file of another case is left to others', () => {
  expect(channelCaseResults({ case: 'C', entries: [] })).toBeNull();
});
