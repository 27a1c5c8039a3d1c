/** Start-up of the desktop window, in order. */

import { join, resolve } from 'node:path';
import { app, BrowserWindow, ipcMain, protocol } from 'electron';
import log from 'electron-log/node';
import { windowDialogs } from './dialogs.ts';
import { setupIpc } from './ipc.ts';
import { declareScheme, serveScheme, startAddress } from './protocol.ts';
import { createDialogCalls } from './services/dialogCalls.ts';
import { createHost } from './services/host.ts';
import { createWindow, lockDown } from './window.ts';

/** The bundle lies in dist/electron, its neighbours in dist. */
const distFolder = resolve(__dirname, '..');

/** File named after `--project=` by the start script, or null. */
function startPath(): string | null {
  const given = process.argv.find((argument) => argument.startsWith('--project='));
  return given ? resolve(given.slice('--project='.length)) : null;
}

async function start(): Promise<void> {
  serveScheme(protocol, join(distFolder, 'renderer'));
  const host = createHost({
    examplesFolder: join(distFolder, '../assets/examples'),
    materialsFolder: join(distFolder, '../assets/materials'),
    startPath: startPath(),
    recentListPath: join(app.getPath('userData'), 'recent.json'),
  });
  const window = createWindow(distFolder);
  const api = { ...host.api, ...createDialogCalls(host, windowDialogs(window)) };
  setupIpc(ipcMain, api, (contents) => BrowserWindow.fromWebContents(contents) === window);
  await window.loadURL(startAddress);
}

log.errorHandler.startCatching();
declareScheme(protocol);
app.enableSandbox();
app.on('web-contents-created', (_event, contents) => lockDown(contents));
app.on('window-all-closed', () => app.quit());
app
  .whenReady()
  .then(start)
  .catch((error: unknown) => {
    log.error(error);
    app.exit(1);
  });
