import { execFile } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { checks } from '../../../core/checks/checks.ts';
import { breaks } from '../breaks/index.ts';
import type { Break } from '../breaks/types.ts';

interface Ran {
  readonly id: string;
  readonly got: number | null;
  readonly pass: boolean;
  readonly fault: string | null;
}

const run = promisify(execFile);
/** Below the project, so that a copy of core finds its packages. */
const outside = 'test/.out';
let folder: string;
/** Copies of core that no break is in at the moment. */
const free: string[] = [];

beforeAll(() => {
  mkdirSync(outside, { recursive: true });
  folder = mkdtempSync(join(outside, 'breaks-'));
  // what core's own settings build on
  cpSync('tsconfig.json', join(folder, 'tsconfig.json'));
  for (const name of ['one', 'other']) {
    cpSync('core', join(folder, name), { recursive: true });
    free.push(join(folder, name));
  }
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Checks run in a process of their own, on a copy of core. */
async function ran(copy: string, ids: readonly string[]): Promise<readonly Ran[]> {
  const words = ['--import', './test/helpers/nativeCore.mjs', 'test/helpers/runChecks.mjs', copy, ...ids];
  const { stdout } = await run(process.execPath, words, { maxBuffer: 1e7 });
  return stdout
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Ran);
}

/** The check, run on a copy of core with the break in it. */
async function broken({ check, file, from, to }: Break): Promise<Ran> {
  const copy = free.pop();
  if (copy === undefined) throw new Error('More breaks at a time than there are copies of core.');
  const path = file.replace(/^core/, copy);
  const sound = readFileSync(path, 'utf8');
  try {
    expect(sound.split(from)).toHaveLength(2);
    writeFileSync(
      path,
      sound.replace(from, () => to),
    );
    const [result] = await ran(copy, [check]);
    return result;
  } finally {
    writeFileSync(path, sound);
    free.push(copy);
  }
}

test('every check passes on an unbroken copy', { timeout: 900_000 }, async () => {
  const results = await ran(
    free[0],
    checks.map(({ id }) => id),
  );
  expect(results).toHaveLength(checks.length);
  expect(results.filter(({ pass }) => !pass)).toEqual([]);
});

describe('with its formula broken', () => {
  // two processes at a time, as there are copies
  const pairs = breaks.flatMap((one, i) => (i % 2 === 0 ? [[one, breaks[i + 1]].filter(Boolean)] : []));
  test.each(pairs.map((pair) => [pair.map(({ check }) => check).join(' and '), pair] as const))(
    '%s: the check notices',
    { timeout: 600_000 },
    async (_, pair) => {
      const results = await Promise.all(pair.map(broken));
      expect(results.filter(({ pass }) => pass)).toEqual([]);
    },
  );
});
