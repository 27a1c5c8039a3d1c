/** Brings a window back that stopped, hangs or found no page; its journal brings the work back. */

import { type BrowserWindow, dialog } from 'electron';
import type { Log } from './log.ts';
import { failedAddress, startAddress } from './protocol.ts';
import { type Budget, createBudget } from './services/budget.ts';
import { words } from './words.ts';

/** How often a page that stopped is started again by itself, and within what time, ms. */
const mostRestarts = 3;
const restartsWithin = 60_000;
/** How long a window may be silent, after the system called it so, before the person is asked, ms. */
const patience = 5_000;
/** How long a page that has loaded may take to its first call before it counts as broken, ms. */
const startLimit = 20_000;
/** What the engine calls a load that another took the place of. */
const aborted = -3;

/** What caring for a window needs. */
export interface Care {
  readonly window: BrowserWindow;
  readonly log: Log;
  /** Hears that the page is gone, so that no question is put to it any more. */
  readonly gone: () => void;
  /** Clock, ms. */
  readonly now?: () => number;
}

/** Loads the first page anew; a load that fails is told by the window's own event. */
export function loadStart(window: BrowserWindow): Promise<void> {
  return window.isDestroyed() ? Promise.resolve() : window.loadURL(startAddress).catch(() => undefined);
}

/** What a watched window is to be told. */
export interface Watch {
  /** The page has called, so it is at work. */
  heard(): void;
}

/** Watches a window from now on. */
export function careFor(care: Care): Watch {
  const budget = createBudget(mostRestarts, restartsWithin, care.now);
  const offer = restartOffer(care, budget);
  watchCrashes(care, budget, offer);
  watchLoads(care, offer);
  watchHangs(care);
  return watchStart(care);
}

/** A page whose script is missing or broken loads well, and stays white. */
function watchStart({ window, log }: Care): Watch {
  let late: NodeJS.Timeout | undefined;
  const stop = () => clearTimeout(late);
  window.webContents.on('did-finish-load', () => {
    stop();
    if (window.webContents.getURL() !== startAddress) return;
    late = setTimeout(() => {
      log.error('page loaded, but never began');
      void window.loadURL(failedAddress).catch(() => undefined);
    }, startLimit);
  });
  window.webContents.on('render-process-gone', stop);
  window.once('closed', stop);
  return { heard: stop };
}

/** The question whether to start the page again, put once at a time. */
function restartOffer({ window }: Care, budget: Budget): () => void {
  let open = false;
  const put = async (): Promise<void> => {
    const { message, detail, again, close } = words.stopped;
    window.show();
    const { response } = await dialog.showMessageBox(window, {
      type: 'error',
      message,
      detail,
      buttons: [again, close],
      defaultId: 0,
      cancelId: 1,
      noLink: true,
    });
    open = false;
    if (window.isDestroyed()) return;
    if (response === 1) return window.destroy();
    budget.refill();
    await loadStart(window);
  };
  return () => {
    if (open || window.isDestroyed()) return;
    open = true;
    void put();
  };
}

function watchCrashes({ window, log, gone }: Care, budget: Budget, offer: () => void): void {
  const { webContents } = window;
  webContents.on('render-process-gone', (_event, { reason, exitCode }) => {
    if (reason === 'clean-exit' || window.isDestroyed()) return;
    log.error(`page gone: ${reason}, code ${exitCode}`);
    gone();
    // Later: the engine is still taking the old process down.
    if (budget.spend()) setImmediate(() => void loadStart(window));
    else offer();
  });
  webContents.on('preload-error', (_event, _path, error) => log.error(error));
  // Our own question stands before closing; a page that starts again must not be held by its own.
  webContents.on('will-prevent-unload', (event) => event.preventDefault());
}

function watchLoads({ window, log }: Care, offer: () => void): void {
  window.webContents.on('did-fail-load', (_event, code, description, address, isMainFrame) => {
    if (!isMainFrame || code === aborted || window.isDestroyed()) return;
    log.error(`page not loaded: ${description}, code ${code}`);
    window.show();
    if (address === failedAddress) offer();
    else void window.loadURL(failedAddress).catch(() => undefined);
  });
}

function watchHangs({ window, log }: Care): void {
  let silence: AbortController | null = null;
  const ask = async (signal: AbortSignal): Promise<void> => {
    if (signal.aborted || window.isDestroyed()) return;
    log.warn('page does not answer');
    const { message, detail, wait, again } = words.hanging;
    const buttons = [wait, again];
    const asked = {
      type: 'warning',
      message,
      detail,
      buttons,
      defaultId: 0,
      cancelId: 0,
      noLink: true,
      signal,
    } as const;
    const { response } = await dialog.showMessageBox(window, asked);
    silence = null;
    // The end of its process is heard above, which starts the page again.
    if (response === 1 && !signal.aborted && !window.isDestroyed()) window.webContents.forcefullyCrashRenderer();
  };
  const heardAgain = () => {
    silence?.abort();
    silence = null;
  };
  window.on('unresponsive', () => {
    if (silence) return;
    silence = new AbortController();
    const { signal } = silence;
    setTimeout(() => void ask(signal), patience);
  });
  window.on('responsive', heardAgain);
  window.once('closed', heardAgain);
}
