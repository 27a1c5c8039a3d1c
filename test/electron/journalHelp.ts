/** Work in journals whose program is gone, for tests. */

import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import type { JournalEntry } from '../../electron/contract.ts';
import type { Host } from '../../electron/services/host.ts';
import { decodeLines, encodeLine } from '../../electron/services/keep/journalLines.ts';
import type { ProcessMark } from '../../electron/services/keep/processMark.ts';
import type { Scratch } from './keepHelp.ts';

/** A number of a process that is not there: above what Linux gives out. */
export const gonePid = 4_194_305;

/** An entry of a journal. */
export const entry = (text: string, more: Partial<JournalEntry> = {}): JournalEntry => ({
  handle: null,
  name: 'A screw',
  text,
  step: `to ${text}`,
  drafts: {},
  ...more,
});

/** Edits in a window of a program that is then gone: its journals name a process that is not there, or the one given. */
export async function loseWork(
  { host, at }: Scratch,
  write: (services: Host) => Promise<void>,
  by: Partial<ProcessMark> = { pid: gonePid },
): Promise<void> {
  const services = host();
  await write(services);
  await services.close();
  for (const name of readdirSync(at('state/journals'))) {
    const path = at(`state/journals/${name}`);
    const { lines } = decodeLines(readFileSync(path));
    const dead = lines.map((line) => (line.kind === 'writer' ? { ...line, by: { ...line.by, ...by } } : line));
    writeFileSync(path, Buffer.concat(dead.map(encodeLine)));
  }
}
