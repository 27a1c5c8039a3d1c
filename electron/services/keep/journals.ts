/** Work kept from edit to edit, and found again after a window was lost. */

import { ok, type Result } from '../../../core/index.ts';
import type { JournalEntry, RecoveredWork, Recovery } from '../../safekeeping.ts';

/** Journals by window. */
export interface Journals {
  write(windowId: string, journal: string, entry: JournalEntry): Promise<Result<null>>;
  /** Removes a journal: its work is saved or given up. */
  close(journal: string): Promise<Result<null>>;
  list(journal: string): Promise<Result<readonly Recovery[]>>;
  read(windowId: string, id: string): Promise<Result<RecoveredWork>>;
  drop(id: string): Promise<Result<null>>;
}

/** Journals that keep nothing, for hosts without a folder to keep them in. */
export const noJournals: Journals = {
  write: async () => ok(null),
  close: async () => ok(null),
  list: async () => ok([]),
  read: async () => ({ ok: false, issues: [recoveryUnknown] }),
  drop: async () => ok(null),
};

/** There is no such journal any more. */
export const recoveryUnknown = {
  path: [],
  code: 'recovery-unknown',
  message: 'This kept work is not there any more.',
  remedy: 'Open the project file instead.',
};
