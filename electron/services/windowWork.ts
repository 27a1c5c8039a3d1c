/** What a window is at work on, as far as its host can tell from the calls it answered. */

import type { Result } from '../../core/index.ts';

/** The work of one window. */
export interface WindowWork {
  /** Path of the project's file that the window shows; null for an example, or work that no file holds yet. */
  path(): string | null;
  /** Whether closing would lose edits; a page that is gone has none, because its journal has them. */
  edited(): boolean;
  /** Whether the window still shows what it started with, and that was no file. */
  untouched(): boolean;
  /** Journal that the window writes; null before its first entry and after it was closed. */
  journal(): string | null;
  /** Takes note of a call that was answered. */
  heard(name: string, argument: unknown, result: Result<unknown>): void;
  /** The page is gone, or starts anew. */
  pageGone(): void;
}

interface Held {
  readonly handle: string | null;
  readonly path: string | null;
}

/** Calls after which the window shows the file they answer with, and those after which it shows no file. */
const showing = ['readStartProject', 'openRecent', 'openProject', 'openDropped', 'saveProject', 'saveProjectAs'];
const showingOther = ['readRecovery', 'readExample', 'openPrevious'];
const none: Held = { handle: null, path: null };

/** Work of a window that has not yet called. */
export function createWindowWork(): WindowWork {
  let held = none;
  let edited = false;
  let touched = false;
  let journal: string | null = null;
  const take = (name: string, value: Partial<Held> | null) => {
    if (value === null) return;
    const { handle = null, path = null } = value;
    held = handle === null ? none : { handle, path };
    if (name !== 'readStartProject') touched = true;
  };
  return {
    path: () => held.path,
    edited: () => edited,
    untouched: () => !touched && held.handle === null,
    journal: () => journal,
    heard(name, argument, result) {
      if (!result.ok) return;
      const told = (argument ?? {}) as { edited?: boolean; journal?: string; handle?: string };
      if ([...showing, ...showingOther].includes(name)) take(name, result.value as Held | null);
      if (name === 'leaveFile' && told.handle === held.handle) held = none;
      if (name === 'writeJournal') journal = told.journal ?? null;
      if (name === 'closeJournal') journal = null;
      if (name === 'setEdited') edited = told.edited === true;
      if (edited) touched = true;
    },
    pageGone() {
      edited = false;
    },
  };
}
