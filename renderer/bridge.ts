/** The only file that talks to the host: the preload script's functions, or the loopback host over fetch. */

import { fail, type Result } from '../core/index.ts';
import type {
  Argument,
  ExampleInfo,
  FileChannel,
  HostResults,
  ImportedText,
  MaterialInfo,
  MenuGroup,
  OpenedProject,
  PreloadApi,
  RecentFile,
  SavedFile,
} from '../electron/contract.ts';
import { pickText, saveDownload } from './bridgeFiles.ts';

export type { ExampleInfo, ImportedText, MaterialInfo, MenuGroup, OpenedProject, RecentFile, SavedFile };

/** What the window can ask for, whichever host serves it. Null inside a result means that the person cancelled. */
export interface Bridge {
  /** Who serves the window: 'memory' is a stand-in for tests. */
  readonly host: 'electron' | 'loopback' | 'memory';
  /** 'darwin', 'win32', 'linux' ... as far as it is known. */
  readonly platform: string;
  /** The project to show first: the demo, or the file named on the command line. */
  readStartProject(): Promise<Result<OpenedProject>>;
  listExamples(): Promise<Result<readonly ExampleInfo[]>>;
  readExample(id: string): Promise<Result<OpenedProject>>;
  /** Materials of the library that ships with the program. */
  listMaterials(): Promise<Result<readonly MaterialInfo[]>>;
  readMaterial(id: string): Promise<Result<ImportedText>>;
  listRecent(): Promise<Result<readonly RecentFile[]>>;
  openRecent(handle: string): Promise<Result<OpenedProject>>;
  /** Lets the person choose a project file. */
  openProject(): Promise<Result<OpenedProject | null>>;
  /** Writes back to the file of that handle; a null handle asks for a place, as `saveProjectAs` does. */
  saveProject(file: { handle: string | null; name: string; text: string }): Promise<Result<SavedFile | null>>;
  saveProjectAs(text: string, suggestedName: string): Promise<Result<SavedFile | null>>;
  /** Lets the person choose a text file to import, such as a bench log. */
  importText(kind: 'csv' | 'json'): Promise<Result<ImportedText | null>>;
  /** Saves a finished file (mesh, drawing, table) where the person wants it. */
  exportFile(suggestedName: string, data: Uint8Array | string): Promise<Result<SavedFile | null>>;
  /** Makes a PDF of the window as its print styles lay it out. */
  printReport(suggestedName: string): Promise<Result<SavedFile | null>>;
  /** Tells the host whether closing would lose work. */
  setEdited(edited: boolean): void;
  /** Tells the host what its menu is to show; a host without a menu lets it be. */
  setMenu(groups: readonly MenuGroup[]): void;
  /** Hears the ids of commands chosen in the host's menu; answers with the function that stops it. */
  onCommand(listener: (commandId: string) => void): () => void;
}

declare global {
  interface Window {
    readonly augerwright?: PreloadApi;
  }
}

const bytesOf = (data: Uint8Array | string): Uint8Array<ArrayBuffer> =>
  typeof data === 'string' ? new TextEncoder().encode(data) : new Uint8Array(data);

/** Bridge over the functions of the preload script. */
export function electronBridge(api: PreloadApi): Bridge {
  return {
    host: 'electron',
    platform: api.platform,
    readStartProject: () => api.readStartProject(null),
    listExamples: () => api.listExamples(null),
    readExample: (id) => api.readExample({ id }),
    listMaterials: () => api.listMaterials(null),
    readMaterial: (id) => api.readMaterial({ id }),
    listRecent: () => api.listRecent(null),
    openRecent: (handle) => api.openRecent({ handle }),
    openProject: () => api.openProject(null),
    saveProject: ({ handle, name, text }) =>
      handle === null ? api.saveProjectAs({ text, suggestedName: name }) : api.saveProject({ handle, text }),
    saveProjectAs: (text, suggestedName) => api.saveProjectAs({ text, suggestedName }),
    importText: (kind) => api.importText({ kind }),
    exportFile: (suggestedName, data) => api.exportFile({ suggestedName, data: bytesOf(data) }),
    printReport: (suggestedName) => api.printReport({ suggestedName }),
    setEdited: (edited) => void api.setEdited({ edited }),
    setMenu: (groups) =>
      void api.setMenu({
        groups: groups.map((group) => ({ ...group, items: group.items.map((item) => ({ ...item })) })),
      }),
    onCommand: (listener) => api.onCommand(listener),
  };
}

/** Asks the loopback host one thing; a host that is gone is an issue like any other. */
async function ask<C extends FileChannel>(
  base: string,
  channel: C,
  argument: Argument<C>,
): Promise<Result<HostResults[C]>> {
  try {
    const answer = await fetch(new URL(`api/${channel}`, base), {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify(argument),
    });
    return (await answer.json()) as Result<HostResults[C]>;
  } catch {
    return fail({
      path: [],
      code: 'host-unreachable',
      message: 'The program that serves this window does not answer.',
      remedy: 'Save a copy with the browser, then start Augerwright again.',
    });
  }
}

let warnBeforeUnload: ((event: BeforeUnloadEvent) => void) | null = null;

function setUnloadWarning(edited: boolean): void {
  if (warnBeforeUnload) window.removeEventListener('beforeunload', warnBeforeUnload);
  warnBeforeUnload = edited ? (event) => event.preventDefault() : null;
  if (warnBeforeUnload) window.addEventListener('beforeunload', warnBeforeUnload);
}

/** Bridge over the loopback host; `base` is the page's address up to its last slash. Dialogs are the browser's own. */
export function loopbackBridge(base: string): Bridge {
  const download = async (name: string, data: Uint8Array | string): Promise<Result<SavedFile>> => {
    saveDownload(name, bytesOf(data));
    return { ok: true, value: { handle: null, path: null, name } };
  };
  return {
    host: 'loopback',
    platform: 'browser',
    readStartProject: () => ask(base, 'readStartProject', null),
    listExamples: () => ask(base, 'listExamples', null),
    readExample: (id) => ask(base, 'readExample', { id }),
    listMaterials: () => ask(base, 'listMaterials', null),
    readMaterial: (id) => ask(base, 'readMaterial', { id }),
    listRecent: () => ask(base, 'listRecent', null),
    openRecent: (handle) => ask(base, 'openRecent', { handle }),
    openProject: async () => {
      const picked = await pickText('.json,application/json');
      return { ok: true, value: picked && { handle: null, path: null, ...picked } };
    },
    saveProject: ({ handle, name, text }) =>
      handle === null ? download(name, text) : ask(base, 'saveProject', { handle, text }),
    saveProjectAs: (text, suggestedName) => download(suggestedName, text),
    importText: async (kind) => ({ ok: true, value: await pickText(`.${kind}`) }),
    exportFile: (suggestedName, data) => download(suggestedName, data),
    printReport: async () => {
      window.print();
      return { ok: true, value: null };
    },
    setEdited: setUnloadWarning,
    setMenu: () => undefined,
    onCommand: () => () => undefined,
  };
}

/** Bridge that serves texts from memory and keeps what is saved; for tests, where there is no host. */
export function memoryBridge(
  start: OpenedProject,
  examples: readonly (ExampleInfo & { text: string })[] = [],
  materials: readonly (MaterialInfo & { text: string })[] = [],
) {
  const saved = new Map<string, Uint8Array>();
  const keep = async (name: string, data: Uint8Array | string): Promise<Result<SavedFile>> => {
    saved.set(name, bytesOf(data));
    return { ok: true, value: { handle: null, path: null, name } };
  };
  const bridge: Bridge = {
    host: 'memory',
    platform: 'browser',
    readStartProject: async () => ({ ok: true, value: start }),
    listExamples: async () => ({ ok: true, value: examples.map(({ id, title, note }) => ({ id, title, note })) }),
    readExample: async (id) => {
      const text = examples.find((example) => example.id === id)?.text ?? '';
      return { ok: true, value: { handle: null, path: null, name: `${id}.json`, text } };
    },
    listMaterials: async () => ({ ok: true, value: materials.map(({ id, title, note }) => ({ id, title, note })) }),
    readMaterial: async (id) => {
      const text = materials.find((material) => material.id === id)?.text ?? '';
      return { ok: true, value: { name: `${id}.json`, text } };
    },
    listRecent: async () => ({ ok: true, value: [] }),
    openRecent: async () => ({ ok: true, value: start }),
    openProject: async () => ({ ok: true, value: null }),
    saveProject: ({ name, text }) => keep(name, text),
    saveProjectAs: (text, name) => keep(name, text),
    importText: async () => ({ ok: true, value: null }),
    exportFile: keep,
    printReport: async () => ({ ok: true, value: null }),
    setEdited: () => undefined,
    setMenu: () => undefined,
    onCommand: () => () => undefined,
  };
  return { bridge, saved };
}

let current: Bridge | null = null;

/** The bridge in use: the one set by `setBridge`, else the host's that serves this window. */
export function getBridge(): Bridge {
  current ??= window.augerwright
    ? electronBridge(window.augerwright)
    : loopbackBridge(new URL('./', document.baseURI).href);
  return current;
}

/** Puts another bridge in place; null goes back to the host's. */
export function setBridge(bridge: Bridge | null): void {
  current = bridge;
}
