/** Stands in for Electron: keeps what our modules hand to it, so that tests can call it back. */

import { vi } from 'vitest';

type Handler = (...args: never[]) => unknown;

/** Handlers put on the main process's channels. */
export const ipcHandlers = new Map<string, Handler>();
export const ipcMain = { handle: (name: string, handler: Handler) => void ipcHandlers.set(name, handler) };

/** What the preload script exposed, by key. */
export const exposed = new Map<string, unknown>();
export const contextBridge = { exposeInMainWorld: (key: string, api: unknown) => void exposed.set(key, api) };

export const ipcRenderer = {
  invoke: vi.fn(async () => ({ ok: true, value: null })),
  on: vi.fn(),
  removeListener: vi.fn(),
};

/** Window that records its options and never opens. */
export class BrowserWindow {
  static readonly made: unknown[] = [];
  constructor(options: unknown) {
    BrowserWindow.made.push(options);
  }
  once = vi.fn();
}

export const dialog = {};
