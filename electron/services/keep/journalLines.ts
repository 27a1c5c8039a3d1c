/** Lines of a journal: each with its length and checksum, so that a torn or spoilt one is known for what it is. */

import { z } from 'zod';
import { fileVersion, journalEntry } from '../../safekeeping.ts';
import { processMark } from './processMark.ts';
import { versionOf } from './version.ts';

const at = z.iso.datetime();

/** One line. */
const journalLine = z.discriminatedUnion('kind', [
  /** who writes from here on */
  z.object({ kind: z.literal('writer'), at, by: processMark }),
  /** an edit; `content` of its text, `path` of the project's file, `base` the version of it that the window knew */
  journalEntry.extend({
    kind: z.literal('edit'),
    at,
    content: fileVersion,
    path: z.string().max(4096).nullable(),
    base: fileVersion.nullable(),
    handle: z.null(),
  }),
  /** the file was written, with these bytes and this content; `later` edits had come in while it was */
  z.object({
    kind: z.literal('saved'),
    at,
    version: fileVersion,
    content: fileVersion,
    later: z.number().int().nonnegative(),
  }),
  /** what lines said that were taken out to keep the journal short */
  z.object({
    kind: z.literal('digest'),
    at,
    edits: z.number().int().nonnegative(),
    steps: z
      .array(z.object({ step: z.string().max(200), content: fileVersion }))
      .max(100)
      .readonly(),
    base: fileVersion.nullable(),
  }),
]);

/** See `journalLine`. */
export type JournalLine = z.infer<typeof journalLine>;

/** A line as it is written: bytes of its JSON, the first 16 digits of their SHA-256, the JSON. */
export function encodeLine(line: JournalLine): Buffer {
  const json = JSON.stringify(line);
  return Buffer.from(`${Buffer.byteLength(json)} ${versionOf(json).slice(0, 16)} ${json}\n`);
}

/** Longest start of a line before its JSON, bytes. */
const longestHead = 32;

function decodeLine(bytes: Buffer): JournalLine | null {
  const head = /^(\d{1,9}) ([0-9a-f]{16}) /.exec(bytes.toString('latin1', 0, longestHead));
  if (!head) return null;
  const json = bytes.subarray(head[0].length);
  if (json.length !== Number(head[1]) || !versionOf(json).startsWith(head[2] ?? '?')) return null;
  try {
    return journalLine.parse(JSON.parse(json.toString('utf8')));
  } catch {
    return null;
  }
}

/** Every whole line of a journal in order; `spoilt` counts those that are torn or damaged. */
export function decodeLines(bytes: Buffer): { readonly lines: readonly JournalLine[]; readonly spoilt: number } {
  const lines: JournalLine[] = [];
  let spoilt = 0;
  for (let from = 0; from < bytes.length; ) {
    const newline = bytes.indexOf(10, from);
    const to = newline < 0 ? bytes.length : newline;
    const line = to > from ? decodeLine(bytes.subarray(from, to)) : null;
    if (line) lines.push(line);
    else if (to > from) spoilt += 1;
    from = to + 1;
  }
  return { lines, spoilt };
}
