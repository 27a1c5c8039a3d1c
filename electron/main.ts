/** Start-up of the desktop program, in order. */

import { url as inspectorAddress } from 'node:inspector';
import { join, resolve } from 'node:path';
import { app, dialog, ipcMain, protocol } from 'electron';
import { hearFaults } from './faults.ts';
import { setupIpc } from './ipc.ts';
import { lockApp, lockDown, lockSwitches } from './lockdown.ts';
import { type Log, startLog } from './log.ts';
import { clearMenu } from './menu.ts';
import { createOpenWindows, type OpenWindows, placePathIn } from './openWindows.ts';
import { hearOutside, type Outside } from './outside.ts';
import { declareScheme, serveScheme } from './protocol.ts';
import { createHost, type Host } from './services/host.ts';
import { words } from './words.ts';

/** The bundle lies in dist/electron, its neighbours in dist. */
const distFolder = resolve(__dirname, '..');
/** How long leaving the files may hold the end of the program up, ms. */
const leaveLimit = 2_000;

/** Services over the folders of this installation and this person. */
function hostHere(log: Log): Host {
  const userData = app.getPath('userData');
  return createHost({
    examplesFolder: join(distFolder, '../assets/examples'),
    materialsFolder: join(distFolder, '../assets/materials'),
    startPath: null,
    recentListPath: join(userData, 'recent.json'),
    stateFolder: userData,
    about: {
      packagePath: join(distFolder, '../package.json'),
      noticesPaths: [join(distFolder, 'renderer/third-party.txt'), join(distFolder, 'electron/third-party.txt')],
      logFolder: app.getPath('logs'),
    },
    log: (message) => log.warn(message),
  });
}

/** Leaves every file before the program ends, so that others find no lock, and what closed windows left to be done. */
function leaveFiles(host: Host, windows: OpenWindows): void {
  let leaving = false;
  app.on('will-quit', (event) => {
    // The end is asked for once more when the last window is gone; it comes by the exit below alone.
    event.preventDefault();
    if (leaving) return;
    leaving = true;
    const patience = new Promise((done) => setTimeout(done, leaveLimit));
    const left = windows.settled().then(() => host.close());
    void Promise.race([left.catch(() => undefined), patience]).then(() => app.exit(0));
  });
}

async function start(log: Log, outside: Outside): Promise<void> {
  log.info(
    `start: ${app.getVersion()}, Electron ${process.versions.electron}, ${process.platform} ${process.arch}, packed ${app.isPackaged}`,
  );
  clearMenu(process.platform);
  serveScheme(protocol, join(distFolder, 'renderer'));
  const host = hostHere(log);
  const { isPackaged: packed } = app;
  const placePath = placePathIn(app.getPath('userData'));
  const windows = createOpenWindows({ host, log, distFolder, placePath, packed, platform: process.platform });
  setupIpc(ipcMain, windows.callerOf);
  leaveFiles(host, windows);
  const failed = (error: unknown) => log.error(error);
  let first = true;
  outside.hear((files) => {
    const opened = first && files.length === 0 ? windows.open(null) : windows.openFiles(files);
    first = false;
    opened.catch(failed);
  });
}

function run(): void {
  const log = startLog({
    folder: app.getPath('logs'),
    packed: app.isPackaged,
    level: process.env.AUGERWRIGHT_LOG,
  });
  hearFaults(process, app, log);
  const taken = lockSwitches(app);
  if (taken.length > 0) log.warn(`switches taken off: ${taken.join(', ')}`);
  declareScheme(protocol);
  app.enableSandbox();
  lockApp(app);
  app.on('web-contents-created', (_event, contents) => lockDown(contents, app.isPackaged));
  app.on('window-all-closed', () => app.quit());
  const outside = hearOutside(app, process.argv, process.cwd());
  app
    .whenReady()
    .then(() => start(log, outside))
    .catch((error: unknown) => {
      log.error(error);
      dialog.showErrorBox(words.noStart.title, words.noStart.detail);
      app.exit(1);
    });
}

// A packed program lets no debugger in; one that is in already came by a way that the packing should have shut.
if (app.isPackaged && inspectorAddress() !== undefined) app.exit(1);
// The first start goes on; a later one has handed its files over by asking.
else if (app.requestSingleInstanceLock()) run();
else app.quit();
