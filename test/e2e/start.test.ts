import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { afterAll, afterEach, expect, test } from 'vitest';

let child: ChildProcess | null = null;
const state = mkdtempSync(join(tmpdir(), 'augerwright-state-'));

afterEach(() => child?.kill('SIGKILL'));
afterAll(() => rmSync(state, { recursive: true, force: true }));

/** Starts the workbench as `npm start -- WORDS` does, without a window. */
const start = (...words: string[]) => run(['--no-window', ...words], {});

function run(words: readonly string[], env: Record<string, string>) {
  const started = spawn(process.execPath, ['electron/cli/start.mjs', ...words], {
    env: { ...process.env, AUGERWRIGHT_STATE: state, ...env },
  });
  child = started;
  let out = '';
  let problems = '';
  started.stderr.on('data', (part) => {
    problems += part;
  });
  const address = new Promise<string>((resolve) => {
    started.stdout.on('data', (part) => {
      out += part;
      const found = /http:\/\/127\.0\.0\.1:\d+\/[0-9a-f]+\//.exec(out)?.[0];
      if (found) resolve(found);
    });
  });
  const status = new Promise<number | null>((resolve) => started.once('exit', resolve));
  return { address, status, process: started, problems: () => problems, out: () => out };
}

const readStartProject = async (address: string) => {
  const headers = { 'Content-Type': 'application/json', Origin: new URL(address).origin };
  const answer = await fetch(`${address}api/readStartProject`, { method: 'POST', headers, body: 'null' });
  return (await answer.json()) as { ok: boolean; value: { name: string; handle: string | null } };
};

test('prints an address that serves the demo, and ends cleanly when told to stop', async () => {
  const started = start();
  const address = await started.address;
  expect((await fetch(address)).status).toBe(200);
  expect(await readStartProject(address)).toMatchObject({ ok: true, value: { name: 'demo.json', handle: null } });
  expect(started.out()).toMatch(
    /^No window was wanted.*: serving the workbench|^There is no display.*: serving the workbench/m,
  );
  started.process.kill('SIGINT');
  expect(await started.status).toBe(0);
  await expect(fetch(address)).rejects.toThrow();
  expect(started.problems()).toBe('');
});

test('opens the file it is given, and SIGTERM ends it as cleanly', async () => {
  const started = start('assets/examples/wax-head.json');
  const project = await readStartProject(await started.address);
  expect(project.value.name).toBe('wax-head.json');
  expect(project.value.handle).toMatch(/^[0-9a-f]{32}$/);
  started.process.kill('SIGTERM');
  expect(await started.status).toBe(0);
});

test.each([
  ['nowhere.json', /no such file/i],
  ['assets', /folder/],
  ['--colour', /no such option/i],
])('refuses %s with status 2', async (word, message) => {
  const started = start(word);
  expect(await started.status).toBe(2);
  expect(started.problems()).toMatch(message);
});

test('opens an app window where there is a display, and ends when it is closed', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'augerwright-browser-'));
  const seen = join(folder, 'seen');
  // A browser that notes its words and is closed at once.
  writeFileSync(join(folder, 'chromium'), `#!/bin/sh\nprintf '%s\\n' "$@" > '${seen}'\n`, { mode: 0o755 });
  const path = `${folder}${delimiter}${process.env.PATH}`;
  const started = run([], { DISPLAY: ':0', PATH: path, AUGERWRIGHT_NO_ELECTRON: '1' });
  expect(await started.status).toBe(0);
  expect(started.out()).toMatch(/^Electron's binary is not used/m);
  expect(readFileSync(seen, 'utf8')).toContain(`--app=${await started.address}`);
  rmSync(folder, { recursive: true });
});
