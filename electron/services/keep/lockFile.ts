/** The hidden file beside a project that names the program which writes it. */

import { randomBytes } from 'node:crypto';
import { setTimeout as wait } from 'node:timers/promises';
import { z } from 'zod';
import { errorCode } from '../fileIssues.ts';
import { beside } from './besideNames.ts';
import type { Disk } from './disk.ts';
import { type ProcessMark, processMark, stateOf } from './processMark.ts';

/** Silence of a program on another machine after which it may be gone, ms. */
export const silentAfterMs = 60_000;

const record = z.object({ program: z.literal('augerwright'), since: z.iso.datetime(), by: processMark });

/** What stands in a lock file, and how long ago its program last touched it. */
export interface FoundLock {
  readonly since: string;
  readonly by: ProcessMark;
  readonly silentMs: number;
}

/** Path of the lock of a file. */
export const lockPathOf = (target: string): string => beside(target, 'lock');

/** Reads a lock; null: there is none; 'damaged': what stands there names nobody. Throws where the folder fails. */
export async function readLock(target: string, disk: Disk): Promise<FoundLock | 'damaged' | null> {
  const path = lockPathOf(target);
  for (let tries = 0; ; tries += 1) {
    try {
      const found = record.safeParse(parsed(String(await disk.readFile(path))));
      const { mtimeMs } = await disk.stat(path);
      if (found.success) return { ...found.data, silentMs: Date.now() - Number(mtimeMs) };
    } catch (error) {
      if (errorCode(error) === 'ENOENT') return null;
      throw error;
    }
    // Where it could not appear all at once, its program may be about to write it.
    if (tries === 4) return 'damaged';
    await wait(20);
  }
}

const parsed = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
};

/** Whether the program of a lock is there: true, false, or null where nobody can tell. */
export function isAlive(lock: FoundLock): boolean | null {
  const state = stateOf(lock.by);
  if (state === 'running') return true;
  if (state === 'gone') return false;
  if (lock.silentMs < silentAfterMs) return true;
  return state === 'restarted' ? false : null;
}

const textOf = (by: ProcessMark, since: string): string =>
  `${JSON.stringify({ program: 'augerwright', since, by }, null, 2)}\n`;

/** Puts a lock where there is none. 'there': somebody was quicker; 'refused': the folder takes no lock. */
export async function putLock(
  target: string,
  by: ProcessMark,
  since: string,
  disk: Disk,
): Promise<'put' | 'there' | 'refused'> {
  const path = lockPathOf(target);
  const told = beside(target, `${randomBytes(8).toString('hex')}.lock`);
  try {
    await writeNew(told, textOf(by, since), disk);
    // A second name appears all at once with its text, and only where there was none.
    await disk.link(told, path);
    return 'put';
  } catch (error) {
    if (errorCode(error) === 'EEXIST') return 'there';
  } finally {
    await disk.unlink(told).catch(() => undefined);
  }
  try {
    await writeNew(path, textOf(by, since), disk);
    return 'put';
  } catch (error) {
    return errorCode(error) === 'EEXIST' ? 'there' : 'refused';
  }
}

/** Puts a lock in the place of whatever lock there is, all at once; false where the folder takes none. */
export async function replaceLock(target: string, by: ProcessMark, since: string, disk: Disk): Promise<boolean> {
  const told = beside(target, `${randomBytes(8).toString('hex')}.lock`);
  try {
    await writeNew(told, textOf(by, since), disk);
    await disk.rename(told, lockPathOf(target));
    return true;
  } catch {
    await disk.unlink(told).catch(() => undefined);
    return false;
  }
}

async function writeNew(path: string, text: string, disk: Disk): Promise<void> {
  const file = await disk.open(path, 'wx', 0o666);
  try {
    await file.writeFile(text);
  } catch (error) {
    await disk.unlink(path).catch(() => undefined);
    throw error;
  } finally {
    await file.close();
  }
}
