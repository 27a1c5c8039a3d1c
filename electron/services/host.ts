/** The host's calls that need no dialog: the same for the desktop window and for the loopback host. */

import { ok, type Result } from '../../core/index.ts';
import type { FileChannel, HostApi, OpenedProject } from '../contract.ts';
import { demoId, listExamples, readExample } from './examples.ts';
import { createFileTable, type FileTable } from './fileTable.ts';
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
}

/** The services, and the tables the dialogs share with them. */
export interface Host {
  readonly api: HostApi<FileChannel>;
  readonly table: FileTable;
  readonly recent: RecentFiles;
}

/** Builds the services over a set of places. */
export function createHost(places: HostPlaces): Host {
  const table = createFileTable();
  const recent = createRecentFiles(places.recentListPath, table);
  const open = async (path: string): Promise<Result<OpenedProject>> => {
    const opened = await table.open(path);
    if (opened.ok && opened.value.path) await recent.remember(opened.value.path);
    return opened;
  };
  const api: HostApi<FileChannel> = {
    readStartProject: () =>
      places.startPath === null ? readExample(places.examplesFolder, demoId) : open(places.startPath),
    listExamples: () => listExamples(places.examplesFolder),
    readExample: ({ id }) => readExample(places.examplesFolder, id),
    listMaterials: () => listMaterials(places.materialsFolder),
    readMaterial: ({ id }) => readMaterial(places.materialsFolder, id),
    listRecent: async () => ok(await recent.list()),
    openRecent: async ({ handle }) => {
      const path = table.pathOf(handle);
      return path.ok ? open(path.value) : path;
    },
    saveProject: async ({ handle, text }) => {
      const path = table.pathOf(handle);
      return path.ok ? table.save(path.value, text) : path;
    },
  };
  return { api, table, recent };
}
