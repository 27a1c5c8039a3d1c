/** The one table of what a window may ask of its host: both ends take their types from here. */

import { z } from 'zod';
import type { Result } from '../core/index.ts';
import {
  type AboutProgram,
  type FileHolder,
  type FileLook,
  fileVersion,
  journalEntry,
  journalId,
  type RecoveredWork,
  type Recovery,
} from './safekeeping.ts';

export type { AboutProgram, FileHolder, FileLook, JournalEntry, RecoveredWork, Recovery } from './safekeeping.ts';

/** Longest project text that crosses between window and host, characters. */
export const maxProjectLength = 16 * 1024 * 1024;
/** Largest exported file, bytes. */
const maxExportBytes = 512 * 1024 * 1024;

/** A project's text and where it came from. */
export interface OpenedProject {
  /** Name the host knows the file by; null where it cannot be written back (an example, or a browser's file input). */
  readonly handle: string | null;
  /** Path for display only, or null where there is none. */
  readonly path: string | null;
  /** File name without folders. */
  readonly name: string;
  readonly text: string;
  /** Fingerprint of the file as read; null where the handle is. */
  readonly version: string | null;
  /** Somebody else who writes the file: then saving is refused until it is taken over or saved elsewhere. */
  readonly holder: FileHolder | null;
}

/** What a save leaves behind; a null handle means that the browser took it as a download. */
export interface SavedFile {
  readonly handle: string | null;
  readonly path: string | null;
  readonly name: string;
  /** Fingerprint of the file as written; null where the handle is. */
  readonly version: string | null;
}

/** A project that ships with the program. */
export interface ExampleInfo {
  readonly id: string;
  readonly title: string;
  readonly note: string;
}

/** A material of the library that ships with the program. */
export interface MaterialInfo {
  readonly id: string;
  readonly title: string;
  readonly note: string;
}

/** A file opened or saved before, newest first in the list. */
export interface RecentFile {
  readonly handle: string;
  readonly path: string;
  readonly name: string;
}

/** Text read for import, such as a bench log or a material of the library. */
export interface ImportedText {
  readonly name: string;
  readonly text: string;
}

/** One item of the host's menu. */
export interface MenuItem {
  readonly id: string;
  readonly label: string;
  /** such as Mod+Shift+S, or null */
  readonly keys: string | null;
  readonly enabled: boolean;
}

/** Items under one head of the menu. */
export interface MenuGroup {
  readonly id: string;
  readonly label: string;
  readonly items: readonly MenuItem[];
}

const handle = z.string().regex(/^[a-f0-9]{32}$/);
const text = z.string().max(maxProjectLength);
const fileName = z
  .string()
  .min(1)
  .max(120)
  .regex(/^[^/\\:*?"<>|\p{Cc}]+$/u)
  .refine((name) => !/^\.+$/.test(name));
const none = z.null();
const shippedId = z.string().regex(/^[a-z0-9][a-z0-9-]{0,59}$/);

const commandId = z.string().regex(/^[a-z][a-z0-9-]{0,39}$/);
const label = z
  .string()
  .min(1)
  .max(80)
  .regex(/^\P{Cc}+$/u);
const menuItem = z.strictObject({
  id: commandId,
  label,
  keys: z
    .string()
    .regex(/^(?:(?:Mod|Shift|Alt)\+)*(?:[A-Z0-9]|F\d{1,2})$/)
    .nullable(),
  enabled: z.boolean(),
});
const menuGroup = z.strictObject({ id: commandId, label, items: z.array(menuItem).max(60) });

/** What each call accepts; the host runs these checks before anything else. */
export const argumentChecks = {
  readStartProject: none,
  listExamples: none,
  readExample: z.strictObject({ id: shippedId }),
  listMaterials: none,
  readMaterial: z.strictObject({ id: shippedId }),
  listRecent: none,
  openRecent: z.strictObject({ handle }),
  /** `version` as last read or written; `evenIfChanged` writes over what somebody else wrote since. */
  saveProject: z.strictObject({ handle, text, version: fileVersion.nullable(), evenIfChanged: z.boolean() }),
  lookAtFile: z.strictObject({ handle, version: fileVersion.nullable() }),
  takeOverFile: z.strictObject({ handle }),
  leaveFile: z.strictObject({ handle }),
  openPrevious: z.strictObject({ handle }),
  writeJournal: z.strictObject({ journal: journalId, entry: journalEntry }),
  closeJournal: z.strictObject({ journal: journalId }),
  listRecoveries: z.strictObject({ journal: journalId }),
  readRecovery: z.strictObject({ id: journalId }),
  dropRecovery: z.strictObject({ id: journalId }),
  readAbout: none,
  logFault: z.strictObject({ message: z.string().max(4_000), where: z.string().max(200) }),
  openProject: none,
  saveProjectAs: z.strictObject({ text, suggestedName: fileName }),
  importText: z.strictObject({ kind: z.enum(['csv', 'json']) }),
  exportFile: z.strictObject({
    suggestedName: fileName,
    data: z.instanceof(Uint8Array).refine((bytes) => bytes.byteLength <= maxExportBytes),
  }),
  printReport: z.strictObject({ suggestedName: fileName }),
  /** A file dragged into the window; the preload script alone learns its path. */
  openDropped: z.strictObject({ path: z.string().min(1).max(4096) }),
  newWindow: none,
  showLogFolder: none,
  /** Closes the window without a further question, as after a save that the closing asked for. */
  closeWindow: none,
  setEdited: z.strictObject({ edited: z.boolean() }),
  setMenu: z.strictObject({ groups: z.array(menuGroup).max(12) }),
} as const;

/** What each call answers; null where the person cancelled a dialog. */
export interface HostResults {
  readonly readStartProject: OpenedProject;
  readonly listExamples: readonly ExampleInfo[];
  readonly readExample: OpenedProject;
  readonly listMaterials: readonly MaterialInfo[];
  readonly readMaterial: ImportedText;
  readonly listRecent: readonly RecentFile[];
  readonly openRecent: OpenedProject;
  readonly saveProject: SavedFile;
  readonly lookAtFile: FileLook;
  readonly takeOverFile: null;
  readonly leaveFile: null;
  /** The version kept beside the file from before its latest save, without a handle. */
  readonly openPrevious: OpenedProject;
  readonly writeJournal: null;
  readonly closeJournal: null;
  readonly listRecoveries: readonly Recovery[];
  readonly readRecovery: RecoveredWork;
  readonly dropRecovery: null;
  readonly readAbout: AboutProgram;
  readonly logFault: null;
  readonly openProject: OpenedProject | null;
  readonly saveProjectAs: SavedFile | null;
  readonly importText: ImportedText | null;
  readonly exportFile: SavedFile | null;
  readonly printReport: SavedFile | null;
  readonly openDropped: OpenedProject;
  readonly newWindow: null;
  readonly showLogFolder: null;
  readonly closeWindow: null;
  readonly setEdited: null;
  readonly setMenu: null;
}

/** Name of a call. */
export type Channel = keyof typeof argumentChecks;
/** Argument of a call, as its check lets it through. */
export type Argument<C extends Channel> = z.infer<(typeof argumentChecks)[C]>;
/** Calls that need no dialog, so that the loopback host can answer them too. */
export type FileChannel =
  | 'readStartProject'
  | 'listExamples'
  | 'readExample'
  | 'listMaterials'
  | 'readMaterial'
  | 'listRecent'
  | 'openRecent'
  | 'saveProject'
  | 'lookAtFile'
  | 'takeOverFile'
  | 'leaveFile'
  | 'openPrevious'
  | 'writeJournal'
  | 'closeJournal'
  | 'listRecoveries'
  | 'readRecovery'
  | 'dropRecovery'
  | 'readAbout'
  | 'logFault';

/** One function for each call. Failures come back as issues, never as exceptions. */
export type HostApi<C extends Channel = Channel> = {
  readonly [K in C]: (argument: Argument<K>) => Promise<Result<HostResults[K]>>;
};

/** Channel on which the host sends the id of a command chosen in its menu. */
export const commandChannel = 'command';

/** Channel on which the host asks the window to save what is edited and then to close. */
export const saveAndCloseChannel = 'save-and-close';

/** What the preload script puts on the window under `augerwright`. */
export interface PreloadApi extends Omit<HostApi, 'openDropped'> {
  /** Opens a file that was dragged into the window. */
  readonly openDropped: (file: File) => Promise<Result<OpenedProject>>;
  /** Hears that the window is to save and then to close; answers with the function that stops it. */
  readonly onSaveAndClose: (listener: () => void) => () => void;
  /** Node's name of the operating system. */
  readonly platform: string;
  /** Hears the ids of menu commands; answers with the function that stops it. */
  readonly onCommand: (listener: (commandId: string) => void) => () => void;
}
