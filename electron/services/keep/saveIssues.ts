/** Words for a save that failed: what happened, where, that the work is still in the window, and what to do. */

import { basename, dirname } from 'node:path';
import type { Issue } from '../../../core/index.ts';
import { errorCode } from '../fileIssues.ts';
import type { Disk } from './disk.ts';
import { NotConfirmed, trueTarget } from './replaceFile.ts';

const elsewhere = 'save it in another place';

/** What each refusal of the system means for a save, and what to do. */
const reasons: Readonly<Record<string, readonly [what: string, todo: string]>> = {
  EACCES: ['you may not write there', `Change the permissions of the file and its folder, or ${elsewhere}.`],
  EPERM: ['the system does not permit it', `The file may be locked or protected: free it, or ${elsewhere}.`],
  EROFS: ['the drive is read-only', `Choose "Save as" and ${elsewhere}.`],
  ENOSPC: ['the drive is full', `Free some space and save again, or ${elsewhere}.`],
  EDQUOT: ['your share of the drive is used up', `Delete something of yours and save again, or ${elsewhere}.`],
  EFBIG: ['the drive takes no file of this size', `Choose "Save as" and ${elsewhere}.`],
  EIO: ['the drive failed to take the bytes', `The drive may be failing: ${elsewhere}, on another drive.`],
  EBUSY: ['another program holds the file', `Close it there and save again, or ${elsewhere}.`],
  ETXTBSY: ['another program holds the file', `Close it there and save again, or ${elsewhere}.`],
  EMFILE: ['too many files are open', 'Close other windows or programs and save again.'],
  ENFILE: ['too many files are open', 'Close other windows or programs and save again.'],
  ENAMETOOLONG: ['the name or the path is too long', 'Choose "Save as" and a shorter name or folder.'],
  ELOOP: ['links lead round in a circle there', `Mend the links, or ${elsewhere}.`],
  EISDIR: ['a folder has that name', 'Choose "Save as" and another name.'],
  ENOTDIR: ['a part of the path is a file, not a folder', `Choose "Save as" and ${elsewhere}.`],
};

/** The drive or the share does not answer any more. */
const away = new Set([
  'ENODEV',
  'ENXIO',
  'ESTALE',
  'EHOSTDOWN',
  'EHOSTUNREACH',
  'ENOTCONN',
  'ETIMEDOUT',
  'ENETUNREACH',
]);

const kept = 'Your work is still in the window.';

/**
 * An issue about saving to a path, from whatever the file system threw. The file that was there is whole.
 * Its code is `file-` with the system's code, or `file-folder-gone`, or `file-not-confirmed`.
 */
export async function saveIssue(path: string, error: unknown, disk: Disk): Promise<Issue> {
  if (error instanceof NotConfirmed) return notConfirmed(path, error);
  const code = errorCode(error);
  const folder = dirname(await trueTarget(path, disk).catch(() => path));
  if (away.has(code) || (code === 'ENOENT' && !(await isFolder(folder, disk)))) return folderGone(path, folder);
  const [what, todo] = reasons[code] ?? [
    `the system refused (${code || String(error)})`,
    `Try again, or ${elsewhere}.`,
  ];
  return {
    path: [path],
    code: `file-${code.toLowerCase() || 'fault'}`,
    message: `${basename(path)} was not saved: ${what}. What the file held before is whole. ${kept}`,
    remedy: todo,
  };
}

const isFolder = (path: string, disk: Disk): Promise<boolean> =>
  disk.stat(path).then(
    (facts) => facts.isDirectory(),
    () => false,
  );

const folderGone = (path: string, folder: string): Issue => ({
  path: [path],
  code: 'file-folder-gone',
  message: `${basename(path)} was not saved: the folder ${folder} is gone, or its drive is not connected. ${kept}`,
  remedy: `Bring the folder or the drive back and save again, or ${elsewhere}.`,
});

const notConfirmed = (path: string, error: NotConfirmed): Issue => ({
  path: [path],
  code: 'file-not-confirmed',
  message: `${basename(path)} was written, but the drive did not confirm that it will keep it (${error.code}). ${kept}`,
  remedy: `The drive may be failing: save again, or ${elsewhere}, on another drive.`,
});
