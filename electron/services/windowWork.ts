/** What a window is at work on, as far as its host can tell from the calls it answered. */

import type { Result } from '../../core/index.ts';

/** The work of one window. */
export interface WindowWork {
  /** Path of the project's file that the window shows; null for an example, work in no file, or a file it refused. */
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

/** Calls after which the window most likely shows the file they answer with; those below tell for sure. */
const showing = ['readStartProject', 'openRecent', 'openProject', 'openDropped', 'saveProject', 'saveProjectAs'];
/** Calls that a window makes for the file it shows, and for no other. */
const aboutShown = ['saveProject', 'lookAtFile', 'takeOverFile'];
/** Calls after which a window no longer shows what it started with. */
const touching = ['openRecent', 'openProject', 'openDropped', 'saveProjectAs', 'readRecovery', 'readExample'];

/** A window that shows a file makes a call about it within this time, ms; one that refused its text makes none. */
const confirmedWithin = 15_000;

/** What arguments and answers may say, as far as it matters here. */
interface Said {
  readonly handle?: string | null;
  readonly path?: string | null;
  readonly edited?: boolean;
  readonly journal?: string;
  readonly entry?: { readonly handle: string | null };
}

/** Work of a window that has not yet called. `now` is a clock, ms. */
export function createWindowWork(now: () => number = Date.now): WindowWork {
  const paths = new Map<string, string>();
  let shown: string | null = null;
  /** By when a call about the shown file has to come; none once it came. */
  let awaited = Number.POSITIVE_INFINITY;
  let edited = false;
  let touched = false;
  let journal: string | null = null;
  const show = (handle: string | null | undefined, by = Number.POSITIVE_INFINITY) => {
    shown = handle ?? null;
    awaited = by;
  };
  const files = (name: string, asked: Said, answered: Said | null) => {
    if (answered?.handle && answered.path) paths.set(answered.handle, answered.path);
    if (showing.includes(name) && answered !== null) show(answered.handle, now() + confirmedWithin);
    if (name === 'readExample') show(null);
    if (aboutShown.includes(name)) show(asked.handle);
    if (name === 'writeJournal') show(asked.entry?.handle);
    if (name === 'leaveFile' && asked.handle === shown) show(null);
    if (touching.includes(name) && answered !== null) touched = true;
  };
  return {
    path: () => (shown === null || now() > awaited ? null : (paths.get(shown) ?? null)),
    edited: () => edited,
    untouched: () => !touched && shown === null,
    journal: () => journal,
    heard(name, argument, result) {
      if (!result.ok) return;
      const asked = (argument ?? {}) as Said;
      files(name, asked, result.value as Said | null);
      if (name === 'writeJournal') journal = asked.journal ?? null;
      if (name === 'closeJournal') journal = null;
      if (name === 'setEdited') edited = asked.edited === true;
      if (edited) touched = true;
    },
    pageGone() {
      edited = false;
    },
  };
}
