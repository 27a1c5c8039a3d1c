/** Stands in for Electron: keeps what our modules hand to it, so that tests can call it back. */

import { EventEmitter } from 'node:events';
import { vi } from 'vitest';
import { type FakeContents, fakeContents } from './fakeContents.ts';

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
export const webUtils = { getPathForFile: vi.fn((file: { path?: string }) => file.path ?? '') };

/** Window that records its options and never opens; tests emit what the system would. */
export class BrowserWindow extends EventEmitter {
  static made: BrowserWindow[] = [];
  readonly webContents: FakeContents = fakeContents();
  readonly loaded: string[] = [];
  readonly options: { readonly [name: string]: unknown };
  private gone = false;
  constructor(options: { readonly [name: string]: unknown }) {
    super();
    this.options = options;
    BrowserWindow.made.push(this);
  }
  show = vi.fn();
  focus = vi.fn();
  restore = vi.fn();
  maximize = vi.fn();
  setMenu = vi.fn();
  setDocumentEdited = vi.fn();
  isVisible = () => false;
  isMinimized = () => false;
  isMaximized = () => false;
  isFocused = vi.fn(() => true);
  isDestroyed = () => this.gone;
  getBounds = vi.fn(() => ({ x: 10, y: 20, width: 1000, height: 700 }));
  getNormalBounds = () => this.getBounds();
  async loadURL(address: string) {
    this.loaded.push(address);
  }
  /** As a person closes it: whoever prevents it, keeps it. */
  close() {
    const event = { preventDefault: vi.fn() };
    this.emit('close', event);
    if (event.preventDefault.mock.calls.length === 0) this.destroy();
  }
  destroy() {
    if (this.gone) return;
    this.gone = true;
    this.emit('closed');
  }
}

/** Answers each dialog with the number of a button; tests set it. */
export const dialog = {
  showMessageBox: vi.fn(async (..._given: unknown[]) => ({ response: 0 })),
  showErrorBox: vi.fn(),
  showOpenDialog: vi.fn(async () => ({ canceled: true, filePaths: [] as string[] })),
  showSaveDialog: vi.fn(async () => ({ canceled: true, filePath: '' })),
};

export const Menu = { buildFromTemplate: vi.fn((template: unknown) => template), setApplicationMenu: vi.fn() };
export const shell = { openPath: vi.fn(async (_path: string) => '') };
export const nativeTheme = { shouldUseDarkColors: false };

const display = { id: 1, workArea: { x: 0, y: 0, width: 1920, height: 1040 } };
export const screen = {
  getPrimaryDisplay: () => display,
  getAllDisplays: () => [display],
  getDisplayMatching: () => display,
};

/** The application; tests emit what the system would. */
export const app = Object.assign(new EventEmitter(), {
  isPackaged: false,
  getPath: (name: string) => `/stub/${name}`,
  isReady: () => true,
  quit: vi.fn(),
});
