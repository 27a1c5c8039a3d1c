/** What keeps work safe between window and host: versions of files, who writes them, and work kept from edit to edit. */

import { z } from 'zod';

/** Longest text of one field that was typed but not yet taken, characters. */
const longestDraft = 2_000;
/** Most fields with such texts. */
const mostDrafts = 200;

/** Fingerprint of a file's bytes as the host last read or wrote them: SHA-256, 64 hex digits. */
export const fileVersion = z.string().regex(/^[a-f0-9]{64}$/);

/** Name of the journal of one window: 32 hex digits that the window draws and keeps over a reload. */
export const journalId = z.string().regex(/^[a-f0-9]{32}$/);

/** Another window or program that has the file open to write it. */
export interface FileHolder {
  /** 'window': another window of this program; 'program': another start of it, here or on another machine. */
  readonly kind: 'window' | 'program';
  /** Name of the machine it runs on. */
  readonly machine: string;
  /** When it took the file, ISO 8601. */
  readonly since: string;
  /** False where that program is known to be gone, so that the file may be taken over without doubt; null: unknown. */
  readonly alive: boolean | null;
}

/** How a file stands against the version a window knows. */
export interface FileLook {
  /** 'gone': no file there any more; 'unreachable': its folder or drive does not answer. */
  readonly state: 'same' | 'changed' | 'gone' | 'unreachable';
  /** Version on disk now; null where there is none to be read. */
  readonly version: string | null;
  /** Who else writes it; null where nobody does. */
  readonly holder: FileHolder | null;
}

/** One entry of a window's journal: the whole project after an edit, and what is typed but not taken. */
export const journalEntry = z.strictObject({
  /** handle of the project's file; null where it has none */
  handle: z
    .string()
    .regex(/^[a-f0-9]{32}$/)
    .nullable(),
  /** name of the project's file, or of the project where it has no file */
  name: z.string().min(1).max(200),
  /** the project as its file is written */
  text: z.string().max(16 * 1024 * 1024),
  /** name of the edit, such as "Root Ø end" */
  step: z.string().max(200),
  /** texts in fields by the field's place */
  drafts: z
    .record(z.string().max(300), z.string().max(longestDraft))
    .refine((d) => Object.keys(d).length <= mostDrafts),
});

/** See `journalEntry`. */
export type JournalEntry = z.infer<typeof journalEntry>;

/** Work found in a journal whose window is gone. */
export interface Recovery {
  readonly id: string;
  readonly name: string;
  /** Path of the project's file, for display; null where it had none. */
  readonly path: string | null;
  /** Time of the last entry, ISO 8601. */
  readonly at: string;
  /** Number of edits since the file was last saved. */
  readonly edits: number;
}

/** Such work, read. */
export interface RecoveredWork extends Recovery {
  readonly text: string;
  readonly drafts: Readonly<Record<string, string>>;
  /** Names of the edits since the last save, oldest first, the latest hundred. */
  readonly steps: readonly string[];
  /** Handle of the project's file, admitted anew; null where it had none or it is gone. */
  readonly handle: string | null;
  /** The file as it is now; null where there is none. */
  readonly fileText: string | null;
  readonly fileVersion: string | null;
  /** Whether the file was changed by somebody since this work began. */
  readonly fileChanged: boolean;
  /** See `FileHolder`. */
  readonly holder: FileHolder | null;
}

/** Versions and licences, for the about box. */
export interface AboutProgram {
  readonly version: string;
  /** What it runs on, such as Electron, Chromium, Node. */
  readonly runtime: readonly { readonly name: string; readonly version: string }[];
  readonly licence: string;
  /** Licence notices of everything that ships with the program. */
  readonly notices: string;
  /** Folder of the log; null where none is written. */
  readonly logFolder: string | null;
}
