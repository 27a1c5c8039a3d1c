/** Projects in files: opened, watched, saved without writing over anybody, by window. */

import { basename } from 'node:path';
import { fail, type Issue, ok, type Result } from '../../../core/index.ts';
import type { Argument, OpenedProject, SavedFile } from '../../contract.ts';
import type { FileLook } from '../../safekeeping.ts';
import type { FileTable } from '../fileTable.ts';
import { readTextFile, readVersionedText } from '../textFile.ts';
import { beside } from './besideNames.ts';
import type { Disk } from './disk.ts';
import { changedOutside, heldBy, noPrevious, notPlain } from './holdIssues.ts';
import { createInTurn } from './inTurn.ts';
import type { Locks } from './locks.ts';
import { lookAt, versionOnDisk } from './lookAt.ts';
import { replaceFile, trueTarget } from './replaceFile.ts';
import { saveIssue } from './saveIssues.ts';
import { versionOf } from './version.ts';
import type { VersionsByWindow } from './versionsByWindow.ts';

/** What one host does with project files. */
export interface ProjectFiles {
  open(windowId: string, path: string): Promise<Result<OpenedProject>>;
  save(windowId: string, asked: Argument<'saveProject'>): Promise<Result<SavedFile>>;
  /** Saves where the person has just chosen to, over whatever stands there unless somebody else is writing it. */
  saveAs(windowId: string, path: string, text: string): Promise<Result<SavedFile>>;
  look(windowId: string, asked: Argument<'lookAtFile'>): Promise<Result<FileLook>>;
  takeOver(windowId: string, handle: string): Promise<Result<null>>;
  leave(windowId: string, handle: string): Promise<Result<null>>;
  previous(handle: string): Promise<Result<OpenedProject>>;
}

/** What they need. */
export interface FilesMeans {
  readonly table: FileTable;
  readonly locks: Locks;
  readonly disk: Disk;
  /** Versions of files that a window goes by: as it said last, else as it read or wrote them. */
  readonly known: VersionsByWindow;
  /** Versions of files as last written by a window, since it read them last. */
  readonly written: VersionsByWindow;
  /** A window's file is about to be written with a text; what is answered is called when it was. */
  readonly saving: (windowId: string, text: string) => () => void;
  /** Removes what cut-off saves left beside a file that was just taken. */
  readonly tidy: (path: string) => Promise<void>;
}

/** Project files over a table of handles and the locks on them. */
export function createProjectFiles(means: FilesMeans): ProjectFiles {
  const { table, locks, disk, known, written } = means;
  const inTurn = createInTurn();
  const withPath = async <T>(handle: string, act: (path: string) => Promise<Result<T>>): Promise<Result<T>> => {
    const path = table.pathOf(handle);
    return path.ok ? act(path.value) : path;
  };
  const done = () => ok(null);
  const inOrder = (wish: Save) => {
    const noteSaved = means.saving(wish.windowId, wish.text);
    return inTurn(wish.path, () => save(wish, noteSaved, means));
  };
  return {
    open: (windowId, path) => open(windowId, path, means),
    save: (windowId, { handle, text, version, evenIfChanged }) =>
      withPath(handle, (path) => {
        if (version !== null) known.set(windowId, path, version);
        return inOrder({ windowId, path, text, over: evenIfChanged ? 'anything' : [version] });
      }),
    saveAs: (windowId, path, text) => inOrder({ windowId, path, text, over: 'anything' }),
    look: (windowId, { handle, version }) =>
      withPath(handle, (path) => {
        if (version !== null) known.set(windowId, path, version);
        return lookAt({ windowId, path, known: [version, written.get(windowId, path)] }, locks, disk);
      }),
    takeOver: (windowId, handle) => withPath(handle, (path) => locks.takeOver(windowId, path).then(done)),
    leave: (windowId, handle) =>
      withPath(handle, (path) => {
        for (const versions of [known, written]) versions.forget(windowId, path);
        return locks.leave(windowId, path).then(done);
      }),
    previous: (handle) => withPath(handle, (path) => readPrevious(path, disk)),
  };
}

async function open(windowId: string, path: string, means: FilesMeans): Promise<Result<OpenedProject>> {
  const facts = await means.disk.stat(path).catch(() => null);
  // a device or a pipe might never end
  if (facts !== null && !facts.isFile() && !facts.isDirectory()) return fail(notPlain(path));
  const read = await readVersionedText(path);
  if (!read.ok) return read;
  const { text, version } = read.value;
  const holder = await means.locks.take(windowId, path);
  await means.tidy(path);
  // A window may read the file to compare only: it says by its next look or save which version it goes by.
  if (means.known.get(windowId, path) === null) means.known.set(windowId, path, version);
  means.written.forget(windowId, path);
  return ok({ handle: means.table.admit(path), path, name: basename(path), text, version, holder });
}

interface Save {
  readonly windowId: string;
  readonly path: string;
  readonly text: string;
  /** Versions on the drive that may be written over; null stands for no file. */
  readonly over: 'anything' | readonly (string | null)[];
}

/** Carries an issue out of the replacing of a file. */
class Refused extends Error {
  readonly issue: Issue;
  constructor(issue: Issue) {
    super(issue.message);
    this.issue = issue;
  }
}

async function save(wish: Save, noteSaved: () => void, means: FilesMeans): Promise<Result<SavedFile>> {
  const { windowId, path, text } = wish;
  const { disk, known, written } = means;
  const version = versionOf(text);
  try {
    const before = await allowed(wish, version, means);
    await means.tidy(path);
    const stillAllowed = async () => void (await allowed(wish, version, means));
    await replaceFile(path, text, { disk, keepPrevious: before !== version, stillAllowed, onPlaced: placed });
    return ok({ handle: means.table.admit(path), path, name: basename(path), version });
  } catch (error) {
    return fail(error instanceof Refused ? error.issue : await saveIssue(path, error, disk));
  }
  /** From here on the drive holds this version, whether or not it confirms that. */
  function placed(): void {
    known.set(windowId, path, version);
    written.set(windowId, path, version);
    noteSaved();
  }
}

/**
 * Throws where a save would write over somebody: who has the file locked, or changed it since.
 * @returns the version on the drive, null where there is no file
 */
async function allowed({ windowId, path, over }: Save, version: string, means: FilesMeans): Promise<string | null> {
  const holder = await means.locks.take(windowId, path);
  if (holder) throw new Refused(heldBy(path, holder));
  const now = await versionOnDisk(path, means.disk);
  // What this window wrote itself is no surprise, even where it never heard that it had been written.
  const fine = over === 'anything' || now === null || now === version || over.includes(now);
  if (!fine && now !== means.written.get(windowId, path)) throw new Refused(changedOutside(path));
  return now;
}

async function readPrevious(path: string, disk: Disk): Promise<Result<OpenedProject>> {
  const kept = beside(await trueTarget(path, disk).catch(() => path), 'previous');
  const text = await readTextFile(kept);
  if (text.ok) {
    return ok({ handle: null, path: kept, name: basename(path), text: text.value, version: null, holder: null });
  }
  return text.issues[0]?.code === 'file-enoent' ? fail(noPrevious(path)) : text;
}
