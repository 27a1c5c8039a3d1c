/** Finds Electron's binary, fetches it once where that is possible and wanted, and runs the desktop window. */

import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** How long the place that serves the binary may take to answer at all, ms. */
const probeLimit = 4_000;
/** How long the download may take, ms. */
const downloadLimit = 300_000;
/** A window that fails within this time never opened, ms. */
const openLimit = 10_000;

/** Runs the desktop window until it is closed; false when there is none to be had, after saying why in one line. */
export async function runElectron(
  root: string,
  startPath: string | null,
  say: (text: string) => void,
): Promise<boolean> {
  const binary = (await hasOrFetches(root, say)) ? electronPath(root) : null;
  if (binary === null) {
    say("Electron's binary is not used (missing or not wanted): opening a browser window in its place.");
    return false;
  }
  const project = startPath === null ? [] : [`--project=${startPath}`];
  const started = Date.now();
  const code = await exitCode(binary, [root, ...project]);
  if (code === 0 || Date.now() - started > openLimit) return true;
  say('Electron did not start here: opening a browser window in its place.');
  return false;
}

/** Path of the installed binary, or null. Read from the package's own note: importing the package would download. */
export function electronPath(root: string): string | null {
  const home = join(root, 'node_modules/electron');
  const note = join(home, 'path.txt');
  const folder = process.env.ELECTRON_OVERRIDE_DIST_PATH ?? join(home, 'dist');
  const name = existsSync(note) ? readFileSync(note, 'utf8') : 'electron';
  const path = join(folder, name);
  return existsSync(path) ? path : null;
}

async function hasOrFetches(root: string, say: (text: string) => void): Promise<boolean> {
  if (process.env.AUGERWRIGHT_NO_ELECTRON) return false;
  if (electronPath(root) !== null) return true;
  if (process.env.CI || !(await canReachDownloads())) return false;
  say("Fetching Electron's binary, once (about 120 MB; AUGERWRIGHT_NO_ELECTRON=1 skips this) ...");
  const installer = join(root, 'node_modules/electron/install.js');
  spawnSync(process.execPath, [installer], { stdio: 'ignore', timeout: downloadLimit });
  return electronPath(root) !== null;
}

/** Whether the server that the installer would ask answers at all; a closed network says no within the limit. */
async function canReachDownloads(): Promise<boolean> {
  const server =
    process.env.ELECTRON_MIRROR ?? process.env.npm_config_electron_mirror ?? 'https://github.com/electron/electron';
  try {
    await fetch(server, { method: 'HEAD', signal: AbortSignal.timeout(probeLimit) });
    return true;
  } catch {
    return false;
  }
}

function exitCode(binary: string, words: readonly string[]): Promise<number> {
  return new Promise((resolve) => {
    const child = spawn(binary, words, { stdio: 'inherit' });
    const pass = (signal: NodeJS.Signals) => child.kill(signal);
    process.once('SIGINT', pass).once('SIGTERM', pass);
    child.once('error', () => resolve(1));
    child.once('exit', (code, signal) => resolve(signal === null ? (code ?? 1) : 0));
  });
}
