/** A Chromium that comes inside a package: nothing from the system is needed on Linux x64. */

import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { type Browser, chromium as playwright } from 'playwright-core';

const root = resolve(import.meta.dirname, '../..');
/** Pictures, traces and the unpacked browser; ignored by git. */
export const outFolder = join(root, 'test/.out');

const flags = [
  '--no-sandbox',
  '--use-gl=angle',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--ignore-gpu-blocklist',
  '--font-render-hinting=none',
];

/** Starts a browser: the one `AUGERWRIGHT_BROWSER` names, else the packaged one, else (not Linux x64) an installed one. */
export async function launchBrowser(): Promise<Browser> {
  const named = process.env.AUGERWRIGHT_BROWSER;
  if (named) return playwright.launch({ executablePath: named, args: flags });
  if (process.platform !== 'linux' || process.arch !== 'x64')
    return playwright.launch({ channel: 'chrome', args: flags });
  return playwright.launch({ executablePath: await packagedBrowser(), args: flags });
}

/** Path of the unpacked browser. The package unpacks into TMPDIR and never looks at versions, so each has its own. */
async function packagedBrowser(): Promise<string> {
  const manifest = readFileSync(join(root, 'node_modules/@sparticuz/chromium/package.json'), 'utf8');
  const { version } = JSON.parse(manifest) as { version: string };
  const home = join(outFolder, `browser-${version}`);
  if (!existsSync(join(home, 'chromium'))) unpackBeside(home);
  // The package's own list of font folders names /tmp/fonts, wherever it has unpacked them.
  writeFileSync(join(home, 'fonts/fonts.conf'), fontList(home));
  const before = process.env.TMPDIR;
  process.env.TMPDIR = home;
  // Makes the package use the libraries and fonts it carries, read when it is imported.
  process.env.AWS_LAMBDA_JS_RUNTIME = 'nodejs20.x';
  try {
    const { default: packaged } = await import('@sparticuz/chromium');
    return await packaged.executablePath();
  } finally {
    if (before === undefined) delete process.env.TMPDIR;
    else process.env.TMPDIR = before;
  }
}

const fontList = (home: string) => `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${join(home, 'fonts')}</dir>
  <dir>/usr/share/fonts</dir>
  <cachedir>${join(home, 'fonts-cache')}</cachedir>
</fontconfig>
`;

/** Unpacks in another process and renames, so that two test runs at once cannot meet a half-written browser. */
function unpackBeside(home: string): void {
  const beside = `${home}.${process.pid}`;
  mkdirSync(beside, { recursive: true });
  const script = "import('@sparticuz/chromium').then(({ default: packaged }) => packaged.executablePath())";
  const env = { ...process.env, TMPDIR: beside, AWS_LAMBDA_JS_RUNTIME: 'nodejs20.x' };
  execFileSync(process.execPath, ['--input-type=module', '-e', script], { cwd: root, env });
  try {
    renameSync(beside, home);
  } catch {
    rmSync(beside, { recursive: true, force: true });
  }
}
