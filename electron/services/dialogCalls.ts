/** The host's calls that ask the person for a place or the shell for a deed; the dialogs themselves are handed in. */

import { basename, extname, isAbsolute } from 'node:path';
import { fail, ok, type Result } from '../../core/index.ts';
import type { Channel, FileChannel, HostApi, MenuGroup, SavedFile } from '../contract.ts';
import type { Host } from './host.ts';
import { readTextFile } from './textFile.ts';

/** Name and endings offered in a dialog. */
export interface FileFilter {
  readonly name: string;
  readonly extensions: readonly string[];
}

/** What the desktop shell can do; a picker answers a path, or null when cancelled. */
export interface Dialogs {
  pickToOpen(filter: FileFilter): Promise<string | null>;
  pickToSave(suggestedName: string, filter: FileFilter): Promise<string | null>;
  /** The window's content laid out by its print styles, as PDF. */
  pagePdf(): Promise<Uint8Array>;
  setEdited(edited: boolean): void;
  setMenu(groups: readonly MenuGroup[]): void;
  /** Opens one more window. */
  newWindow(): void;
  /** Shows the folder of the log; false where the system cannot. */
  showLogFolder(): Promise<boolean>;
  /** Closes the window without a question. */
  closeWindow(): void;
}

/** Endings of project files: the one that packed builds claim and new files get, and that of files written by hand. */
const projectEndings = ['augerwright', 'json'];
const projectFilter: FileFilter = { name: 'Augerwright project', extensions: projectEndings };

/** The calls with dialogs for one window, over the host's own files. */
export function createDialogCalls(
  host: Pick<Host, 'open' | 'saveAs' | 'table'>,
  windowId: string,
  dialogs: Dialogs,
): HostApi<Exclude<Channel, FileChannel>> {
  const save = async (suggestedName: string, data: () => Promise<Uint8Array>): Promise<Result<SavedFile | null>> => {
    const path = await dialogs.pickToSave(suggestedName, filterOf(suggestedName));
    return path === null ? ok(null) : host.table.save(path, await data());
  };
  return {
    openProject: async () => {
      const path = await dialogs.pickToOpen(projectFilter);
      return path === null ? ok(null) : host.open(windowId, path);
    },
    openDropped: async ({ path }) => (isProjectPath(path) ? host.open(windowId, path) : fail(notProject(path))),
    saveProjectAs: async ({ text, suggestedName }) => {
      const path = await dialogs.pickToSave(suggestedName, projectFilter);
      return path === null ? ok(null) : host.saveAs(windowId, path, text);
    },
    importText: async ({ kind }) => {
      const path = await dialogs.pickToOpen({ name: kind.toUpperCase(), extensions: [kind] });
      if (path === null) return ok(null);
      const text = await readTextFile(path);
      return text.ok ? ok({ name: basename(path), text: text.value }) : text;
    },
    exportFile: ({ suggestedName, data }) => save(suggestedName, async () => data),
    printReport: ({ suggestedName }) => save(suggestedName, () => dialogs.pagePdf()),
    ...shellCalls(dialogs),
  };
}

type ShellChannel = 'setEdited' | 'setMenu' | 'newWindow' | 'closeWindow' | 'showLogFolder';

function shellCalls(dialogs: Dialogs): HostApi<ShellChannel> {
  const done = (deed: () => void) => {
    deed();
    return Promise.resolve(ok(null));
  };
  return {
    setEdited: ({ edited }) => done(() => dialogs.setEdited(edited)),
    setMenu: ({ groups }) => done(() => dialogs.setMenu(groups)),
    newWindow: () => done(() => dialogs.newWindow()),
    closeWindow: () => done(() => dialogs.closeWindow()),
    showLogFolder: async () => ((await dialogs.showLogFolder()) ? ok(null) : fail(noLogFolder)),
  };
}

/** Whether a path is one that the dialog for projects would have let through. */
const isProjectPath = (path: string): boolean =>
  isAbsolute(path) && projectEndings.includes(extname(path).slice(1).toLowerCase());

function filterOf(name: string): FileFilter {
  const extension = name.split('.').at(-1) ?? '';
  return { name: extension.toUpperCase(), extensions: [extension] };
}

const notProject = (path: string) => ({
  path: [],
  code: 'file-not-project',
  message: 'This file is no project.',
  value: basename(path),
  allowed: `a file whose name ends in .${projectEndings.join(' or .')}`,
  remedy: 'Drag a project file into the window.',
});

const noLogFolder = {
  path: [],
  code: 'log-folder',
  message: 'The folder of the log cannot be shown.',
  remedy: 'Find its path in the box about Augerwright and open it yourself.',
};
