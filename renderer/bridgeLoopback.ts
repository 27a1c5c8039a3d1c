/** The window's calls over the loopback host: files by its calls, dialogs by the browser's own means. */

import { ok, type Result } from '../core/index.ts';
import type { Argument, Bridge, FileChannel, HostResults, SavedFile } from './bridge.ts';
import { bytesOf, pickText, readFile, saveDownload } from './bridgeFiles.ts';

/** Asks the host one thing. */
export type Ask = <C extends FileChannel>(channel: C, argument: Argument<C>) => Promise<Result<HostResults[C]>>;

let warnBeforeUnload: ((event: BeforeUnloadEvent) => void) | null = null;

function setUnloadWarning(edited: boolean): void {
  if (warnBeforeUnload) window.removeEventListener('beforeunload', warnBeforeUnload);
  warnBeforeUnload = edited ? (event) => event.preventDefault() : null;
  if (warnBeforeUnload) window.addEventListener('beforeunload', warnBeforeUnload);
}

async function download(name: string, data: Uint8Array | string): Promise<Result<SavedFile>> {
  saveDownload(name, bytesOf(data));
  return { ok: true, value: { handle: null, path: null, name, version: null } };
}

/** A file without a place of its own, as the browser hands one over. */
const loose = (picked: { name: string; text: string }) => ({
  handle: null,
  path: null,
  version: null,
  holder: null,
  ...picked,
});

/** What the browser does itself. */
const ownCalls = {
  openProject: async () => {
    const picked = await pickText('.augerwright,.json,application/json');
    return picked.ok ? ok(picked.value && loose(picked.value)) : picked;
  },
  openDropped: async (file: File) => {
    const read = await readFile(file);
    return read.ok ? ok(loose(read.value)) : read;
  },
  saveProjectAs: (text: string, suggestedName: string) => download(suggestedName, text),
  importText: (kind: 'csv' | 'json') => pickText(`.${kind}`),
  exportFile: download,
  printReport: async () => {
    window.print();
    return { ok: true, value: null } as const;
  },
  setEdited: setUnloadWarning,
  setMenu: () => undefined,
  // without an opener the new window shares no storage with this one, and so is a window of its own to the host
  newWindow: () => void window.open(document.baseURI, '_blank', 'noopener'),
  showLogFolder: () => undefined,
  closeWindow: () => window.close(),
  onCommand: () => () => undefined,
  onSaveAndClose: () => () => undefined,
};

/** Bridge over a host that answers calls without dialogs. */
export function bridgeOverCalls(ask: Ask): Bridge {
  return {
    host: 'loopback',
    platform: 'browser',
    readStartProject: () => ask('readStartProject', null),
    listExamples: () => ask('listExamples', null),
    readExample: (id) => ask('readExample', { id }),
    listMaterials: () => ask('listMaterials', null),
    readMaterial: (id) => ask('readMaterial', { id }),
    listRecent: () => ask('listRecent', null),
    openRecent: (handle) => ask('openRecent', { handle }),
    saveProject: ({ handle, name, text, version, evenIfChanged }) =>
      handle === null ? download(name, text) : ask('saveProject', { handle, text, version, evenIfChanged }),
    lookAtFile: (handle, version) => ask('lookAtFile', { handle, version }),
    takeOverFile: (handle) => ask('takeOverFile', { handle }),
    leaveFile: (handle) => ask('leaveFile', { handle }),
    openPrevious: (handle) => ask('openPrevious', { handle }),
    writeJournal: (journal, entry) => ask('writeJournal', { journal, entry }),
    closeJournal: (journal) => ask('closeJournal', { journal }),
    listRecoveries: (journal) => ask('listRecoveries', { journal }),
    readRecovery: (id) => ask('readRecovery', { id }),
    dropRecovery: (id) => ask('dropRecovery', { id }),
    readAbout: () => ask('readAbout', null),
    logFault: (message, where) => ask('logFault', { message, where }),
    ...ownCalls,
  };
}
