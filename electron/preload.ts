/** Runs in the sandbox before the page: puts the contract's functions on the window, and nothing more. */

import { contextBridge, ipcRenderer, webUtils } from 'electron';
import type { Result } from '../core/index.ts';
import type { Channel, HostApi, OpenedProject, PreloadApi } from './contract.ts';

/** Every call by name. Written out because the sandboxed script should not carry the argument checks. */
const calls = {
  readStartProject: true,
  listExamples: true,
  readExample: true,
  listMaterials: true,
  readMaterial: true,
  listRecent: true,
  openRecent: true,
  saveProject: true,
  lookAtFile: true,
  takeOverFile: true,
  leaveFile: true,
  openPrevious: true,
  writeJournal: true,
  closeJournal: true,
  listRecoveries: true,
  readRecovery: true,
  dropRecovery: true,
  readAbout: true,
  logFault: true,
  openProject: true,
  saveProjectAs: true,
  importText: true,
  exportFile: true,
  printReport: true,
  newWindow: true,
  showLogFolder: true,
  closeWindow: true,
  setEdited: true,
  setMenu: true,
} satisfies Record<Exclude<Channel, 'openDropped'>, true>;

const entries = Object.keys(calls).map((name) => [name, (argument: unknown) => ipcRenderer.invoke(name, argument)]);

/** Hears a channel of the host's; answers with the function that stops it. The page never sees the event itself. */
function hear(channel: string, listener: (word: unknown) => void): () => void {
  const heard = (_event: unknown, word: unknown) => listener(word);
  ipcRenderer.on(channel, heard);
  return () => ipcRenderer.removeListener(channel, heard);
}

const api: PreloadApi = {
  ...(Object.fromEntries(entries) as Omit<HostApi, 'openDropped'>),
  platform: process.platform,
  // Only a file that the person dragged in has a path; one that a script made up has none, which the host refuses.
  openDropped: (file) =>
    ipcRenderer.invoke('openDropped', { path: webUtils.getPathForFile(file) }) as Promise<Result<OpenedProject>>,
  onCommand: (listener) => hear('command', (id) => typeof id === 'string' && listener(id)),
  onSaveAndClose: (listener) => hear('save-and-close', () => listener()),
};

contextBridge.exposeInMainWorld('augerwright', api);
