import { readFileSync } from 'node:fs';
import type { IpcMain, WebContents } from 'electron';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { argumentChecks, commandChannel, type HostApi, type PreloadApi } from '../../electron/contract.ts';
import { setupIpc } from '../../electron/ipc.ts';
import { serveScheme } from '../../electron/protocol.ts';
import { pagePolicy } from '../../electron/services/contentPolicy.ts';
import { createWindow, lockDown, windowOptions } from '../../electron/window.ts';
import { BrowserWindow, exposed, ipcHandlers, ipcMain, ipcRenderer } from './electronStub.ts';
import { fakeContents, guardOf } from './fakeContents.ts';

vi.mock('electron', () => import('./electronStub.ts'));

const called = vi.fn(async (_argument: unknown) => ({ ok: true, value: null }));
const api = Object.fromEntries(Object.keys(argumentChecks).map((name) => [name, called])) as unknown as HostApi;
const ours = { mainFrame: { url: 'augerwright://app/index.html' } };
const from = (sender: { mainFrame: { url: string } }, senderFrame: unknown = sender.mainFrame) => ({
  sender,
  senderFrame,
});

function invoke(name: string, event: unknown, argument: unknown) {
  const handler = ipcHandlers.get(name) as unknown as (event: unknown, argument: unknown) => Promise<unknown>;
  return handler(event, argument);
}

const refused = (code: string) => expect.objectContaining({ ok: false, issues: [expect.objectContaining({ code })] });

describe('calls from the window', () => {
  beforeAll(() =>
    setupIpc(ipcMain as unknown as IpcMain, api, (contents) => contents === (ours as never as WebContents)),
  );

  test('the main frame of our own window is answered', async () => {
    expect(await invoke('listExamples', from(ours), null)).toEqual({ ok: true, value: null });
  });

  test.each([
    ['another window', from({ mainFrame: { url: 'augerwright://app/index.html' } })],
    ['a frame inside our window', from(ours, { url: 'augerwright://app/index.html' })],
    ['our window on a foreign page', from(ours, { url: 'https://example.org/' })],
    ['a frame that is gone', from(ours, null)],
  ])('%s is refused on every channel', async (_who, event) => {
    called.mockClear();
    for (const name of ipcHandlers.keys()) expect(await invoke(name, event, null)).toEqual(refused('call-sender'));
    expect(called).not.toHaveBeenCalled();
  });

  test('our own window is refused once it shows a look-alike origin', async () => {
    const sly = { mainFrame: { url: 'augerwright://app.example.org/index.html' } };
    const handlers = new Map<string, (event: unknown, argument: unknown) => Promise<unknown>>();
    const table = { handle: (name: string, handler: never) => void handlers.set(name, handler) };
    setupIpc(table as unknown as IpcMain, api, () => true);
    expect(await handlers.get('listExamples')?.(from(sly), null)).toEqual(refused('call-sender'));
  });
});

describe('arguments from the window', () => {
  test.each([
    ['readExample', { id: '../../secret' }],
    ['readExample', { id: 'demo', more: 1 }],
    ['readExample', null],
    ['readMaterial', { id: '../examples/demo' }],
    ['readMaterial', {}],
    ['listMaterials', { anything: 1 }],
    ['listExamples', { anything: 1 }],
    ['openRecent', { handle: '/etc/passwd' }],
    ['saveProject', { handle: 'a'.repeat(32), text: 5 }],
    ['saveProject', { path: '/tmp/x', text: '' }],
    ['saveProjectAs', { text: '', suggestedName: '../up.json' }],
    ['saveProjectAs', { text: '', suggestedName: '..' }],
    ['saveProjectAs', { text: '', suggestedName: 'a\u0000.json' }],
    ['exportFile', { suggestedName: 'C:\\x.stl', data: new Uint8Array() }],
    ['exportFile', { suggestedName: 'x.stl', data: 'text' }],
    ['importText', { kind: 'exe' }],
    ['setEdited', { edited: 'yes' }],
    [
      'setMenu',
      { groups: [{ id: 'view', label: 'View', items: [{ id: '../x', label: 'X', keys: null, enabled: true }] }] },
    ],
    ['setMenu', { groups: [{ id: 'view', label: 'a\u0007', items: [] }] }],
  ])('%s refuses %j', async (name, argument) => {
    called.mockClear();
    expect(await invoke(name, from(ours), argument)).toEqual(refused('call-argument'));
    expect(called).not.toHaveBeenCalled();
  });
});

describe('the window', () => {
  test('is sandboxed, isolated, and without Node', () => {
    createWindow('/dist');
    expect(BrowserWindow.made).toHaveLength(1);
    expect(BrowserWindow.made[0]).toEqual(windowOptions('/dist/electron/preload.cjs', '/dist/renderer/icon.png'));
    expect(windowOptions('p', 'i').webPreferences).toMatchObject({
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      webviewTag: false,
    });
  });

  test('denies new windows, navigation, embedded views and permissions', () => {
    const { contents, setWindowOpenHandler, session, stops } = fakeContents();
    lockDown(contents);
    expect(guardOf(setWindowOpenHandler)({ url: 'https://example.org' })).toEqual({ action: 'deny' });
    for (const name of ['will-navigate', 'will-redirect', 'will-frame-navigate', 'will-attach-webview']) {
      expect(stops(name), name).toBe(true);
    }
    const decide = vi.fn();
    guardOf(session.setPermissionRequestHandler)(contents, 'media', decide);
    expect(decide.mock.calls).toEqual([[false]]);
    expect(guardOf(session.setPermissionCheckHandler)()).toBe(false);
    expect(guardOf(session.setDevicePermissionHandler)()).toBe(false);
  });
});

describe('our own scheme', () => {
  const get = async (address: string, method = 'GET') => {
    const protocol = { handle: vi.fn() };
    serveScheme(protocol, 'renderer');
    const respond = protocol.handle.mock.calls[0]?.[1] as (request: Request) => Promise<Response>;
    return respond({ url: address, method } as Request);
  };

  test('serves the page with the policy in its headers', async () => {
    const answer = await get('augerwright://app/index.html');
    expect(answer.status).toBe(200);
    expect(answer.headers.get('Content-Security-Policy')).toMatch(/^default-src 'none'; /);
  });

  test.each([
    'augerwright://app/..%2fpackage.json',
    'augerwright://app/%2e%2e/package.json',
    'augerwright://app/panels/..%5c..%5cpackage.json',
    'augerwright://app/.stamp',
    'augerwright://app/tsconfig.json%00.html',
    'augerwright://other/index.html',
    'augerwright://app/missing.html',
    'augerwright://app/%zz.html',
  ])('%s is not found', async (address) => {
    expect((await get(address)).status).toBe(404);
  });

  test('answers no other method than GET', async () => {
    expect((await get('augerwright://app/index.html', 'POST')).status).toBe(404);
  });
});

describe('what is written twice agrees', () => {
  test('the page carries the same policy as the headers', () => {
    const page = readFileSync('renderer/index.html', 'utf8');
    expect(page).toContain(`content="${pagePolicy}"`);
    expect(pagePolicy).not.toMatch(/unsafe-inline|'unsafe-eval'|https?:|\*/);
  });

  test('the preload script exposes every call of the contract and never the channel itself', async () => {
    await import('../../electron/preload.ts');
    const shown = exposed.get('augerwright') as PreloadApi;
    expect(Object.keys(shown).sort()).toEqual([...Object.keys(argumentChecks), 'onCommand', 'platform'].sort());
    await shown.readExample({ id: 'demo' });
    expect(ipcRenderer.invoke).toHaveBeenCalledWith('readExample', { id: 'demo' });
    const listener = vi.fn();
    shown.onCommand(listener);
    const [channel, hear] = ipcRenderer.on.mock.calls[0] as [string, (event: unknown, id: unknown) => void];
    expect(channel).toBe(commandChannel);
    hear({ sender: 'hidden' }, 'undo');
    hear({}, { not: 'text' });
    expect(listener.mock.calls).toEqual([['undo']]);
  });
});
