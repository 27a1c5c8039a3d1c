/**
 * Edits and saves one file as fast as it can until it is killed, and tells what it is about to do and what it has done.
 * Words: the file, the folder of the program's own, the first number, bytes of padding.
 */

import { writeSync } from 'node:fs';
import { createHost } from '../../electron/services/host.ts';

const [path = '', stateFolder = '', first = '0', pad = '0'] = process.argv.slice(2);
const journal = 'c'.repeat(32);

/** Straight into the pipe: what was said is heard even where the next instant never comes. */
const say = (word: string, n: number) => writeSync(1, `${word} ${n}\n`);

const host = createHost({
  examplesFolder: '.',
  materialsFolder: '.',
  startPath: null,
  recentListPath: null,
  stateFolder,
});
const opened = await host.open('w', path);
if (!opened.ok || opened.value.handle === null) throw new Error(JSON.stringify(opened));
if (opened.value.holder !== null) throw new Error(`held: ${JSON.stringify(opened.value.holder)}`);
const { handle } = opened.value;
let { version } = opened.value;
const api = host.apiFor('w');
for (let n = Number(first); ; n += 1) {
  const text = JSON.stringify({ n, pad: 'x'.repeat(Number(pad)), end: n });
  say('edits', n);
  const entry = { handle, name: 'mine', text, step: `step ${n}`, drafts: {} };
  const kept = await api.writeJournal({ journal, entry });
  if (!kept.ok) throw new Error(JSON.stringify(kept));
  say('kept', n);
  if (n % 2 !== 0) continue;
  say('saves', n);
  const saved = await api.saveProject({ handle, text, version, evenIfChanged: false });
  if (!saved.ok) throw new Error(JSON.stringify(saved));
  version = saved.value.version;
  say('saved', n);
}
