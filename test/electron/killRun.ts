/** Kills a program while it edits and saves, and checks what is left. */

import { spawn } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { expect } from 'vitest';
import { type Scratch, valueIn } from './keepHelp.ts';

const journal = 'c'.repeat(32);
const outFolder = resolve(import.meta.dirname, '../.out');
let built: Promise<string> | null = null;

/** The services need no more of core than these modules; what lacks would stop the bundling. */
const needed = ['result', 'project/jsonScan'].map((name) => resolve(import.meta.dirname, `../../core/${name}.ts`));
const door = '\0part-of-core';
const partOfCore = {
  name: 'part-of-core',
  resolveId: (id: string) => (id.endsWith('/core/index.ts') ? door : null),
  load: (id: string) =>
    id === door ? needed.map((path) => `export * from ${JSON.stringify(path)};`).join('\n') : null,
};

/** The program that is killed, in one file: it starts in a tenth of the time. */
async function buildChild(): Promise<string> {
  const { rolldown } = await import('rolldown');
  const bundle = await rolldown({
    input: join(import.meta.dirname, 'killChild.ts'),
    platform: 'node',
    plugins: [partOfCore],
    treeshake: { moduleSideEffects: false },
  });
  const file = join(outFolder, `killChild-${process.pid}.mjs`);
  await bundle.write({ file, format: 'esm' });
  process.once('exit', () => rmSync(file, { force: true }));
  return file;
}

/** The last number that the program said with each word before it was killed. */
export type Heard = Readonly<Record<'edits' | 'kept' | 'saves' | 'saved', number>>;

/** Lets the program run, and kills it so many ms after its first save. */
async function killed(path: string, state: string, first: number, pad: number, afterMs: number): Promise<Heard> {
  built ??= buildChild();
  const running = spawn(process.execPath, [await built, path, state, String(first), String(pad)]);
  let [out, faults] = ['', ''];
  running.stderr.on('data', (part) => (faults += part));
  const ended = new Promise<void>((done) => running.once('close', () => done()));
  await new Promise<void>((ready, failed) => {
    running.stdout.on('data', (part) => {
      out += part;
      if (out.includes('saved')) ready();
    });
    running.once('exit', () => failed(new Error(faults)));
  });
  await wait(afterMs);
  running.kill('SIGKILL');
  await ended;
  const last = (word: string) => Number([...out.matchAll(new RegExp(`^${word} (\\d+)$`, 'gm'))].at(-1)?.[1] ?? -1);
  return { edits: last('edits'), kept: last('kept'), saves: last('saves'), saved: last('saved') };
}

const numberIn = (text: string): number => {
  const { n, end } = JSON.parse(text) as { n: number; end: number };
  expect(end).toBe(n);
  return n;
};

/**
 * One kill. Holds after it: the file is whole, and the last that was saved or the one that was on its way; its lock is
 * no hindrance; nothing lies beside it; every edit that was told to be kept is there, or the file has it.
 * @returns what the program had said
 */
export async function surviveKill(place: Scratch, first: number, pad: number, afterMs: number): Promise<Heard> {
  const path = place.at('mine.json');
  if (!place.names().includes('mine.json')) place.put('mine.json', JSON.stringify({ n: 0, end: 0 }));
  const heard = await killed(path, place.at('state'), first, pad, afterMs);
  const host = place.host();
  const opened = valueIn(await host.open('w', path));
  expect(opened.holder).toBeNull();
  const onDrive = numberIn(opened.text);
  expect([heard.saved, heard.saves]).toContain(onDrive);
  expect(place.names()).toEqual(expect.arrayContaining(['.mine.json.lock', 'mine.json']));
  expect(place.names().filter((name) => !/^(\.mine\.json\.(lock|previous)|mine\.json)$/.test(name))).toEqual([]);
  const api = host.apiFor('w');
  const found = valueIn(await api.listRecoveries({ journal: 'd'.repeat(32) }));
  if (found.length === 0) {
    // nothing to recover: the file has the last edit
    expect(onDrive).toBeGreaterThanOrEqual(heard.kept);
  } else {
    const work = valueIn(await api.readRecovery({ id: journal }));
    expect([heard.kept, heard.edits]).toContain(numberIn(work.text));
    expect(work).toMatchObject({ fileChanged: false, holder: null });
    // the save may be in place while its note in the journal is not: then its edits still count
    expect(work.edits).toBeLessThanOrEqual(heard.edits - heard.saved + 3);
    valueIn(await api.dropRecovery({ id: journal }));
  }
  await host.close();
  return heard;
}
