/** The host's calls that need no dialog: the same for the desktop windows and for the loopback host. */

import { resolve } from 'node:path';
import { ok, type Result } from '../../core/index.ts';
import type { FileChannel, HostApi, OpenedProject, SavedFile } from '../contract.ts';
import { demoId, listExamples, readExample } from './examples.ts';
import { createFileTable, type FileTable } from './fileTable.ts';
import { type AboutPlaces, readAbout } from './keep/about.ts';
import type { Disk } from './keep/disk.ts';
import { createKeeping, type Keeping } from './keep/keeping.ts';
import { listMaterials, readMaterial } from './materials.ts';
import { createRecentFiles, type RecentFiles } from './recentFiles.ts';

/** Where the host finds its files. */
export interface HostPlaces {
  readonly examplesFolder: string;
  readonly materialsFolder: string;
  /** File named on the command line, or null to start with the demo. */
  readonly startPath: string | null;
  /** Where the list of recent files is kept, or null to keep none. */
  readonly recentListPath: string | null;
  /** Folder of the program's own, where journals are kept; null or left out: none are. */
  readonly stateFolder?: string | null;
  /** Left out: the about box knows no version and no notices. */
  readonly about?: AboutPlaces;
  /** Takes a sentence for the log; left out: nothing is logged. */
  readonly log?: (message: string) => void;
  /** Silence after which a window may be gone, ms; left out where every window is told to be closed. */
  readonly quietAfterMs?: number;
  /** The file system; left out: the real one. */
  readonly disk?: Disk;
}

/** The services, and the tables the dialogs share with them. */
export interface Host {
  /** The calls of one window; the shell, or its page, gave it that name. */
  apiFor(windowId: string): HostApi<FileChannel>;
  /** Opens a path that the person chose, for a window: takes its lock, remembers it as recent. */
  open(windowId: string, path: string): Promise<Result<OpenedProject>>;
  /** Saves a project where the person has just chosen to, for a window: takes its lock, remembers it as recent. */
  saveAs(windowId: string, path: string, text: string): Promise<Result<SavedFile>>;
  readonly table: FileTable;
  readonly recent: RecentFiles;
  /** The window is gone: its files are free for others, what its journal holds may be recovered. */
  closeWindow(windowId: string): Promise<void>;
  /** The program ends: every file is left. */
  close(): Promise<void>;
}

/** Builds the services over a set of places. */
export function createHost(places: HostPlaces): Host {
  const table = createFileTable();
  const recent = createRecentFiles(places.recentListPath, table);
  const keeping = createKeeping({ ...places, table });
  const { files } = keeping;
  const remembered = async <T extends OpenedProject | SavedFile>(result: Result<T>): Promise<Result<T>> => {
    if (result.ok && result.value.path !== null) await recent.remember(result.value.path);
    return result;
  };
  const host: Host = {
    apiFor: (windowId) => callsOf(windowId, { places, host, keeping }),
    async open(windowId, path) {
      keeping.heard(windowId);
      return remembered(await files.open(windowId, resolve(path)));
    },
    async saveAs(windowId, path, text) {
      keeping.heard(windowId);
      return remembered(await files.saveAs(windowId, resolve(path), text));
    },
    table,
    recent,
    closeWindow: (windowId) => keeping.closeWindow(windowId),
    close: () => keeping.close(),
  };
  return host;
}

interface Services {
  readonly places: HostPlaces;
  readonly host: Host;
  readonly keeping: Keeping;
}

/** The calls of one window; each of them tells that the window is there. */
function callsOf(windowId: string, services: Services): HostApi<FileChannel> {
  const calls = { ...shippedCalls(windowId, services), ...keepingCalls(windowId, services) };
  const noted = Object.entries(calls).map(([name, call]) => [
    name,
    (argument: never) => {
      services.keeping.heard(windowId);
      return (call as (argument: never) => unknown)(argument);
    },
  ]);
  return Object.fromEntries(noted) as HostApi<FileChannel>;
}

function shippedCalls(windowId: string, { places, host }: Services) {
  return {
    readStartProject: () =>
      places.startPath === null ? readExample(places.examplesFolder, demoId) : host.open(windowId, places.startPath),
    listExamples: () => listExamples(places.examplesFolder),
    readExample: ({ id }) => readExample(places.examplesFolder, id),
    listMaterials: () => listMaterials(places.materialsFolder),
    readMaterial: ({ id }) => readMaterial(places.materialsFolder, id),
    listRecent: async () => ok(await host.recent.list()),
    openRecent: async ({ handle }) => {
      const path = host.table.pathOf(handle);
      return path.ok ? host.open(windowId, path.value) : path;
    },
    readAbout: async () => ok(await readAbout(places.about ?? null)),
    logFault: async ({ message, where }) => {
      places.log?.(`${where}: ${message}`);
      return ok(null);
    },
  } satisfies Partial<HostApi<FileChannel>>;
}

function keepingCalls(windowId: string, { keeping }: Services) {
  const { files, work } = keeping;
  return {
    saveProject: (asked) => files.save(windowId, asked),
    lookAtFile: (asked) => files.look(windowId, asked),
    takeOverFile: ({ handle }) => files.takeOver(windowId, handle),
    leaveFile: ({ handle }) => files.leave(windowId, handle),
    openPrevious: ({ handle }) => files.previous(handle),
    writeJournal: ({ journal, entry }) => work.write(windowId, journal, entry),
    closeJournal: ({ journal }) => work.close(windowId, journal),
    listRecoveries: ({ journal }) => work.list(windowId, journal),
    readRecovery: ({ id }) => work.read(windowId, id),
    dropRecovery: ({ id }) => work.drop(windowId, id),
  } satisfies Partial<HostApi<FileChannel>>;
}
