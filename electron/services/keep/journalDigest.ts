/** What a journal's lines come to: the last state of the work, and what led to it since the file was saved. */

import type { JournalLine } from './journalLines.ts';
import type { ProcessMark } from './processMark.ts';
import { versionOf } from './version.ts';

/** Names of edits that are kept, latest ones. */
const mostSteps = 100;

type Edit = Extract<JournalLine, { kind: 'edit' }>;
type Saved = Extract<JournalLine, { kind: 'saved' }>;

/** See the head of this file. */
export interface JournalDigest {
  readonly writer: ProcessMark | null;
  /** The last state; null where no edit was read. */
  readonly last: Edit | null;
  /** Number of edits since the save. */
  readonly edits: number;
  /** The latest hundred of them, oldest first: name, and content of the project after it. */
  readonly steps: readonly { readonly step: string; readonly content: string }[];
  /** Version of the file that the edits since the save began from; null where it had none. */
  readonly base: string | null;
}

/** Goes through the lines of a journal in order. */
export function digest(lines: readonly JournalLine[]): JournalDigest {
  let now: JournalDigest = { writer: null, last: null, edits: 0, steps: [], base: null };
  for (const line of lines) {
    if (line.kind === 'writer') now = { ...now, writer: line.by };
    else if (line.kind === 'digest') now = { ...now, edits: line.edits, steps: line.steps, base: line.base };
    else if (line.kind === 'saved') now = afterSave(now, line);
    else {
      const begun = isOtherWork(now, line) ? { ...now, last: null, edits: 0, steps: [], base: line.base } : now;
      const edited = begun.last === null ? versionOf(line.text) !== begun.base : line.content !== begun.last.content;
      now = { ...(edited ? afterEdit(begun, line) : begun), last: line };
    }
  }
  return now;
}

/** Whether a line tells of another file than those before it, or of the same file read anew. */
function isOtherWork({ last, edits, base }: JournalDigest, line: Edit): boolean {
  if (last !== null && last.path !== line.path) return true;
  return line.base !== null && line.base !== base && (last !== null || edits === 0);
}

const afterEdit = (now: JournalDigest, { step, content }: Edit): JournalDigest => ({
  ...now,
  edits: now.edits + 1,
  steps: [...now.steps, { step, content }].slice(-mostSteps),
});

/**
 * A save takes away the edits up to the one that it wrote: later ones came in while it was at work. Where it wrote none
 * of them, as when the last was not yet kept, it takes away all that had come in before it.
 */
function afterSave(now: JournalDigest, { version, content, later }: Saved): JournalDigest {
  const at = now.steps.findLastIndex((step) => step.content === content);
  const left = at < 0 ? Math.min(later, now.edits) : now.steps.length - 1 - at;
  const steps = left === 0 ? [] : now.steps.slice(-left);
  return { ...now, edits: left, steps, base: version };
}

/** Lines that come to the same: a digest of the edits before the last state, and that state. */
export function shortened({ writer, last, edits, steps, base }: JournalDigest, at: string): readonly JournalLine[] {
  const writerLine: readonly JournalLine[] = writer ? [{ kind: 'writer', at, by: writer }] : [];
  if (!last) return writerLine;
  const lastIsStep = steps.at(-1)?.content === last.content;
  const before = lastIsStep ? { edits: edits - 1, steps: steps.slice(0, -1) } : { edits, steps };
  return [...writerLine, { kind: 'digest', at, base, ...before }, { ...last, base }];
}
