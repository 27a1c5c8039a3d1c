/** Words for what the file system refuses. */

import type { Issue } from '../../core/index.ts';

const reasons: Record<string, readonly [message: string, remedy: string]> = {
  ENOENT: ['There is no such file.', 'Check the name and the folder.'],
  EISDIR: ['This is a folder, not a file.', 'Name a file inside it.'],
  ENOTDIR: ['A part of the path is a file, not a folder.', 'Check the path.'],
  EACCES: ['The file may not be read or written by you.', 'Change its permissions, or choose another place.'],
  EPERM: ['The system does not permit this.', 'Change its permissions, or choose another place.'],
  EROFS: ['The place is read-only.', 'Choose another place.'],
  ENOSPC: ['The disk is full.', 'Free some space, or choose another place.'],
  EDQUOT: ['Your share of the disk is used up.', 'Delete something of yours, or choose another place.'],
  EIO: ['The drive failed.', 'It may be about to break: choose another drive.'],
  EMFILE: ['Too many files are open.', 'Close other windows or programs, then try again.'],
  ENAMETOOLONG: ['The name or the path is too long.', 'Choose a shorter name or folder.'],
  ELOOP: ['Links lead round in a circle there.', 'Mend the links, or choose another place.'],
  EBUSY: ['Another program holds the file.', 'Close it there, then try again.'],
};

/** The system's error code, such as ENOENT, or an empty text. */
export function errorCode(error: unknown): string {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';
}

/** An issue about the file at a path, from whatever the file system threw. */
export function fileIssue(path: string, error: unknown): Issue {
  const code = errorCode(error);
  const [message, remedy] = reasons[code] ?? [`The file failed (${code || String(error)}).`, 'Try another place.'];
  return { path: [path], code: `file-${code.toLowerCase() || 'fault'}`, message, remedy };
}
