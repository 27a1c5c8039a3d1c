/** Replaces a file by new bytes so that a fault at any moment leaves the old or the new file whole, and never half of one. */

import { randomBytes } from 'node:crypto';
import { constants } from 'node:fs';
import type { FileHandle } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { errorCode } from '../fileIssues.ts';
import { beside } from './besideNames.ts';
import { type Disk, realDisk } from './disk.ts';

/** How a file is to be replaced. */
export interface Replacing {
  readonly disk?: Disk;
  /** Permissions of a file that is new; those of an existing one are kept. Left out: as the system gives. */
  readonly mode?: number;
  /** Keeps what stood there as the hidden previous version. */
  readonly keepPrevious?: boolean;
  /** Asked last, right before the new bytes take the file's place; it stops the replacing by throwing. */
  readonly stillAllowed?: () => Promise<void>;
  /** How often to try again where another program, such as a virus scanner, holds the file for a moment. */
  readonly patience?: number;
  /** Told as soon as the new bytes stand in the file's place. */
  readonly onPlaced?: () => void;
}

/** The new file is in place, but the drive did not confirm that its name will last. */
export class NotConfirmed extends Error {
  readonly code: string;
  constructor(code: string) {
    super(`the folder was not flushed: ${code}`);
    this.code = code;
  }
}

type Facts = Awaited<ReturnType<Disk['stat']>>;

/** The file that a path leads to in the end: links are followed, even to a file that is not there yet. */
export async function trueTarget(path: string, disk: Disk = realDisk, hops = 40): Promise<string> {
  try {
    return await disk.realpath(path);
  } catch (error) {
    if (errorCode(error) !== 'ENOENT' || hops === 0) throw error;
  }
  const link = await disk.readlink(path).catch(() => null);
  if (link !== null) return trueTarget(resolve(dirname(path), link), disk, hops - 1);
  const folder = await disk.realpath(dirname(path)).catch(() => dirname(path));
  return join(folder, basename(path));
}

/**
 * Writes beside the target, flushes, renames over it and flushes the folder.
 * Permissions and owner are kept; a link stays a link. Throws what the file system threw, nothing left behind.
 */
export async function replaceFile(path: string, data: string | Uint8Array, how: Replacing = {}): Promise<void> {
  const disk = how.disk ?? realDisk;
  const target = await trueTarget(path, disk);
  const old = await disk.stat(target).catch((error: unknown) => {
    if (errorCode(error) === 'ENOENT') return null;
    throw error;
  });
  if (old) await checkWritable(disk, target, old);
  const fresh = beside(target, `${randomBytes(8).toString('hex')}.new`);
  const kept = beside(target, `${randomBytes(8).toString('hex')}.old`);
  try {
    await writeWhole(disk, fresh, Buffer.from(data), old, how.mode);
    const hasKept = how.keepPrevious === true && old !== null && (await keep(disk, target, kept));
    await how.stillAllowed?.();
    await putInPlace(disk, fresh, target, how.patience ?? systemPatience);
    how.onPlaced?.();
    // the save is done: whatever becomes of the old version, it is no failure of it
    if (hasKept) await disk.rename(kept, beside(target, 'previous')).catch(() => dropped(disk, kept));
  } catch (error) {
    await dropped(disk, fresh);
    await dropped(disk, kept);
    throw error;
  }
  await flushFolder(disk, dirname(target));
}

/** A name may be given to other bytes where the file itself is protected: that protection is heeded all the same. */
async function checkWritable(disk: Disk, target: string, old: Facts): Promise<void> {
  if (old.isDirectory()) throw Object.assign(new Error('a folder'), { code: 'EISDIR' });
  const isProtected = (Number(old.mode) & 0o222) === 0;
  if (isProtected) throw Object.assign(new Error('nobody may write the file'), { code: 'EACCES' });
  await disk.access(target, constants.W_OK);
}

/**
 * Writes all bytes at the file's place. The system may take fewer than given and call that a success, as where the
 * drive is full, so it is asked again until all are taken or it says why not.
 */
export async function writeAll(file: FileHandle, bytes: Buffer): Promise<void> {
  let done = 0;
  while (done < bytes.length) {
    const { bytesWritten } = await file.write(bytes, done, bytes.length - done, null);
    if (bytesWritten === 0) throw Object.assign(new Error('nothing was written'), { code: 'EIO' });
    done += bytesWritten;
  }
}

/** A new file with all bytes on the drive. */
async function writeWhole(disk: Disk, path: string, bytes: Buffer, old: Facts | null, mode?: number): Promise<void> {
  const file = await disk.open(path, 'wx', old ? 0o600 : (mode ?? 0o666));
  try {
    await writeAll(file, bytes);
    if (old) {
      await file.chown(Number(old.uid), Number(old.gid)).catch(() => undefined);
      await file.chmod(Number(old.mode) & 0o7777).catch(() => undefined);
    }
    await file.sync();
  } catch (error) {
    await file.close().catch(() => undefined);
    throw error;
  }
  await file.close();
}

/** Windows alone refuses to rename over a file that somebody has open. */
const systemPatience = process.platform === 'win32' ? 12 : 0;
const heldForAMoment = new Set(['EPERM', 'EACCES', 'EBUSY']);
const momentMs = 50;

async function putInPlace(disk: Disk, fresh: string, target: string, patience: number): Promise<void> {
  try {
    await disk.rename(fresh, target);
  } catch (error) {
    if (patience === 0 || !heldForAMoment.has(errorCode(error))) throw error;
    await wait(momentMs);
    await putInPlace(disk, fresh, target, patience - 1);
  }
}

const dropped = (disk: Disk, path: string): Promise<void> => disk.unlink(path).catch(() => undefined);

/** Gives the old bytes a second name; where the drive knows no second names, copies them. False where neither went. */
async function keep(disk: Disk, target: string, kept: string): Promise<boolean> {
  try {
    await disk.link(target, kept);
    return true;
  } catch {
    try {
      await writeWhole(disk, kept, await disk.readFile(target), null, 0o600);
      return true;
    } catch {
      await dropped(disk, kept);
      return false;
    }
  }
}

/** Systems that cannot flush a folder say so in one of these ways; their renames are durable without or not at all. */
const noFolderFlush = new Set(['EINVAL', 'ENOTSUP', 'ENOSYS', 'EISDIR', 'EPERM', 'EACCES', 'EBADF']);

async function flushFolder(disk: Disk, folder: string): Promise<void> {
  try {
    const open = await disk.open(folder, 'r');
    try {
      await open.sync();
    } finally {
      await open.close();
    }
  } catch (error) {
    if (!noFolderFlush.has(errorCode(error))) throw new NotConfirmed(errorCode(error));
  }
}
