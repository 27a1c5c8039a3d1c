/** Opens the workbench: in Electron's window, else in a browser's, else at an address printed for whoever asks. */

import { mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { startLog } from '../log.ts';
import { createHost, type Host } from '../services/host.ts';
import { pageQuietAfterMs } from '../services/keep/windows.ts';
import { startLoopback } from '../services/loopback.ts';
import { stateFolder } from '../services/stateFolder.ts';
import { readTextFile } from '../services/textFile.ts';
import { openAppWindow } from './browserWindow.ts';
import { refuse, type Status, status } from './command.ts';
import { electronPath, runElectron } from './electronBinary.ts';
import { asksForHelp, type CommandShape, helpText, readWords } from './options.ts';

const shape: CommandShape = {
  usage: 'npm start -- [FILE] [--no-window]',
  about: [
    'Opens the workbench, with a project file where one is named.',
    '  --no-window  serve it to a browser on this machine instead',
  ],
  flags: ['no-window'],
  values: [],
  words: [0, 1],
};

const say = (text: string) => void process.stdout.write(`${text}\n`);
const streams = { result: say, problem: (text: string) => void process.stderr.write(`${text}\n`) };

/** Runs until the window is closed or the process is told to stop. `root` is the project's folder. */
export async function startWorkbench(given: readonly string[], root: string): Promise<Status> {
  if (asksForHelp(given)) {
    say(helpText(shape));
    return status.done;
  }
  const words = readWords(shape, given);
  if (!words.ok) return refuse(words.issues, streams);
  const file = words.value.bare[0];
  const startPath = file === undefined ? null : resolve(file);
  if (startPath !== null) {
    const text = await readTextFile(startPath);
    if (!text.ok) return refuse(text.issues, streams);
  }
  const windowWanted = !words.value.flags.has('no-window') && hasDisplay();
  if (windowWanted && (await runElectron(root, startPath, say))) return status.done;
  await serve(root, startPath, windowWanted);
  return status.done;
}

/** Serves over loopback until stopped, or until the browser's own window is closed. */
async function serve(root: string, startPath: string | null, windowWanted: boolean): Promise<void> {
  const host = hostHere(root, startPath);
  const stopped = untilStopped();
  const loopback = await startLoopback(host.apiFor, resolve(root, 'dist/renderer'));
  if (!windowWanted) say(`${whyNoWindow(root)}: serving the workbench to browsers on this machine.`);
  say(`Augerwright is at ${loopback.address}`);
  say('Press Ctrl+C to stop.');
  const windowClosed = windowWanted ? openAppWindow(loopback.address, say) : new Promise<void>(() => undefined);
  await Promise.race([stopped, windowClosed]);
  await loopback.close();
  await host.close();
}

/** Services over this installation, with the person's own folder for what is kept from start to start. */
function hostHere(root: string, startPath: string | null): Host {
  const state = stateFolder();
  try {
    mkdirSync(state, { recursive: true, mode: 0o700 });
  } catch {
    // the window tells of it once there is work that cannot be kept
  }
  const logFolder = join(state, 'logs');
  const log = startLog({ folder: logFolder, packed: true, level: process.env.AUGERWRIGHT_LOG });
  return createHost({
    examplesFolder: resolve(root, 'assets/examples'),
    materialsFolder: resolve(root, 'assets/materials'),
    startPath,
    recentListPath: join(state, 'recent.json'),
    stateFolder: state,
    about: {
      packagePath: resolve(root, 'package.json'),
      noticesPaths: ['renderer', 'electron'].map((bundle) => resolve(root, `dist/${bundle}/third-party.txt`)),
      logFolder,
    },
    log: (message) => log.warn(message),
    quietAfterMs: pageQuietAfterMs,
  });
}

function whyNoWindow(root: string): string {
  const display = hasDisplay() ? 'No window was wanted' : 'There is no display for a window';
  return electronPath(root) === null ? `${display}, and Electron's binary is not installed` : display;
}

function untilStopped(): Promise<void> {
  return new Promise((stop) => {
    process.once('SIGINT', () => stop());
    process.once('SIGTERM', () => stop());
    // the terminal was closed
    process.once('SIGHUP', () => stop());
  });
}

/** Whether windows can be shown: always on macOS and Windows, elsewhere where a display server is named. */
function hasDisplay(): boolean {
  if (process.platform === 'darwin' || process.platform === 'win32') return true;
  return Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
}
