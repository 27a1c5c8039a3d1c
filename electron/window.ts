/** The one window, and what is denied to whatever runs in it. */

import { join } from 'node:path';
import { BrowserWindow, type BrowserWindowConstructorOptions, type WebContents } from 'electron';

/** Options of the window; the page is sandboxed, isolated, and without Node. */
export function windowOptions(preloadPath: string, iconPath: string): BrowserWindowConstructorOptions {
  return {
    width: 1440,
    height: 900,
    minWidth: 960,
    minHeight: 640,
    show: false,
    title: 'Augerwright',
    icon: iconPath,
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
      spellcheck: false,
    },
  };
}

/** Denies new windows, navigation, embedded views and every permission. */
export function lockDown(contents: WebContents): void {
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
  contents.on('will-navigate', (event) => event.preventDefault());
  contents.on('will-redirect', (event) => event.preventDefault());
  contents.on('will-frame-navigate', (event) => event.preventDefault());
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.session.setPermissionRequestHandler((_contents, _permission, decide) => decide(false));
  contents.session.setPermissionCheckHandler(() => false);
  contents.session.setDevicePermissionHandler(() => false);
}

/** Makes the window, hidden until its first frame; the caller loads the page once everything it may ask for is in place. */
export function createWindow(distFolder: string): BrowserWindow {
  const options = windowOptions(join(distFolder, 'electron/preload.cjs'), join(distFolder, 'renderer/icon.png'));
  const window = new BrowserWindow(options);
  window.once('ready-to-show', () => window.show());
  return window;
}
