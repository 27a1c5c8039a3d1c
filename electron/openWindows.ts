/** The windows that are open: each with its own calls, menu and work, and how files find their way into one. */

import { basename, join } from 'node:path';
import { type App, app, type BrowserWindow, type WebContents } from 'electron';
import { ok, type Result } from '../core/index.ts';
import { careFor, loadStart } from './care.ts';
import { type Closable, type Closing, createClosing } from './closing.ts';
import type { HostApi } from './contract.ts';
import { windowDialogs } from './dialogs.ts';
import type { Caller } from './ipc.ts';
import type { Log } from './log.ts';
import { createWindowMenu } from './menu.ts';
import { createDialogCalls } from './services/dialogCalls.ts';
import type { Host } from './services/host.ts';
import { isSameFile } from './services/launchFiles.ts';
import { readPlace, type WindowPlace, writePlace } from './services/windowPlaces.ts';
import { createWindowWork, type WindowWork } from './services/windowWork.ts';
import { createWindow, placeOf } from './window.ts';

/** What the windows share. */
export interface Desk {
  readonly host: Host;
  readonly log: Log;
  readonly distFolder: string;
  /** File that keeps where the last window stood. */
  readonly placePath: string;
  readonly packed: boolean;
  /** Node's name of the operating system. */
  readonly platform: string;
}

/** Opens windows and finds them. */
export interface OpenWindows {
  /** Opens one more window, with a file or with the demo. */
  open(path: string | null): Promise<void>;
  /** Shows files: in the window that has them open, in the only window while nothing was done there, or in new ones. */
  openFiles(paths: readonly string[]): Promise<void>;
  /** The window that may call through these contents. */
  callerOf(contents: WebContents): Caller | undefined;
  /** Ends when what closed windows left to be done is done; the program must not end before. */
  settled(): Promise<void>;
}

interface OpenWindow extends Closable, Caller {
  readonly work: WindowWork;
  /** File to show when the page starts, where the window was not yet shown another; null for the demo. */
  start: string | null;
  /** Whether the page has asked for what it starts with. */
  begun: boolean;
}

/** Calls whose failure may cost work, and so is worth a line in the log. */
const saving = ['saveProject', 'saveProjectAs', 'exportFile', 'printReport', 'writeJournal'];
const saves = ['saveProject', 'saveProjectAs'];

/** No window yet. */
export function createOpenWindows(desk: Desk, shell: Pick<App, 'on' | 'quit'> = app): OpenWindows {
  const all: OpenWindow[] = [];
  const closing = createClosing(shell, () => all);
  const rest = new Set<Promise<unknown>>();
  const later = (work: Promise<unknown>): void => {
    const done = work.catch((fault: unknown) => desk.log.error(fault)).finally(() => rest.delete(done));
    rest.add(done);
  };
  let made = 0;
  const open = async (path: string | null): Promise<void> => {
    const place = await readPlace(desk.placePath);
    const { distFolder, packed } = desk;
    const window = createWindow({ distFolder, packed, place, before: all.length });
    made += 1;
    const one = seat(window, `window-${made}`, path, { desk, closing, later, open: () => later(open(null)) });
    all.push(one);
    window.once('closed', () => all.splice(all.indexOf(one), 1));
    closing.guard(one);
    await loadStart(window);
  };
  return {
    open,
    async openFiles(paths) {
      for (const path of paths) await show(path, all, open);
      if (paths.length === 0) raise(all.at(-1)?.window);
    },
    callerOf: (contents) => all.find(({ window }) => !window.isDestroyed() && window.webContents === contents),
    settled: async () => void (await Promise.all(rest)),
  };
}

function raise(window: BrowserWindow | undefined): void {
  if (!window) return;
  if (window.isMinimized()) window.restore();
  window.show();
  window.focus();
}

async function show(path: string, all: readonly OpenWindow[], open: (path: string) => Promise<void>): Promise<void> {
  const shown = (one: OpenWindow) => (one.begun ? one.work.path() : one.start);
  const there = all.find((one) => {
    const its = shown(one);
    return its !== null && isSameFile(its, path);
  });
  if (there) return raise(there.window);
  const [only] = all;
  if (!only || all.length > 1 || !only.work.untouched() || only.start !== null) return open(path);
  only.start = path;
  only.begun = false;
  raise(only.window);
  return loadStart(only.window);
}

interface Around {
  readonly desk: Desk;
  readonly closing: Closing;
  readonly open: () => void;
  /** Takes what is to be done before the program ends. */
  readonly later: (work: Promise<unknown>) => void;
}

/** Puts a window's calls, menu, work and care together. */
function seat(window: BrowserWindow, id: string, start: string | null, around: Around): OpenWindow {
  const { desk, closing, later } = around;
  const { host, log } = desk;
  const work = createWindowWork();
  const care = careFor({ window, log, gone: work.pageGone });
  const given = { up: false };
  const api = apiOf(window, id, around, given, () => work.path() ?? one.start);
  const one: OpenWindow = {
    window,
    work,
    start,
    begun: false,
    edited: work.edited,
    name: () => nameOf(work.path()),
    forget: async () => {
      const journal = work.journal();
      given.up = true;
      if (journal !== null) await host.apiFor(id).closeJournal({ journal });
    },
    api,
    heard(name, argument, result) {
      care.heard();
      work.heard(name, argument, result);
      one.begun ||= name === 'readStartProject';
      noteFailure(name, result, log);
      if (saves.includes(name) && (!result.ok || result.value === null)) closing.saveFailed();
    },
  };
  keepPlace(window, desk.placePath, later);
  window.once('closed', () => later(host.closeWindow(id)));
  // The system ends without asking: the journals have the work, the files are left for others.
  window.on('session-end', () => later(host.close()));
  return one;
}

/** A window's calls. `given.up`: whether its work was given up; `start` tells the file it starts with, or null. */
function apiOf(
  window: BrowserWindow,
  id: string,
  { desk, open }: Around,
  given: { readonly up: boolean },
  start: () => string | null,
): HostApi {
  const { host, platform, packed } = desk;
  const files = host.apiFor(id);
  const menu = createWindowMenu(window, platform, !packed);
  return {
    ...files,
    ...createDialogCalls(host, id, windowDialogs(window, menu, open)),
    // An entry that was on its way when the person gave the work up must not bring it back.
    writeJournal: async (entry) => (given.up ? ok(null) : files.writeJournal(entry)),
    // After a crash the page starts with what it showed last.
    readStartProject: (none) => {
      const path = start();
      return path === null ? files.readStartProject(none) : host.open(id, path);
    },
  };
}

const nameOf = (path: string | null): string | null => (path === null ? null : basename(path));

function noteFailure(name: string, result: Result<unknown>, log: Log): void {
  if (result.ok || !saving.includes(name)) return;
  log.error(`${name} failed: ${result.issues.map(({ code }) => code).join(', ')}`);
}

/** Keeps where a window stood when it was closed; asked for before, since a closed window knows no more. */
function keepPlace(window: BrowserWindow, path: string, later: Around['later']): void {
  let place: WindowPlace | null = null;
  const note = () => {
    if (!window.isMinimized()) place = placeOf(window);
  };
  window.on('resize', note);
  window.on('move', note);
  window.on('maximize', note);
  window.on('unmaximize', note);
  window.once('closed', () => {
    if (place) later(writePlace(path, place));
  });
}

/** File that keeps where the last window stood, in the program's own folder. */
export const placePathIn = (userData: string): string => join(userData, 'window.json');
