/** Who writes which file, so that two writers do not take turns in overwriting each other. */

import { hostname } from 'node:os';
import type { FileHolder } from '../../safekeeping.ts';
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

/** Locks that are empty. */
export function createLocks(windows: Windows): Locks {
  const held = new Map<string, { readonly windowId: string; readonly since: string }>();
  const holder = (windowId: string, target: string): FileHolder | null => {
    const by = held.get(target);
    if (!by || by.windowId === windowId) return null;
    const alive = windows.isThere(by.windowId);
    return alive === false ? null : { kind: 'window', machine: hostname(), since: by.since, alive };
  };
  const put = (windowId: string, target: string) =>
    void held.set(target, { windowId, since: new Date().toISOString() });
  return {
    async take(windowId, path) {
      const target = await trueTarget(path);
      const other = holder(windowId, target);
      if (!other) put(windowId, target);
      return other;
    },
    holderOf: async (windowId, path) => holder(windowId, await trueTarget(path)),
    takeOver: async (windowId, path) => put(windowId, await trueTarget(path)),
    async leave(windowId, path) {
      const target = await trueTarget(path);
      if (held.get(target)?.windowId === windowId) held.delete(target);
    },
    async leaveAll(windowId) {
      for (const [target, by] of held) if (by.windowId === windowId) held.delete(target);
    },
    close: async () => held.clear(),
  };
}
