/** Everything that keeps work safe, put together: windows, locks, files, journals, recoveries. */

import { join } from 'node:path';
import { fail, ok, type Result } from '../../../core/index.ts';
import type { JournalEntry, RecoveredWork, Recovery } from '../../safekeeping.ts';
import type { FileTable } from '../fileTable.ts';
import { type Disk, realDisk } from './disk.ts';
import { createJournals, type Journals } from './journals.ts';
import { createLocks, type Locks } from './locks.ts';
import { ownMark, type ProcessMark } from './processMark.ts';
import { createProjectFiles, type ProjectFiles } from './projectFiles.ts';
import { createRecoveries, recoveryInUse, recoveryUnknown } from './recoveries.ts';
import { createTidy } from './tidy.ts';
import { createVersions, type VersionsByWindow } from './versionsByWindow.ts';
import { createWindows, type Windows } from './windows.ts';

/** What it is put together from. */
export interface KeepingPlaces {
  readonly table: FileTable;
  /** Journals are kept below it; null or left out: none are. */
  readonly stateFolder?: string | null;
  /** Silence after which a window may be gone, ms; left out where every window is told to be closed. */
  readonly quietAfterMs?: number;
  readonly disk?: Disk;
}

/** Work kept from edit to edit, by window and journal. */
interface KeptWork {
  write(windowId: string, journal: string, entry: JournalEntry): Promise<Result<null>>;
  close(windowId: string, journal: string): Promise<Result<null>>;
  list(windowId: string, journal: string): Promise<Result<readonly Recovery[]>>;
  read(windowId: string, id: string): Promise<Result<RecoveredWork>>;
  drop(windowId: string, id: string): Promise<Result<null>>;
}

/** See the head of this file. */
export interface Keeping {
  readonly files: ProjectFiles;
  readonly work: KeptWork;
  heard(windowId: string): void;
  closeWindow(windowId: string): Promise<void>;
  close(): Promise<void>;
}

interface Parts {
  readonly table: FileTable;
  readonly disk: Disk;
  readonly mark: ProcessMark;
  readonly windows: Windows;
  readonly locks: Locks;
  readonly known: VersionsByWindow;
}

/** Puts it together; nothing is open yet. */
export function createKeeping(places: KeepingPlaces): Keeping {
  const { table, disk = realDisk } = places;
  const mark = ownMark();
  const windows = createWindows(places.quietAfterMs ?? null);
  const tidy = createTidy(disk);
  const locks = createLocks({ windows, disk, mark, taken: tidy.taken });
  const known = createVersions();
  const journals = places.stateFolder
    ? createJournals({ folder: join(places.stateFolder, 'journals'), mark, disk })
    : null;
  const files = createProjectFiles({
    table,
    locks,
    disk,
    known,
    written: createVersions(),
    saving: (windowId, text) => journals?.saving(windowId, text) ?? (() => undefined),
    tidy: tidy.tidy,
  });
  return {
    files,
    work: journals ? keptWork(journals, { table, disk, mark, windows, locks, known }) : noWork,
    heard: windows.heard,
    async closeWindow(windowId) {
      windows.closed(windowId);
      await locks.leaveAll(windowId);
    },
    async close() {
      await locks.close();
      await journals?.close();
    },
  };
}

function keptWork(journals: Journals, parts: Parts): KeptWork {
  const { table, known } = parts;
  const recoveries = createRecoveries({ ...parts, journals });
  return {
    async write(windowId, journal, entry) {
      if (isOthers(windowId, journal, journals, parts.windows)) return fail(recoveryInUse);
      const path = entry.handle === null ? null : table.pathOf(entry.handle);
      const file = path?.ok ? path.value : null;
      return journals.write(windowId, journal, {
        ...entry,
        path: file,
        base: file === null ? null : known.get(windowId, file),
      });
    },
    async close(windowId, journal) {
      if (isOthers(windowId, journal, journals, parts.windows)) return fail(recoveryInUse);
      await journals.remove(journal);
      return ok(null);
    },
    ...recoveries,
  };
}

/** Whether another window that is there writes this journal. */
function isOthers(windowId: string, journal: string, journals: Journals, windows: Windows): boolean {
  const writer = journals.writerOf(journal);
  return writer !== null && writer !== windowId && windows.isThere(writer) === true;
}

/** Where there is no folder to keep work in. */
const noWork: KeptWork = {
  write: async () => ok(null),
  close: async () => ok(null),
  list: async () => ok([]),
  read: async () => fail(recoveryUnknown),
  drop: async () => ok(null),
};
