/** Opens an address in an installed Chromium as a window without tabs or address bar. */

import { spawn } from 'node:child_process';
import { accessSync, constants, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';

const commands = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'brave-browser',
];

/** Resolves when the window was closed by the person; never when there is no window to close. */
export function openAppWindow(address: string, say: (text: string) => void): Promise<void> {
  const browser = findBrowser();
  if (browser === null) {
    say('No Chromium-like browser was found; open the address yourself.');
    return new Promise(() => undefined);
  }
  // A profile of its own: the process then lives exactly as long as the window.
  const profile = mkdtempSync(join(tmpdir(), 'augerwright-profile-'));
  const flags = [`--app=${address}`, `--user-data-dir=${profile}`, '--no-first-run', '--no-default-browser-check'];
  const child = spawn(browser, [...flags, '--window-size=1440,900'], { stdio: 'ignore' });
  process.once('exit', () => {
    child.kill();
    rmSync(profile, { recursive: true, force: true, maxRetries: 3 });
  });
  return new Promise((closed) => {
    child.once('error', () => say('The browser did not start; open the address yourself.'));
    child.once('exit', (code) => {
      if (code === 0) closed();
      else say('The browser ended with a fault; the address above still works.');
    });
  });
}

/** First installed browser that knows app windows, or null. */
function findBrowser(): string | null {
  const onPath = (process.env.PATH ?? '').split(delimiter).filter(Boolean);
  const candidates = [
    ...commands.flatMap((command) => onPath.map((folder) => join(folder, command))),
    ...usualPlaces(),
  ];
  return candidates.find(isExecutable) ?? null;
}

function usualPlaces(): readonly string[] {
  if (process.platform === 'darwin') {
    return ['Google Chrome', 'Chromium', 'Microsoft Edge'].map(
      (name) => `/Applications/${name}.app/Contents/MacOS/${name}`,
    );
  }
  if (process.platform !== 'win32') return [];
  const folders = [process.env.PROGRAMFILES, process.env['PROGRAMFILES(X86)'], process.env.LOCALAPPDATA];
  const programs = ['Google/Chrome/Application/chrome.exe', 'Microsoft/Edge/Application/msedge.exe'];
  return folders.flatMap((folder) => (folder ? programs.map((program) => join(folder, program)) : []));
}

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
