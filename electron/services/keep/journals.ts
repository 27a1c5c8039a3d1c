/** Work kept from edit to edit, one journal a window. */

import { join } from 'node:path';
import { fail, type Issue, ok, type Result } from '../../../core/index.ts';
import type { JournalEntry } from '../../safekeeping.ts';
import { errorCode } from '../fileIssues.ts';
import { type Disk, realDisk } from './disk.ts';
import { createInTurn, type InTurn } from './inTurn.ts';
import { createJournalFile, type JournalFile } from './journalFile.ts';
import type { ProcessMark } from './processMark.ts';
import { contentOf, versionOf } from './version.ts';

/** Journals by name. */
export interface Journals {
  /** Adds an entry. It never fails twice for the same cause, so that a window tells its person once. */
  write(windowId: string, journal: string, entry: KeptEntry): Promise<Result<null>>;
  /** A window's file is about to be written with a text; what is answered is called when it was. */
  saving(windowId: string, text: string): () => void;
  /** Removes a journal: its work is saved or given up. */
  remove(journal: string): Promise<void>;
  /** A window was opened anew, and goes on with this journal of its own. */
  belongs(journal: string, windowId: string): void;
  /** The window that writes a journal in this process; null: none does. */
  writerOf(journal: string): string | null;
  /** Stops writing, and keeps what there is. */
  close(): Promise<void>;
  readonly folder: string;
}

/** An entry, its file by path and version. */
interface KeptEntry extends JournalEntry {
  readonly path: string | null;
  readonly base: string | null;
}

/** Where and by whom journals are written. */
export interface JournalsMeans {
  readonly folder: string;
  readonly mark: ProcessMark;
  readonly disk?: Disk;
  readonly longest?: number;
}

/** Time between two signs that the window of a journal is there, ms. */
export const journalBeatMs = 15_000;

/** Path of a journal. */
export const journalPath = (folder: string, journal: string): string => join(folder, `${journal}.journal`);

interface Writing {
  readonly file: JournalFile;
  windowId: string;
  /** Number of entries asked for so far. */
  asked: number;
  /** Cause of the last failure that was told; null while all is well. */
  told: string | null;
}

const now = (): string => new Date().toISOString();

/** Journals in a folder, none being written yet. */
export function createJournals(means: JournalsMeans): Journals {
  const { folder, mark, disk = realDisk } = means;
  const writing = new Map<string, Writing>();
  const inTurn = createInTurn();
  const touchAll = () => [...writing].map(([journal, { file }]) => inTurn(journal, () => file.touch()));
  const beat = setInterval(() => void Promise.all(touchAll()), journalBeatMs);
  beat.unref();
  const writingOf = (journal: string, windowId: string): Writing => {
    const longest = means.longest === undefined ? {} : { longest: means.longest };
    const file = () => createJournalFile({ path: journalPath(folder, journal), mark, disk, ...longest });
    const known = writing.get(journal) ?? { file: file(), windowId, asked: 0, told: null };
    known.windowId = windowId;
    writing.set(journal, known);
    return known;
  };
  return {
    folder,
    write: (windowId, journal, entry) => {
      writingOf(journal, windowId).asked += 1;
      return inTurn(journal, () => write(writingOf(journal, windowId), entry, means));
    },
    saving: (windowId, text) => noteSave(windowId, text, writing, inTurn),
    remove: (journal) =>
      inTurn(journal, async () => {
        await writing.get(journal)?.file.close();
        writing.delete(journal);
        await disk.unlink(journalPath(folder, journal)).catch(() => undefined);
      }),
    belongs: (journal, windowId) => void writingOf(journal, windowId),
    writerOf: (journal) => writing.get(journal)?.windowId ?? null,
    async close() {
      clearInterval(beat);
      await Promise.all([...writing].map(([journal, { file }]) => inTurn(journal, () => file.close())));
      writing.clear();
    },
  };
}

/** Counts the entries so far; what is answered writes into the window's journals that its file was saved. */
function noteSave(windowId: string, text: string, writing: ReadonlyMap<string, Writing>, inTurn: InTurn): () => void {
  const before = new Map([...writing].map(([journal, { asked }]) => [journal, asked]));
  return () => {
    for (const [journal, { file, asked, windowId: by }] of writing) {
      if (by !== windowId) continue;
      const later = asked - (before.get(journal) ?? 0);
      const line = { kind: 'saved', at: now(), version: versionOf(text), content: contentOf(text), later } as const;
      // Nothing is lost where this fails: what a file holds already is not offered for recovery.
      void inTurn(journal, () => file.add(line)).catch(() => undefined);
    }
  };
}

async function write(to: Writing, entry: KeptEntry, { folder }: JournalsMeans): Promise<Result<null>> {
  try {
    await to.file.add({ ...entry, content: contentOf(entry.text), handle: null, kind: 'edit', at: now() });
    to.told = null;
    return ok(null);
  } catch (error) {
    const cause = errorCode(error) || String(error);
    const isNews = to.told !== cause;
    to.told = cause;
    return isNews ? fail(notKept(folder, cause)) : ok(null);
  }
}

const causes: Readonly<Record<string, string>> = {
  EACCES: 'you may not write there',
  EPERM: 'the system does not permit it',
  EROFS: 'the drive is read-only',
  ENOSPC: 'the drive is full',
  EDQUOT: 'your share of the drive is used up',
  EIO: 'the drive failed to take the bytes',
  EMFILE: 'too many files are open',
  ENFILE: 'too many files are open',
  ENOTDIR: 'a part of the path is a file, not a folder',
};

const notKept = (folder: string, cause: string): Issue => ({
  path: [folder],
  code: 'journal-unwritable',
  message: `Edits are not being kept: ${causes[cause] ?? cause}. You can work on, but a crash would lose what is not saved.`,
  remedy: 'Save often. Free some space or change the permissions of that folder; edits are kept again from then on.',
});
