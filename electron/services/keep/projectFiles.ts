/** Projects in files: opened, watched, saved without writing over anybody, by window. */

import { basename, dirname } from 'node:path';
import { fail, type Issue, ok, type Result } from '../../../core/index.ts';
import type { Argument, OpenedProject, SavedFile } from '../../contract.ts';
import type { FileHolder, FileLook } from '../../safekeeping.ts';
import { errorCode } from '../fileIssues.ts';
import type { FileTable } from '../fileTable.ts';
import { readTextFile } from '../textFile.ts';
import { beside } from './besideNames.ts';
import { type Disk, realDisk } from './disk.ts';
import type { Locks } from './locks.ts';
import { replaceFile, trueTarget } from './replaceFile.ts';
import { saveIssue } from './saveIssues.ts';
import { versionOf } from './version.ts';

/** What one host does with project files. */
export interface ProjectFiles {
  open(windowId: string, path: string): Promise<Result<OpenedProject>>;
  save(windowId: string, asked: Argument<'saveProject'>): Promise<Result<SavedFile>>;
  /** Saves where the person has just chosen to, whatever stands there. */
  saveAs(windowId: string, path: string, text: string): Promise<Result<SavedFile>>;
  look(windowId: string, asked: Argument<'lookAtFile'>): Promise<Result<FileLook>>;
  takeOver(windowId: string, handle: string): Promise<Result<null>>;
  leave(windowId: string, handle: string): Promise<Result<null>>;
  previous(handle: string): Promise<Result<OpenedProject>>;
}

/** Project files over a table of handles and the locks on them. */
export function createProjectFiles(table: FileTable, locks: Locks, disk: Disk = realDisk): ProjectFiles {
  const withPath = async <T>(handle: string, act: (path: string) => Promise<Result<T>>): Promise<Result<T>> => {
    const path = table.pathOf(handle);
    return path.ok ? act(path.value) : path;
  };
  const write = async (windowId: string, path: string, text: string, stillAllowed?: () => Promise<void>) => {
    try {
      await replaceFile(path, text, { disk, keepPrevious: true, ...(stillAllowed ? { stillAllowed } : {}) });
      await locks.take(windowId, path);
      return ok({ handle: table.admit(path), path, name: basename(path), version: versionOf(text) });
    } catch (error) {
      return fail(error instanceof Refused ? error.issue : await saveIssue(path, error, disk));
    }
  };
  return {
    async open(windowId, path) {
      const text = await readTextFile(path);
      if (!text.ok) return text;
      const holder = await locks.take(windowId, path);
      const handle = table.admit(path);
      return ok({ handle, path, name: basename(path), text: text.value, version: versionOf(text.value), holder });
    },
    save: (windowId, { handle, text, version, evenIfChanged }) =>
      withPath(handle, async (path) => {
        const check = async () => {
          const holder = await locks.take(windowId, path);
          if (holder) throw new Refused(heldBy(path, holder));
          if (evenIfChanged) return;
          const now = await versionOnDisk(path, disk);
          if (now !== null && now !== version && now !== versionOf(text)) throw new Refused(changedOutside(path));
        };
        return write(windowId, path, text, check);
      }),
    saveAs: (windowId, path, text) => write(windowId, path, text),
    look: (windowId, { handle, version }) => withPath(handle, (path) => look(windowId, path, version, locks, disk)),
    takeOver: (windowId, handle) => withPath(handle, (path) => locks.takeOver(windowId, path).then(() => ok(null))),
    leave: (windowId, handle) => withPath(handle, (path) => locks.leave(windowId, path).then(() => ok(null))),
    previous: (handle) => withPath(handle, (path) => readPrevious(path, disk)),
  };
}

/** Carries an issue out of the replacing of a file. */
class Refused extends Error {
  readonly issue: Issue;
  constructor(issue: Issue) {
    super(issue.message);
    this.issue = issue;
  }
}

/** Version of the file now; null where there is none. */
async function versionOnDisk(path: string, disk: Disk): Promise<string | null> {
  try {
    return versionOf(await disk.readFile(path));
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return null;
    throw error;
  }
}

async function look(
  windowId: string,
  path: string,
  known: string | null,
  locks: Locks,
  disk: Disk,
): Promise<Result<FileLook>> {
  const none = { version: null, holder: null };
  try {
    const version = await versionOnDisk(path, disk);
    const holder = await locks.holderOf(windowId, path);
    if (version !== null) return ok({ state: version === known ? 'same' : 'changed', version, holder });
    await disk.stat(dirname(path));
    return ok({ ...none, state: 'gone' });
  } catch {
    return ok({ ...none, state: 'unreachable' });
  }
}

async function readPrevious(path: string, disk: Disk): Promise<Result<OpenedProject>> {
  const kept = beside(await trueTarget(path, disk).catch(() => path), 'previous');
  const text = await readTextFile(kept);
  if (text.ok) {
    return ok({ handle: null, path: kept, name: basename(path), text: text.value, version: null, holder: null });
  }
  return text.issues[0]?.code === 'file-enoent' ? fail(noPrevious(path)) : text;
}

const changedOutside = (path: string): Issue => ({
  path: [path],
  code: 'file-changed-outside',
  message: 'Somebody else has changed this file since it was opened or saved here.',
  remedy: 'Look at what changed, then write over it, or save under another name.',
});

const heldBy = (path: string, holder: FileHolder): Issue => ({
  path: [path],
  code: 'file-held',
  message:
    holder.kind === 'window'
      ? 'Another window has this file open to write it.'
      : `Another start of the program, on ${holder.machine}, has this file open to write it.`,
  remedy: 'Close it there, take the file over, or save under another name. Your work is still in the window.',
});

const noPrevious = (path: string): Issue => ({
  path: [path],
  code: 'file-no-previous',
  message: 'No earlier version of this file has been kept.',
  remedy: 'One is kept from the next save on.',
});
