/** Who writes which file, so that two writers do not take turns in overwriting each other. */

import { utimes } from 'node:fs/promises';
import { hostname } from 'node:os';
import type { FileHolder } from '../../safekeeping.ts';
import { type Disk, realDisk } from './disk.ts';
import { createInTurn } from './inTurn.ts';
import { forgetAtExit, unlockAtExit } from './lockExit.ts';
import { type FoundLock, isAlive, lockPathOf, putLock, readLock, replaceLock, silentAfterMs } from './lockFile.ts';
import { ownMark, type ProcessMark } from './processMark.ts';
import { trueTarget } from './replaceFile.ts';
import type { Windows } from './windows.ts';

/** Locks on files by window. */
export interface Locks {
  /** Takes the file for a window where nobody else has it; null: it is this window's now, or cannot be locked at all. */
  take(windowId: string, path: string): Promise<FileHolder | null>;
  /** Who else has it; takes nothing. */
  holderOf(windowId: string, path: string): Promise<FileHolder | null>;
  /** Takes the file whoever has it. */
  takeOver(windowId: string, path: string): Promise<void>;
  leave(windowId: string, path: string): Promise<void>;
  leaveAll(windowId: string): Promise<void>;
  /** Leaves every file. */
  close(): Promise<void>;
}

interface Held {
  readonly windowId: string;
  readonly since: string;
}

/** What locks need to know. */
export interface LockMeans {
  readonly windows: Windows;
  readonly disk?: Disk;
  readonly mark?: ProcessMark;
  /** Called with a file just taken, as nobody else is writing it now. */
  readonly taken?: (target: string) => void;
}

/** Locks, none held yet. A folder that takes no lock files is no fault: its files are locked between windows alone. */
export function createLocks(means: LockMeans): Locks {
  const { windows, disk = realDisk, mark = ownMark() } = means;
  const held = new Map<string, Held>();
  const inTurn = createInTurn();
  const on = async <T>(path: string, act: (target: string) => Promise<T>): Promise<T> => {
    const target = await trueTarget(path, disk).catch(() => path);
    return inTurn(target, () => act(target));
  };
  const desk: Desk = { held, windows, disk, mark, taken: means.taken ?? (() => undefined) };
  const beat = setInterval(() => void touchAll(desk), silentAfterMs / 4);
  beat.unref();
  const leave = (target: string): Promise<void> => {
    held.delete(target);
    return unlock(target, desk);
  };
  return {
    take: (windowId, path) => on(path, (target) => take(windowId, target, desk)),
    holderOf: (windowId, path) => on(path, (target) => holderOf(windowId, target, desk)),
    takeOver: (windowId, path) =>
      on(path, async (target) => {
        const since = new Date().toISOString();
        if (await replaceLock(target, mark, since, disk)) unlockAtExit(lockPathOf(target), mark.instance);
        held.set(target, { windowId, since });
      }),
    leave: (windowId, path) =>
      on(path, async (target) => {
        if (held.get(target)?.windowId === windowId) await leave(target);
      }),
    async leaveAll(windowId) {
      const own = [...held].filter(([, by]) => by.windowId === windowId);
      await Promise.all(own.map(([target]) => inTurn(target, () => leave(target))));
    },
    async close() {
      clearInterval(beat);
      await Promise.all([...held.keys()].map((target) => inTurn(target, () => leave(target))));
    },
  };
}

interface Desk {
  readonly held: Map<string, Held>;
  readonly windows: Windows;
  readonly disk: Disk;
  readonly mark: ProcessMark;
  readonly taken: (target: string) => void;
}

/** Another window of this process; null: none that is there. */
function otherWindow(windowId: string, target: string, { held, windows }: Desk): FileHolder | null {
  const by = held.get(target);
  if (!by || by.windowId === windowId) return null;
  const alive = windows.isThere(by.windowId);
  return alive === false ? null : { kind: 'window', machine: hostname(), since: by.since, alive };
}

const otherProgram = (lock: FoundLock, alive: boolean | null): FileHolder => ({
  kind: 'program',
  machine: lock.by.machine,
  since: lock.since,
  alive,
});

/** The lock on the drive as somebody else's who may be there; null: ours, nobody's, or none that can be read. */
async function foreign(target: string, { disk, mark }: Desk): Promise<FileHolder | null> {
  const lock = await readLock(target, disk).catch(() => null);
  if (lock === null || lock === 'damaged' || lock.by.instance === mark.instance) return null;
  const alive = isAlive(lock);
  return alive === false ? null : otherProgram(lock, alive);
}

/** A lock on the drive that is somebody else's comes first: it was taken over from whichever window had the file here. */
async function holderOf(windowId: string, target: string, desk: Desk): Promise<FileHolder | null> {
  return (await foreign(target, desk)) ?? otherWindow(windowId, target, desk);
}

async function take(windowId: string, target: string, desk: Desk): Promise<FileHolder | null> {
  const { held, disk, mark } = desk;
  const known = held.get(target);
  const since = known?.windowId === windowId ? known.since : new Date().toISOString();
  for (let tries = 0; tries < 3; tries += 1) {
    const other = await holderOf(windowId, target, desk);
    if (other) {
      if (other.kind === 'program') forget(target, desk);
      return other;
    }
    const state = await hold(target, since, desk);
    if (state === 'there') continue;
    held.set(target, { windowId, since });
    if (state === 'put') {
      unlockAtExit(lockPathOf(target), mark.instance);
      desk.taken(target);
    }
    return null;
  }
  const lock = await readLock(target, disk).catch(() => null);
  return lock === null || lock === 'damaged' ? null : otherProgram(lock, null);
}

/** Makes the lock on the drive ours, nobody who is there holding it. 'there': somebody else was quicker. */
async function hold(
  target: string,
  since: string,
  { disk, mark }: Desk,
): Promise<'put' | 'ours' | 'there' | 'refused'> {
  const lock = await readLock(target, disk).catch(() => null);
  if (lock === null) return putLock(target, mark, since, disk);
  if (lock !== 'damaged' && lock.by.instance === mark.instance) return 'ours';
  if (!(await replaceLock(target, mark, since, disk))) return 'refused';
  // Two may have found the same dead lock: the later one has it.
  const now = await readLock(target, disk).catch(() => null);
  return now !== null && now !== 'damaged' && now.by.instance === mark.instance ? 'put' : 'there';
}

function forget(target: string, { held }: Desk): void {
  held.delete(target);
  forgetAtExit(lockPathOf(target));
}

async function unlock(target: string, { disk, mark }: Desk): Promise<void> {
  forgetAtExit(lockPathOf(target));
  const lock = await readLock(target, disk).catch(() => null);
  if (lock !== null && lock !== 'damaged' && lock.by.instance === mark.instance) {
    await disk.unlink(lockPathOf(target)).catch(() => undefined);
  }
}

/** Shows others that this program is there. One whose folder does not answer is left out. */
async function touchAll({ held, mark, disk }: Desk): Promise<void> {
  for (const target of held.keys()) {
    const lock = await readLock(target, disk).catch(() => null);
    const now = new Date();
    if (lock !== null && lock !== 'damaged' && lock.by.instance === mark.instance) {
      await utimes(lockPathOf(target), now, now).catch(() => undefined);
    }
  }
}
