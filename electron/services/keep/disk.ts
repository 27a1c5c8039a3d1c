/** The part of the file system that saving needs; handed in, so that tests can let any call of it fail. */

import * as promises from 'node:fs/promises';

/** Calls of `node:fs/promises` by the same names. */
export type Disk = Pick<
  typeof promises,
  | 'access'
  | 'link'
  | 'lstat'
  | 'mkdir'
  | 'open'
  | 'readFile'
  | 'readdir'
  | 'readlink'
  | 'realpath'
  | 'rename'
  | 'stat'
  | 'unlink'
>;

/** The real one. */
export const realDisk: Disk = promises;
