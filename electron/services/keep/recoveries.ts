/** Finds work in journals whose windows are gone. */

import { readdir } from 'node:fs/promises';
import { basename } from 'node:path';
import { fail, type Issue, ok, type Result } from '../../../core/index.ts';
import { journalId, type RecoveredWork, type Recovery } from '../../safekeeping.ts';
import type { FileTable } from '../fileTable.ts';
import { type ReadText, readVersionedText } from '../textFile.ts';
import type { Disk } from './disk.ts';
import type { JournalDigest } from './journalDigest.ts';
import { readJournal } from './journalFile.ts';
import { type Journals, journalBeatMs, journalPath } from './journals.ts';
import type { Locks } from './locks.ts';
import { type ProcessMark, stateOf } from './processMark.ts';
import { contentOf } from './version.ts';
import type { VersionsByWindow } from './versionsByWindow.ts';
import type { Windows } from './windows.ts';

/** Recoveries by journal. */
export interface Recoveries {
  /** Newest first; the caller's own journal, left from before its page was loaded anew, is one of them. */
  list(windowId: string, ownJournal: string): Promise<Result<readonly Recovery[]>>;
  read(windowId: string, id: string): Promise<Result<RecoveredWork>>;
  drop(windowId: string, id: string): Promise<Result<null>>;
}

/** What finding needs. */
export interface RecoveryMeans {
  readonly journals: Journals;
  readonly windows: Windows;
  readonly locks: Locks;
  readonly table: FileTable;
  readonly mark: ProcessMark;
  readonly disk: Disk;
  /** Versions of files as last read by a window. */
  readonly known: VersionsByWindow;
}

/** Silence after which a journal is taken for left behind where its program cannot be asked, ms. */
const silentAfterMs = 6 * journalBeatMs;
/** Age at which a journal is removed of which nothing can be read, ms. */
const spoiltAfterMs = 30 * 24 * 3_600_000;

/** Recoveries from the journals' folder. */
export function createRecoveries(means: RecoveryMeans): Recoveries {
  const isOthers = async (windowId: string, id: string, found: JournalDigest) =>
    means.journals.writerOf(id) !== windowId && (await isLive(id, found, means));
  return {
    async list(windowId, ownJournal) {
      const found: Recovery[] = [];
      for (const id of await idsIn(means.journals.folder)) {
        const journal = await readJournal(journalPath(means.journals.folder, id), means.disk).catch(() => null);
        if (!journal || (id !== ownJournal && (await isOthers(windowId, id, journal)))) continue;
        if (await isWorth(id, journal, means)) found.push(recovery(id, journal));
      }
      means.journals.belongs(ownJournal, windowId);
      return ok(found.sort((a, b) => b.at.localeCompare(a.at)));
    },
    async read(windowId, id) {
      const journal = await readJournal(journalPath(means.journals.folder, id), means.disk).catch(() => null);
      if (!journal) return fail(recoveryUnknown);
      if (!journal.last) return fail(spoilt(journalPath(means.journals.folder, id)));
      return (await isOthers(windowId, id, journal))
        ? fail(recoveryInUse)
        : ok(await recovered(windowId, id, journal, means));
    },
    async drop(windowId, id) {
      const journal = await readJournal(journalPath(means.journals.folder, id), means.disk).catch(() => null);
      if (journal && (await isOthers(windowId, id, journal))) return fail(recoveryInUse);
      await means.journals.remove(id);
      return ok(null);
    },
  };
}

async function idsIn(folder: string): Promise<readonly string[]> {
  const names = await readdir(folder).catch(() => []);
  return names
    .filter((name) => name.endsWith('.journal'))
    .map((name) => name.slice(0, -'.journal'.length))
    .filter(isId);
}

const isId = (name: string): boolean => journalId.safeParse(name).success;

/** Whether a window that is there writes this journal. */
async function isLive(id: string, { writer }: JournalDigest, means: RecoveryMeans): Promise<boolean> {
  const windowId = means.journals.writerOf(id);
  if (windowId !== null) return means.windows.isThere(windowId) === true;
  if (writer === null || writer.instance === means.mark.instance) return false;
  const state = stateOf(writer);
  if (state === 'running' || state === 'gone') return state === 'running';
  return (await ageOf(id, means)) < silentAfterMs;
}

async function ageOf(id: string, { journals, disk }: RecoveryMeans): Promise<number> {
  const facts = await disk.stat(journalPath(journals.folder, id)).catch(() => null);
  return facts ? Date.now() - Number(facts.mtimeMs) : 0;
}

/** Whether a journal holds what its file does not. One that does not is removed. */
async function isWorth(
  id: string,
  journal: JournalDigest & { spoilt: number },
  means: RecoveryMeans,
): Promise<boolean> {
  const { last, edits } = journal;
  if (last === null) {
    // Something may yet be read from it by hand.
    if (journal.spoilt > 0 && (await ageOf(id, means)) < spoiltAfterMs) return false;
  } else {
    if (Object.keys(last.drafts).length > 0) return true;
    const file = edits > 0 ? await fileOf(last.path) : null;
    if (edits > 0 && (file === null || contentOf(file.text) !== last.content)) return true;
  }
  await means.journals.remove(id);
  return false;
}

async function fileOf(path: string | null): Promise<ReadText | null> {
  const read = path === null ? null : await readVersionedText(path);
  return read?.ok ? read.value : null;
}

function recovery(id: string, { last, edits }: JournalDigest): Recovery {
  return { id, name: last?.name ?? '', path: last?.path ?? null, at: last?.at ?? '', edits };
}

const hasContent = ({ steps }: JournalDigest, content: string): boolean =>
  steps.some((step) => step.content === content);

async function recovered(
  windowId: string,
  id: string,
  journal: JournalDigest,
  means: RecoveryMeans,
): Promise<RecoveredWork> {
  const { last, steps, base } = journal;
  const path = last?.path ?? null;
  const file = await fileOf(path);
  const fileVersion = file?.version ?? null;
  const isOurs = file === null || file.version === base || hasContent(journal, contentOf(file.text));
  const common = {
    ...recovery(id, journal),
    name: path === null ? (last?.name ?? '') : basename(path),
    text: last?.text ?? '',
    drafts: last?.drafts ?? {},
    steps: steps.map(({ step }) => step),
    fileText: file?.text ?? null,
    fileVersion,
    fileChanged: !isOurs,
  };
  if (path === null || fileVersion === null) return { ...common, handle: null, holder: null };
  if (means.known.get(windowId, path) === null) means.known.set(windowId, path, fileVersion);
  return { ...common, handle: means.table.admit(path), holder: await means.locks.take(windowId, path) };
}

/** There is no such journal any more. */
export const recoveryUnknown: Issue = {
  path: [],
  code: 'recovery-unknown',
  message: 'This kept work is not there any more.',
  remedy: 'Open the project file instead.',
};

/** A window that is there writes this journal. */
export const recoveryInUse: Issue = {
  path: [],
  code: 'recovery-in-use',
  message: 'Another window is still at this work.',
  remedy: 'Go on in that window, or close it first.',
};

const spoilt = (path: string): Issue => ({
  path: [path],
  code: 'recovery-spoilt',
  message: 'The kept work was damaged: nothing of it can be read.',
  remedy: 'Open the project file instead; the version before its last save may be kept beside it.',
});
