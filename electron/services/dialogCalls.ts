/** The host's calls that ask the person for a place; the dialogs themselves are handed in. */

import { basename } from 'node:path';
import { ok, type Result } from '../../core/index.ts';
import type { Channel, FileChannel, HostApi, MenuGroup, OpenedProject, SavedFile } from '../contract.ts';
import type { Host } from './host.ts';
import { readTextFile } from './textFile.ts';

/** Name and endings offered in a dialog. */
export interface FileFilter {
  readonly name: string;
  readonly extensions: readonly string[];
}

/** What the desktop shell can do; each answers a path, or null when cancelled. */
export interface Dialogs {
  pickToOpen(filter: FileFilter): Promise<string | null>;
  pickToSave(suggestedName: string, filter: FileFilter): Promise<string | null>;
  /** The window's content laid out by its print styles, as PDF. */
  pagePdf(): Promise<Uint8Array>;
  setEdited(edited: boolean): void;
  setMenu(groups: readonly MenuGroup[]): void;
}

const projectFilter: FileFilter = { name: 'Augerwright project', extensions: ['json'] };

/** The calls with dialogs, over the services' own file table. */
export function createDialogCalls(host: Host, dialogs: Dialogs): HostApi<Exclude<Channel, FileChannel>> {
  const save = async (suggestedName: string, filter: FileFilter, data: () => Promise<string | Uint8Array>) => {
    const path = await dialogs.pickToSave(suggestedName, filter);
    return path === null ? ok(null) : host.table.save(path, await data());
  };
  return {
    openProject: () => openProject(host, dialogs),
    saveProjectAs: async ({ text, suggestedName }) => {
      const saved: Result<SavedFile | null> = await save(suggestedName, projectFilter, async () => text);
      if (saved.ok && saved.value?.path) await host.recent.remember(saved.value.path);
      return saved;
    },
    importText: async ({ kind }) => {
      const path = await dialogs.pickToOpen({ name: kind.toUpperCase(), extensions: [kind] });
      if (path === null) return ok(null);
      const text = await readTextFile(path);
      return text.ok ? ok({ name: basename(path), text: text.value }) : text;
    },
    exportFile: ({ suggestedName, data }) => save(suggestedName, filterOf(suggestedName), async () => data),
    printReport: ({ suggestedName }) => save(suggestedName, filterOf(suggestedName), () => dialogs.pagePdf()),
    setEdited: async ({ edited }) => {
      dialogs.setEdited(edited);
      return ok(null);
    },
    setMenu: async ({ groups }) => {
      dialogs.setMenu(groups);
      return ok(null);
    },
  };
}

async function openProject(host: Host, dialogs: Dialogs): Promise<Result<OpenedProject | null>> {
  const path = await dialogs.pickToOpen(projectFilter);
  if (path === null) return ok(null);
  const opened = await host.table.open(path);
  if (opened.ok) await host.recent.remember(path);
  return opened;
}

function filterOf(name: string): FileFilter {
  const extension = name.split('.').at(-1) ?? '';
  return { name: extension.toUpperCase(), extensions: [extension] };
}
