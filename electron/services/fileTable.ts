/** Names for files: the window holds a random name, the host alone knows the path behind it. */

import { randomBytes } from 'node:crypto';
import { basename, resolve } from 'node:path';
import { fail, ok, type Result } from '../../core/index.ts';
import type { SavedFile } from '../contract.ts';
import { versionOf } from './keep/version.ts';
import { writeTextFile } from './textFile.ts';

/** Paths that a dialog or the command line let in, by handle. */
export interface FileTable {
  /** The handle of a path; the same path always gets the same handle. */
  admit(path: string): string;
  /** Path behind a handle, or an issue when this host never gave that handle out. */
  pathOf(handle: string): Result<string>;
  /** Saves a finished file, such as an export, to a path just admitted. */
  save(path: string, data: string | Uint8Array): Promise<Result<SavedFile>>;
}

/** A table that is empty; handles live as long as it does. */
export function createFileTable(): FileTable {
  const paths = new Map<string, string>();
  const handles = new Map<string, string>();
  const admit = (given: string): string => {
    const path = resolve(given);
    const known = handles.get(path);
    if (known) return known;
    const handle = randomBytes(16).toString('hex');
    paths.set(handle, path);
    handles.set(path, handle);
    return handle;
  };
  return {
    admit,
    pathOf(handle) {
      const path = paths.get(handle);
      return path === undefined ? fail(unknownHandle) : ok(path);
    },
    async save(path, data) {
      const written = await writeTextFile(path, data);
      if (!written.ok) return written;
      return ok({ handle: admit(path), path: resolve(path), name: basename(path), version: versionOf(data) });
    },
  };
}

const unknownHandle = {
  path: [],
  code: 'file-unknown',
  message: 'This start of the program has not opened that file.',
  remedy: 'Open it again, or save under a new name.',
};
