import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { _electron as electron } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { electronPath } from '../../electron/cli/electronBinary.ts';
import { argumentChecks, saveAndCloseChannel } from '../../electron/contract.ts';
import { words } from '../../electron/words.ts';

let notes: readonly (readonly unknown[])[];
let userData: string;
let log: string;

/** Runs the built main script in Node, with Electron replaced by a stub that notes what is asked of it. */
function run(preloaded: string, more: Readonly<Record<string, string>> = {}): readonly (readonly unknown[])[] {
  const out = execFileSync(process.execPath, ['-r', resolve('test/e2e', preloaded), 'dist/electron/main.cjs'], {
    env: { ...process.env, STUB_USER_DATA: userData, ...more },
    encoding: 'utf8',
    timeout: 30_000,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const lines = out.trim().split('\n').filter(Boolean);
  return lines.map((line) => JSON.parse(line) as unknown[]);
}

beforeAll(() => {
  userData = mkdtempSync(join(tmpdir(), 'augerwright-desktop-'));
  writeFileSync(join(userData, 'mine.json'), '{}');
  notes = run('desktopScenario.cjs');
  log = readFileSync(join(userData, 'augerwright.log'), 'utf8');
});

afterAll(() => rmSync(userData, { recursive: true, force: true }));

const noted = (what: string) => notes.filter((note) => note[0] === what).map((note) => note.slice(1));
const order = (what: string) => notes.findIndex((note) => note[0] === what);

test('declares its scheme and the sandbox before the app is ready, and serves the built page by it', () => {
  expect(noted('scheme')).toEqual([['augerwright']]);
  expect(order('scheme')).toBeLessThan(order('ready'));
  expect(noted('sandbox')).toHaveLength(1);
  expect(order('sandbox')).toBeLessThan(order('ready'));
  expect(noted('page')[0]).toEqual(['augerwright://app/index.html', 200]);
  expect(noted('switch').flat()).toContain('host-resolver-rules');
  expect(order('switch')).toBeLessThan(order('ready'));
});

test('locks every web contents down before the page loads', () => {
  expect(noted('openHandler')).toEqual([['deny']]);
  const locks = ['setPermissionRequestHandler', 'onBeforeRequest', 'will-download'];
  expect(noted('session').flat()).toEqual(expect.arrayContaining(locks));
  expect(order('openHandler')).toBeLessThan(order('page'));
});

test('answers every call of the contract before the page loads', () => {
  expect(noted('handle').flat().sort()).toEqual(Object.keys(argumentChecks).sort());
  expect(order('handle')).toBeLessThan(order('page'));
  expect(noted('foreign')).toEqual([[false]]);
});

test('gives the sandboxed window a preload script that requires Electron and nothing else', () => {
  expect(noted('window')).toEqual([[true, resolve('dist/electron/preload.cjs')]]);
  const script = readFileSync('dist/electron/preload.cjs', 'utf8');
  expect([...script.matchAll(/require\("([^"]+)"\)/g)].map((match) => match[1])).toEqual(['electron']);
});

test('shows the file of a second start where nothing was done yet, and again after a crash', () => {
  expect(noted('project')).toEqual([['demo.json'], ['mine.json'], ['mine.json']]);
  expect(noted('window')).toHaveLength(1);
  expect(noted('page')).toHaveLength(3);
  expect(log).toMatch(/page gone: crashed, code 5/);
  expect(log).not.toContain(userData);
});

test('asks about edits before it closes, lets the page save, and ends when it is told to', () => {
  const questions = noted('ask').filter(([asked]) => Array.isArray(asked));
  expect(questions).toEqual(Array(3).fill([['Save', "Don't save", 'Keep editing']]));
  expect(noted('send')).toEqual([[saveAndCloseChannel]]);
  expect(noted('open')).toEqual([[true]]);
  expect(noted('closed')).toHaveLength(1);
  expect(notes.at(-1)).toEqual(['exit', 0]);
  // written by the window that closed last, which the end of the program waits for
  expect(JSON.parse(readFileSync(join(userData, 'window.json'), 'utf8'))).toMatchObject({ x: 10, width: 1000 });
});

test('hears what may reach it from outside, and lives with a fault of its own, which it tells and writes down', () => {
  const outside = ['second-instance', 'open-file', 'certificate-error', 'select-client-certificate', 'login'];
  const ends = ['before-quit', 'will-quit', 'child-process-gone', 'uncaughtException', 'unhandledRejection'];
  expect(noted('listens')[0]).toEqual(expect.arrayContaining([...outside, ...ends]));
  expect(noted('ask')).toContainEqual([words.fault.title]);
  expect(log).toContain('odd fault at mine.json');
});

test('a second start opens nothing and ends', () => {
  expect(run('electronStub.cjs', { STUB_SECOND: '1' })).toEqual([['exit', 0]]);
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
