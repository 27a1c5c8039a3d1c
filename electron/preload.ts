/** Runs in the sandbox before the page: puts the contract's functions on the window, and nothing more. */

import { contextBridge, ipcRenderer } from 'electron';
import type { Channel, HostApi, PreloadApi } from './contract.ts';

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
  openProject: true,
  saveProjectAs: true,
  importText: true,
  exportFile: true,
  printReport: true,
  setEdited: true,
  setMenu: true,
} satisfies Record<Channel, true>;

const entries = Object.keys(calls).map((name) => [name, (argument: unknown) => ipcRenderer.invoke(name, argument)]);

const api: PreloadApi = {
  ...(Object.fromEntries(entries) as HostApi),
  platform: process.platform,
  onCommand: (listener) => {
    const hear = (_event: unknown, commandId: unknown) => {
      if (typeof commandId === 'string') listener(commandId);
    };
    ipcRenderer.on('command', hear);
    return () => ipcRenderer.removeListener('command', hear);
  },
};

contextBridge.exposeInMainWorld('augerwright', api);
