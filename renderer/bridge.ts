/** The only file that talks to the host: the preload script's functions, or the loopback host over fetch. */

import { fail, type Result } from '../core/index.ts';
import type {
  AboutProgram,
  Argument,
  ExampleInfo,
  FileChannel,
  FileHolder,
  FileLook,
  HostResults,
  ImportedText,
  JournalEntry,
  MaterialInfo,
  MenuGroup,
  OpenedProject,
  PreloadApi,
  RecentFile,
  RecoveredWork,
  Recovery,
  SavedFile,
} from '../electron/contract.ts';
import { electronBridge } from './bridgeElectron.ts';
import { bridgeOverCalls } from './bridgeLoopback.ts';
import { windowId } from './safekeeping/windowId.ts';

export type {
  AboutProgram,
  Argument,
  ExampleInfo,
  FileChannel,
  FileHolder,
  FileLook,
  HostResults,
  ImportedText,
  JournalEntry,
  MaterialInfo,
  MenuGroup,
  OpenedProject,
  PreloadApi,
  RecentFile,
  RecoveredWork,
  Recovery,
  SavedFile,
};

/** What is written back to a file, and over what. */
interface Saving {
  /** null asks for a place */
  readonly handle: string | null;
  /** suggested where a place is asked for */
  readonly name: string;
  readonly text: string;
  /** fingerprint of the file as this window last read or wrote it */
  readonly version: string | null;
  /** writes over what somebody else wrote since */
  readonly evenIfChanged: boolean;
}

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
  saveProject(file: Saving): Promise<Result<SavedFile | null>>;
  saveProjectAs(text: string, suggestedName: string): Promise<Result<SavedFile | null>>;
  /** How the file stands against the version this window knows. */
  lookAtFile(handle: string, version: string | null): Promise<Result<FileLook>>;
  /** Makes this window the one that writes the file. */
  takeOverFile(handle: string): Promise<Result<null>>;
  /** Tells that this window writes the file no more. */
  leaveFile(handle: string): Promise<Result<null>>;
  /** The version kept beside the file from before its latest save. */
  openPrevious(handle: string): Promise<Result<OpenedProject>>;
  /** Opens a file that was dragged into the window. */
  openDropped(file: File): Promise<Result<OpenedProject>>;
  /** Keeps the work as it is now, so that no crash takes it. */
  writeJournal(journal: string, entry: JournalEntry): Promise<Result<null>>;
  /** Forgets what was kept: it is saved, or was given up. */
  closeJournal(journal: string): Promise<Result<null>>;
  /** Work that was kept by windows that are gone. */
  listRecoveries(journal: string): Promise<Result<readonly Recovery[]>>;
  readRecovery(id: string): Promise<Result<RecoveredWork>>;
  dropRecovery(id: string): Promise<Result<null>>;
  readAbout(): Promise<Result<AboutProgram>>;
  /** Writes a fault of the window to the host's log. */
  logFault(message: string, where: string): Promise<Result<null>>;
  /** Opens another window of the program. */
  newWindow(): void;
  /** Shows the folder of the log; a host without one lets it be. */
  showLogFolder(): void;
  /** Closes the window without a further question. */
  closeWindow(): void;
  /** Hears that the window is to save and then to close; answers with the function that stops it. */
  onSaveAndClose(listener: () => void): () => void;
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

/** Short calls that are made when a page is left, and have to arrive all the same. */
const parting: ReadonlySet<FileChannel> = new Set(['leaveFile', 'closeJournal', 'logFault']);

/** Asks the loopback host one thing; a host that is gone is an issue like any other. */
async function ask<C extends FileChannel>(
  base: string,
  channel: C,
  argument: Argument<C>,
): Promise<Result<HostResults[C]>> {
  try {
    const answer = await fetch(new URL(`api/${channel}`, base), {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', 'X-Augerwright-Window': windowId() },
      body: JSON.stringify(argument),
      keepalive: parting.has(channel),
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

/** Bridge over the loopback host; `base` is the page's address up to its last slash. Dialogs are the browser's own. */
export const loopbackBridge = (base: string): Bridge =>
  bridgeOverCalls((channel, argument) => ask(base, channel, argument));

let current: Bridge | null = null;

/** The bridge in use: the one set by `setBridge`, else the host's that serves this window. */
export function getBridge(): Bridge {
  current ??= window.augerwright
    ? electronBridge(window.augerwright)
    : loopbackBridge(new URL('./', document.baseURI).href);
  return current;
}

/** Puts another bridge in place; null goes back to the host's. A seam for tests. */
export function setBridge(bridge: Bridge | null): void {
  current = bridge;
}
