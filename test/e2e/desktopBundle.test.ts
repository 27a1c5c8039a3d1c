import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { _electron as electron } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { electronPath } from '../../electron/cli/electronBinary.ts';
import { argumentChecks } from '../../electron/contract.ts';

let notes: readonly (readonly unknown[])[];
let userData: string;

/** Runs the built main script in Node, with Electron replaced by a stub that notes what is asked of it. */
beforeAll(() => {
  userData = mkdtempSync(join(tmpdir(), 'augerwright-desktop-'));
  const out = execFileSync(process.execPath, ['-r', resolve('test/e2e/electronStub.cjs'), 'dist/electron/main.cjs'], {
    env: { ...process.env, STUB_USER_DATA: userData },
    encoding: 'utf8',
  });
  notes = out
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as unknown[]);
});

afterAll(() => rmSync(userData, { recursive: true, force: true }));

const noted = (what: string) => notes.filter((note) => note[0] === what).map((note) => note.slice(1));
const order = (what: string) => notes.findIndex((note) => note[0] === what);

test('declares its scheme and the sandbox before the app is ready, and serves the built page by it', () => {
  expect(noted('scheme')).toEqual([['augerwright']]);
  expect(order('scheme')).toBeLessThan(order('ready'));
  expect(noted('sandbox')).toHaveLength(1);
  expect(order('sandbox')).toBeLessThan(order('ready'));
  expect(noted('page')).toEqual([['augerwright://app/index.html', 200]]);
});

test('locks every web contents down before the page loads', () => {
  expect(noted('openHandler')).toEqual([['deny']]);
  expect(noted('session').flat()).toContain('setPermissionRequestHandler');
  expect(order('openHandler')).toBeLessThan(order('page'));
});

test('answers every call of the contract before the page loads', () => {
  expect(noted('handle').flat().sort()).toEqual(Object.keys(argumentChecks).sort());
  expect(order('handle')).toBeLessThan(order('page'));
});

test('gives the sandboxed window a preload script that requires Electron and nothing else', () => {
  expect(noted('window')).toEqual([[true, resolve('dist/electron/preload.cjs')]]);
  const script = readFileSync('dist/electron/preload.cjs', 'utf8');
  expect([...script.matchAll(/require\("([^"]+)"\)/g)].map((match) => match[1])).toEqual(['electron']);
});

// Electron's binary is fetched from outside the registry, so a closed network has none.
const binary = electronPath(resolve('.'));
if (binary !== null && process.env.DISPLAY) {
  test('opens in Electron itself', async () => {
    const desktop = await electron.launch({ executablePath: binary, args: ['.', `--user-data-dir=${userData}`] });
    const window = await desktop.firstWindow();
    await window.waitForSelector('#root > *');
    expect(await window.title()).toContain('Augerwright');
    await desktop.close();
  });
}
