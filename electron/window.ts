/** One window: its options, its place on the desktop, its first frame. */

import { join } from 'node:path';
import { BrowserWindow, type BrowserWindowConstructorOptions, nativeTheme, screen } from 'electron';
import { type Area, type Display, leastSize, placeInView, type WindowPlace } from './services/windowPlaces.ts';

/** A window that has not painted by then is shown as it is, ms: a hidden one could not even be closed. */
const showLimit = 10_000;

/** What differs from window to window, or from build to build. */
export interface WindowSetting {
  readonly preloadPath: string;
  readonly iconPath: string;
  readonly area: Area;
  /** Packed builds have no tools for developers. */
  readonly packed: boolean;
  readonly dark: boolean;
}

/** Options of a window; the page is sandboxed, isolated, and without Node. */
export function windowOptions(setting: WindowSetting): BrowserWindowConstructorOptions {
  const { preloadPath, iconPath, area, packed, dark } = setting;
  return {
    ...area,
    minWidth: Math.min(leastSize.width, area.width),
    minHeight: Math.min(leastSize.height, area.height),
    show: false,
    title: 'Augerwright',
    icon: iconPath,
    // The workbench's own ground, so that no window flashes white.
    backgroundColor: dark ? '#101315' : '#e9e7e2',
    webPreferences: {
      preload: preloadPath,
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
      devTools: !packed,
      // A middle click on a link would ask for a new window.
      disableBlinkFeatures: 'Auxclick',
    },
  };
}

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

/** Makes a window, hidden until its first frame; the caller loads the page once everything it may ask for is in place. */
export function createWindow({ distFolder, packed, place, before }: WindowSource): BrowserWindow {
  const window = new BrowserWindow(
    windowOptions({
      preloadPath: join(distFolder, 'electron/preload.cjs'),
      iconPath: join(distFolder, 'renderer/icon.png'),
      area: placeInView(displays(), place, before),
      packed,
      dark: nativeTheme.shouldUseDarkColors,
    }),
  );
  if (place?.maximized && before === 0) window.maximize();
  const show = () => {
    clearTimeout(late);
    if (!window.isDestroyed() && !window.isVisible()) window.show();
  };
  const late = setTimeout(show, showLimit);
  window.once('ready-to-show', show);
  window.once('closed', () => clearTimeout(late));
  return window;
}

/** Where a window stands now. */
export function placeOf(window: BrowserWindow): WindowPlace {
  const { x, y, width, height } = window.getNormalBounds();
  const { id } = screen.getDisplayMatching(window.getBounds());
  return { x, y, width, height, maximized: window.isMaximized(), display: id };
}
