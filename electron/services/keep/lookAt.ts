/** How a file on the drive stands against what a window knows of it. */

import { dirname } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { ok, type Result } from '../../../core/index.ts';
import type { FileLook } from '../../safekeeping.ts';
import { errorCode } from '../fileIssues.ts';
import type { Disk } from './disk.ts';
import type { Locks } from './locks.ts';
import { versionOf } from './version.ts';

/** A drive that says nothing for so long does not answer, ms. */
const patienceMs = 5_000;

/** Version of a file on the drive; null where there is none. Throws where it cannot be read. */
export async function versionOnDisk(path: string, disk: Disk): Promise<string | null> {
  try {
    return versionOf(await disk.readFile(path));
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return null;
    throw error;
  }
}

const unreachable: FileLook = { state: 'unreachable', version: null, holder: null };

/** Who looks at what. */
export interface Look {
  readonly windowId: string;
  readonly path: string;
  /** Versions that are no news to the window: the one it has, and one that it wrote without hearing of it. */
  readonly known: readonly (string | null)[];
}

/** Looks. A drive that does not answer is no failure of the call. */
export async function lookAt(look: Look, locks: Locks, disk: Disk): Promise<Result<FileLook>> {
  const late = new AbortController();
  const tooLong = wait(patienceMs, unreachable, { signal: late.signal, ref: false }).catch(() => unreachable);
  const seen = see(look, locks, disk).catch(() => unreachable);
  const first = await Promise.race([seen, tooLong]);
  late.abort();
  return ok(first);
}

async function see({ windowId, path, known }: Look, locks: Locks, disk: Disk): Promise<FileLook> {
  const version = await versionOnDisk(path, disk);
  if (version !== null) {
    const holder = await locks.holderOf(windowId, path);
    return { state: known.includes(version) ? 'same' : 'changed', version, holder };
  }
  await disk.stat(dirname(path));
  return { state: 'gone', version, holder: null };
}
