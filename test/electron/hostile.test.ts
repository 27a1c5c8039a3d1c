/**
 * What reaches the host from hands that mean no good: seeded cases over calls, command lines, addresses, requests and
 * small files, and the cases that once broke one. `npm run fuzz` runs many more.
 */

import { mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ok } from '../../core/index.ts';
import { readWords } from '../../electron/cli/options.ts';
import { readAxis } from '../../electron/cli/sweepAxes.ts';
import type { HostApi } from '../../electron/contract.ts';
import { answer } from '../../electron/services/answer.ts';
import { readTextFile } from '../../electron/services/textFile.ts';
import { assertTarget, busyMs } from '../helpers/hostile/assertTarget.ts';
import { hostTargets } from '../helpers/hostile/hostTargets.ts';
import { closeRaw } from '../helpers/hostile/rawRequest.ts';
import { checkIssues, soundly } from '../helpers/hostile/sound.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'augerwright-hostile-'));
});
afterAll(async () => {
  rmSync(folder, { recursive: true, force: true });
  await closeRaw();
});

/** Cases of each reader. */
const cases: Readonly<Record<string, number>> = {
  'call from the window': 250,
  'command line': 400,
  address: 400,
  'list of recent files': 40,
  'file on disk': 30,
  journal: 60,
  'request to the loopback host': 60,
};

test.each(hostTargets.map((target) => [target.name, target] as const))(
  '%s: refused with reasons, or sound',
  async (name, target) => {
    await assertTarget(target, cases[name], 1);
  },
);

describe('files on disk', () => {
  /** A file of a size, empty of content: nothing of it may be read. */
  const large = (bytes: number): string => {
    const path = join(folder, `large-${bytes}`);
    writeFileSync(path, '');
    truncateSync(path, bytes);
    return path;
  };

  test.each([50e6, 5e9])('one of %d bytes is refused before it is read', async (bytes) => {
    const before = process.memoryUsage().rss;
    const result = await readTextFile(large(bytes));
    expect(result).toMatchObject({ ok: false, issues: [{ code: 'file-too-large', value: `${bytes} bytes` }] });
    expect(process.memoryUsage().rss - before).toBeLessThan(40e6);
  });

  test.each([
    ['utf16le', '\uFEFF{"format":"augerwright-project"}'],
    ['latin1', '{"name":"Düse"}'],
  ] as const)('one in %s is refused for what it is', async (encoding, text) => {
    const path = join(folder, encoding);
    writeFileSync(path, Buffer.from(text, encoding));
    expect(await readTextFile(path)).toMatchObject({ ok: false, issues: [{ code: 'file-not-text' }] });
  });

  test('a byte order mark is taken off', async () => {
    const path = join(folder, 'marked');
    writeFileSync(path, '\uFEFF{}');
    expect(await readTextFile(path)).toEqual(ok('{}'));
  });

  test('a name with a zero in it is refused, not thrown', async () => {
    soundly(await readTextFile(join(folder, 'a\0b.json')));
  });
});

test('a menu of a million groups is refused, not thrown', async () => {
  const api = { setMenu: async () => ok(null) } as unknown as HostApi;
  const groups = Array.from({ length: 4e5 }, () => 0);
  let result: Awaited<ReturnType<typeof answer>> = ok(null);
  const ms = await busyMs(async () => {
    result = await answer(api, 'setMenu', { groups });
  });
  expect(ms).toBeLessThan(2000);
  expect(result.ok).toBe(false);
  if (!result.ok) checkIssues(result.issues);
});

test('a word of a command line that is as long as a book is not said in full', () => {
  const long = 'x'.repeat(1e5);
  const shape = { usage: 'npm run -s x', about: [], flags: [], values: ['to'], words: [0, 1] } as const;
  for (const given of [[`--${long}`], ['--to', long, '--to', long]])
    expect(soundly(readWords(shape, given))).toBeNull();
  for (const axis of [`${long}=1:2:3`, `a=${long}:2:3`, long]) expect(soundly(readAxis(axis))).toBeNull();
});
