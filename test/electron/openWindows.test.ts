import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { App, WebContents } from 'electron';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { OpenedProject } from '../../electron/contract.ts';
import { createWindowMenu } from '../../electron/menu.ts';
import { menuTemplate } from '../../electron/menuTemplate.ts';
import { createOpenWindows, type OpenWindows } from '../../electron/openWindows.ts';
import { hearOutside } from '../../electron/outside.ts';
import { startAddress } from '../../electron/protocol.ts';
import { answer } from '../../electron/services/answer.ts';
import { createHost } from '../../electron/services/host.ts';
import { app, dialog, BrowserWindow as FakeWindow, Menu, shell } from './electronStub.ts';
import { stops } from './fakeContents.ts';

vi.mock('electron', () => import('./electronStub.ts'));

let folder: string;
let windows: OpenWindows;
const log = { info: vi.fn(), warn: vi.fn(), error: vi.fn() };
const inFolder = (name: string) => join(folder, name);
const made = (i: number) => FakeWindow.made[i];

/** Calls the host as the page of a window would. */
async function call<T>(i: number, name: string, argument: unknown): Promise<T> {
  const caller = windows.callerOf(made(i).webContents as unknown as WebContents);
  if (!caller) throw new Error('no such window');
  const result = await answer(caller.api, name, argument);
  caller.heard(name, argument, result);
  if (!result.ok) throw new Error(result.issues[0].message);
  return result.value as T;
}

const started = (i: number) => call<OpenedProject>(i, 'readStartProject', null);

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'augerwright-windows-'));
  for (const name of ['one.json', 'two.json']) writeFileSync(inFolder(name), `{"name":"${name}"}`);
  FakeWindow.made = [];
  app.removeAllListeners();
  for (const mock of [dialog.showMessageBox, shell.openPath, Menu.setApplicationMenu, log.error]) mock.mockClear();
  const examplesFolder = 'test/electron/examples';
  const host = createHost({
    stateFolder: folder,
    examplesFolder,
    materialsFolder: 'assets/materials',
    startPath: null,
    recentListPath: null,
  });
  const placePath = inFolder('window.json');
  const desk = { host, log, distFolder: '/dist', placePath, packed: true, platform: 'linux' };
  windows = createOpenWindows(desk, app as unknown as App);
});

afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('files from outside', () => {
  test('are loaded where the only window still shows the demo', async () => {
    await windows.open(null);
    expect((await started(0)).name).toBe('demo.json');
    await windows.openFiles([inFolder('one.json')]);
    expect(FakeWindow.made).toHaveLength(1);
    expect(made(0).loaded).toEqual([startAddress, startAddress]);
    expect((await started(0)).name).toBe('one.json');
  });

  test('get a window of their own where something was done in the only one', async () => {
    await windows.open(null);
    await started(0);
    await call(0, 'setEdited', { edited: true });
    await windows.openFiles([inFolder('one.json'), inFolder('two.json')]);
    expect(FakeWindow.made).toHaveLength(3);
    expect((await started(1)).name).toBe('one.json');
    expect((await started(2)).name).toBe('two.json');
    expect(made(0).loaded).toHaveLength(1);
  });

  test('that a window began with, but shows no more, are opened anew', async () => {
    await windows.openFiles([inFolder('one.json')]);
    await started(0);
    await call(0, 'readExample', { id: 'demo' });
    await windows.openFiles([inFolder('one.json')]);
    expect(FakeWindow.made).toHaveLength(2);
  });

  test('that a window shows bring it to the front, and so does a start without files', async () => {
    await windows.openFiles([inFolder('one.json')]);
    await started(0);
    await windows.open(null);
    await windows.openFiles([inFolder('one.json')]);
    expect(FakeWindow.made).toHaveLength(2);
    expect(made(0).focus).toHaveBeenCalledTimes(1);
    await windows.openFiles([]);
    expect(made(1).focus).toHaveBeenCalledTimes(1);
  });
});

describe('a window', () => {
  test('starts, after a crash, with the file it showed last', async () => {
    await windows.open(null);
    await started(0);
    dialog.showOpenDialog.mockResolvedValueOnce({ canceled: false, filePaths: [inFolder('two.json')] });
    await call(0, 'openProject', null);
    made(0).webContents.emit('render-process-gone', {}, { reason: 'crashed', exitCode: 1 });
    await vi.waitFor(() => expect(made(0).loaded).toHaveLength(2));
    expect((await started(0)).name).toBe('two.json');
  });

  test('opens one more, is no other’s caller, and is forgotten once closed', async () => {
    await windows.open(null);
    await call(0, 'newWindow', null);
    await vi.waitFor(() => expect(FakeWindow.made).toHaveLength(2));
    const contents = made(0).webContents as unknown as WebContents;
    expect(windows.callerOf(contents)).not.toBe(windows.callerOf(made(1).webContents as unknown as WebContents));
    await call(0, 'closeWindow', null);
    expect(windows.callerOf(contents)).toBeUndefined();
    expect(windows.callerOf({} as WebContents)).toBeUndefined();
  });

  test('with edits asks before it closes, until its page is gone', async () => {
    await windows.open(null);
    await call(0, 'setEdited', { edited: true });
    dialog.showMessageBox.mockResolvedValueOnce({ response: 2 });
    made(0).close();
    expect(dialog.showMessageBox).toHaveBeenCalledTimes(1);
    await vi.waitFor(() => expect(made(0).isDestroyed()).toBe(false));
    made(0).webContents.emit('render-process-gone', {}, { reason: 'oom', exitCode: 1 });
    made(0).close();
    expect(made(0).isDestroyed()).toBe(true);
  });

  test('closed without saving gives its kept work up, late entries too', async () => {
    await windows.open(null);
    const journal = 'c'.repeat(32);
    const entry = { handle: null, name: 'demo.json', text: '{}', step: 'Pitch', drafts: {} };
    await call(0, 'setEdited', { edited: true });
    await call(0, 'writeJournal', { journal, entry });
    const kept = () => readdirSync(folder, { recursive: true }).filter((name) => String(name).includes(journal));
    expect(kept()).not.toEqual([]);
    const caller = windows.callerOf(made(0).webContents as unknown as WebContents);
    dialog.showMessageBox.mockResolvedValueOnce({ response: 1 });
    made(0).close();
    await vi.waitFor(() => expect(made(0).isDestroyed()).toBe(true));
    expect(kept()).toEqual([]);
    expect(await caller?.api.writeJournal({ journal, entry })).toEqual({ ok: true, value: null });
    expect(kept()).toEqual([]);
  });

  test('leaves its place for the next start', async () => {
    await windows.open(null);
    made(0).emit('move');
    made(0).destroy();
    const kept = { x: 10, y: 20, width: 1000, height: 700, maximized: false, display: 1 };
    await vi.waitFor(() => expect(JSON.parse(readFileSync(inFolder('window.json'), 'utf8'))).toEqual(kept));
    await windows.open(null);
    expect(made(1).options).toMatchObject({ x: 10, y: 20, width: 1000, height: 700 });
  });

  test('shows the folder of the log and no other, and a save that failed is written down without its path', async () => {
    await windows.open(null);
    await call(0, 'showLogFolder', null);
    expect(shell.openPath.mock.calls).toEqual([['/stub/logs']]);
    dialog.showSaveDialog.mockResolvedValueOnce({ canceled: false, filePath: inFolder('gone/x.json') });
    await expect(call(0, 'saveProjectAs', { text: '{}', suggestedName: 'x.json' })).rejects.toThrow();
    expect(log.error.mock.calls).toEqual([[expect.stringMatching(/^saveProjectAs failed: file-[a-z-]+$/)]]);
  });
});

describe('starts', () => {
  const heard = (words: readonly string[], isPackaged = true) => {
    const outside = hearOutside(Object.assign(app, { isPackaged }) as unknown as App, words, folder);
    const files: (readonly string[])[] = [];
    return { files, hear: () => outside.hear((given) => files.push(given)) };
  };

  test('open the files named behind the program, packed or not', () => {
    for (const packed of [true, false]) {
      const { files, hear } = heard(['/bin/augerwright', ...(packed ? [] : ['.']), '--flag', 'one.json'], packed);
      hear();
      expect(files).toEqual([[inFolder('one.json')]]);
    }
  });

  test('take what the system opens before and after the program is ready', () => {
    const { files, hear } = heard(['/bin/augerwright']);
    expect(stops(app, 'open-file', {}, inFolder('one.json'))).toBe(true);
    stops(app, 'open-file', {}, inFolder('missing.json'));
    hear();
    stops(app, 'open-file', {}, inFolder('two.json'));
    expect(files).toEqual([[inFolder('one.json')], [inFolder('two.json')]]);
  });

  test('for the second time hand their files over, from their own folder', () => {
    const { files, hear } = heard(['/bin/augerwright']);
    hear();
    app.emit('second-instance', {}, ['/bin/augerwright', '--no-sandbox', 'two.json', '../etc'], folder);
    app.emit('second-instance', {}, ['/bin/augerwright', 'two.json'], '/');
    expect(files).toEqual([[], [inFolder('two.json')], []]);
  });
});

describe('the menu', () => {
  const about = { id: 'about', label: 'About', keys: null, enabled: true };
  const groups = [{ id: 'view', label: 'View', items: [about] }];

  test('is each window’s own, or on macOS the one of the window in front', () => {
    const window = new FakeWindow({});
    createWindowMenu(window as never, 'linux', false).set(groups);
    expect(window.setMenu).toHaveBeenCalledTimes(1);
    expect(Menu.setApplicationMenu).not.toHaveBeenCalled();
    const behind = new FakeWindow({});
    behind.isFocused.mockReturnValue(false);
    createWindowMenu(behind as never, 'darwin', false).set(groups);
    expect(Menu.setApplicationMenu).not.toHaveBeenCalled();
    behind.emit('focus');
    expect(Menu.setApplicationMenu).toHaveBeenCalledTimes(1);
  });

  test('asks the window about the program, and offers tools in unpacked builds alone', () => {
    const sent: string[] = [];
    const [program] = menuTemplate('darwin', groups, (id) => sent.push(id));
    const [first] = program.submenu as { click?: () => void; role?: string }[];
    first.click?.();
    expect([sent, first.role]).toEqual([['about'], undefined]);
    const text = (tools: boolean) => JSON.stringify(menuTemplate('linux', groups, () => undefined, tools));
    expect([text(false), text(true)].map((all) => all.includes('toggleDevTools'))).toEqual([false, true]);
  });
});
