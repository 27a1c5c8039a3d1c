/** One window: its options, its place on the desktop, its first frame. */

import { join } from 'node:path';
import { BrowserWindow, type BrowserWindowConstructorOptions, nativeTheme, screen } from 'electron';
import { type Area, type Display, leastSize, placeInView, type WindowPlace } from './services/windowPlaces.ts';

/** A window that has not painted by then is shown as it is, ms: a hidden one could not even be closed. */
const showLimit = 10_000;

/** Displays that exist, the main one first. */
function displays(): readonly [Display, ...Display[]] {
  const main = screen.getPrimaryDisplay();
  return [main, ...screen.getAllDisplays().filter(({ id }) => id !== main.id)];
}

/** What a window is made from. */
export interface WindowSource {
  readonly distFolder: string;
  readonly packed: boolean;
  readonly place: WindowPlace | null;
  /** How many windows stand there already. */
  readonly before: number;
}

/**
 * Makes a window, hidden until its first frame; the caller loads the page once everything it may ask for is in place.
 * The page is sandboxed, isolated, and without Node. Its options stand here in full, so that scanners can read them.
 */
export function createWindow({ distFolder, packed, place, before }: WindowSource): BrowserWindow {
  const window = new BrowserWindow({
    ...frame(placeInView(displays(), place, before)),
    icon: join(distFolder, 'renderer/icon.png'),
    webPreferences: {
      preload: join(distFolder, 'electron/preload.cjs'),
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      webviewTag: false,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      plugins: false,
      navigateOnDragDrop: false,
      safeDialogs: true,
      spellcheck: false,
      // Packed builds have no tools for developers.
      devTools: !packed,
      // A middle click on a link would ask for a new window.
      disableBlinkFeatures: 'Auxclick',
    },
  });
  if (place?.maximized && before === 0) window.maximize();
  showWhenReady(window);
  return window;
}

/** What a window looks like before its page is there. */
function frame(area: Area): BrowserWindowConstructorOptions {
  return {
    ...area,
    minWidth: Math.min(leastSize.width, area.width),
    minHeight: Math.min(leastSize.height, area.height),
    show: false,
    title: 'Augerwright',
    // The workbench's own ground, so that no window flashes white.
    backgroundColor: nativeTheme.shouldUseDarkColors ? '#101315' : '#e9e7e2',
  };
}

function showWhenReady(window: BrowserWindow): void {
  const show = () => {
    clearTimeout(late);
    if (!window.isDestroyed() && !window.isVisible()) window.show();
  };
  const late = setTimeout(show, showLimit);
  window.once('ready-to-show', show);
  window.once('closed', () => clearTimeout(late));
}

/** Where a window stands now. */
export function placeOf(window: BrowserWindow): WindowPlace {
  const { x, y, width, height } = window.getNormalBounds();
  const { id } = screen.getDisplayMatching(window.getBounds());
  return { x, y, width, height, maximized: window.isMaximized(), display: id };
}
