import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { main } from '../../electron/cli/main.ts';
import { referenceTable, type SolvedEntry, worstRows } from '../../electron/cli/referenceTable.ts';

let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'augerwright-reference-'));
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface CaseFile {
  case: string;
  count: number;
  entries: { inputs: Record<string, unknown>; rows: Record<string, number>[] }[];
}

/** First entry of the stored helical cases, with something changed. */
function changed(name: string, change: (file: CaseFile) => void): string {
  const file = JSON.parse(readFileSync('test/reference/flow/caseD.json', 'utf8')) as CaseFile;
  file.entries = file.entries.slice(0, 1);
  change(file);
  const path = join(folder, name);
  writeFileSync(path, JSON.stringify(file));
  return path;
}

async function run(...words: string[]) {
  const results: string[] = [];
  const problems: string[] = [];
  const output = {
    result: (text: string) => void results.push(text),
    problem: (text: string) => void problems.push(text),
  };
  return { status: await main(['reference', ...words], output), results: results.join('\n'), problems };
}

test('an entry that agrees exits with 0 and lists every row', async () => {
  const { status, results } = await run(
    '--json',
    changed('right.json', () => undefined),
  );
  expect(status).toBe(0);
  const { entries, failed } = JSON.parse(results);
  expect(failed).toBe(0);
  expect(entries[0].rows.length).toBeGreaterThan(4);
});

test('other parameters in the same format are solved too: twice the size and speed is eight times twice the flow', async () => {
  const path = changed('scaled.json', (file) => {
    for (const key of ['D_barrel_m', 'D_root_m', 'pitch_m', 'flight_axial_width_m', 'N_rev_per_s']) {
      file.entries[0].inputs[key] = 2 * Number(file.entries[0].inputs[key]);
    }
    for (const row of file.entries[0].rows) {
      // The gradient stays: the stress doubles with the speed, and so does the length over which it acts.
      row.Q_m3_per_s *= 16;
    }
  });
  expect((await run(path)).status).toBe(0);
});

test('an entry that disagrees exits with 3 and is marked', async () => {
  const path = changed('wrong.json', (file) => {
    for (const row of file.entries[0].rows) row.Q_m3_per_s *= 1.1;
  });
  const { status, results } = await run(path);
  expect(status).toBe(3);
  expect(results).toMatch(/ NO\b/);
});

test.each([
  ['another case', (file: CaseFile) => void Object.assign(file, { case: 'Z' }), /case "Z".*A, B, C, D/],
  ['no entries', (file: CaseFile) => void Object.assign(file, { entries: [] }), /no entries/],
  ['a number missing', (file: CaseFile) => void delete file.entries[0].inputs.pitch_m, /entries\[0\].*pitch_m/],
])('%s exits with 2 and says so', async (_name, change, message) => {
  const { status, problems } = await run(changed('bad.json', change));
  expect(status).toBe(2);
  expect(problems.join('\n')).toMatch(message);
});

test('the worst row of a quantity is the one with the largest error in units of its limit', () => {
  const row = { quantity: 'flow at 0.5 of closed', expected: 1, got: 1, error: 0.01, limit: 0.02, pass: true };
  const entry = (index: number, ...rows: SolvedEntry['rows']): SolvedEntry => ({ file: 'f', kind: 'A', index, rows });
  const lost = { ...row, quantity: 'flow at 0 of closed', error: Number.NaN, pass: false };
  const worst = worstRows([entry(0, row), entry(1, { ...row, error: -0.015 }), entry(2, { ...row, error: 0.012 })]);
  expect(worst).toMatchObject([{ quantity: 'flow', index: 1, count: 3, passed: 3 }]);
  expect(worstRows([entry(0, row), entry(1, lost)])).toMatchObject([{ index: 1, count: 2, passed: 1 }]);
  expect(referenceTable([entry(0, row, lost)])).toMatch(/1 of 2 within their limits$/);
});
