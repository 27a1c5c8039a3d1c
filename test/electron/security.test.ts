import { readFileSync } from 'node:fs';
import type { IpcMain, WebContents } from 'electron';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import {
  argumentChecks,
  commandChannel,
  type HostApi,
  type PreloadApi,
  saveAndCloseChannel,
} from '../../electron/contract.ts';
import { setupIpc } from '../../electron/ipc.ts';
import { failedAddress, serveScheme } from '../../electron/protocol.ts';
import { pagePolicy } from '../../electron/services/contentPolicy.ts';
import { words } from '../../electron/words.ts';
import { exposed, ipcHandlers, ipcMain, ipcRenderer, webUtils } from './electronStub.ts';

vi.mock('electron', () => import('./electronStub.ts'));

const called = vi.fn(async (_argument: unknown) => ({ ok: true, value: null }));
const api = Object.fromEntries(Object.keys(argumentChecks).map((name) => [name, called])) as unknown as HostApi;
const heard = vi.fn();
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
    setupIpc(ipcMain as unknown as IpcMain, (contents) =>
      contents === (ours as never as WebContents) ? { api, heard } : undefined,
    ),
  );

  test('the main frame of our own window is answered', async () => {
    expect(await invoke('listExamples', from(ours), null)).toEqual({ ok: true, value: null });
    expect(heard).toHaveBeenCalledWith('listExamples', null, { ok: true, value: null });
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
    setupIpc(table as unknown as IpcMain, () => ({ api, heard }));
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
    ['saveProject', { handle: 'a'.repeat(32), text: 5, version: null, evenIfChanged: false }],
    ['saveProject', { handle: 'a'.repeat(32), text: '', version: 'latest', evenIfChanged: false }],
    ['openDropped', { path: '' }],
    ['openDropped', '/etc/passwd'],
    ['writeJournal', { journal: '../journal', entry: null }],
    ['readRecovery', { id: '../../secret' }],
    ['logFault', { message: 'x'.repeat(4_001), where: 'window' }],
    ['newWindow', { address: 'https://example.org' }],
    ['showLogFolder', { path: '/etc' }],
    ['closeWindow', { window: 2 }],
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

  test('a page that is missing says so in words, under the same policy', async () => {
    const answer = await get(failedAddress);
    expect(answer.headers.get('Content-Type')).toMatch(/^text\/html/);
    expect(answer.headers.get('Content-Security-Policy')).toMatch(/^default-src 'none'; /);
    expect(answer.headers.get('X-DNS-Prefetch-Control')).toBe('off');
    expect(await answer.text()).toContain(words.missing.title);
  });

  test('answers no other method than GET', async () => {
    expect((await get('augerwright://app/index.html', 'POST')).status).toBe(404);
  });
});

test('a file dragged in is opened by the path that the system gave it, never by one that the page names', async () => {
  await import('../../electron/preload.ts');
  const shown = exposed.get('augerwright') as PreloadApi;
  ipcRenderer.invoke.mockClear();
  webUtils.getPathForFile.mockReturnValueOnce('/home/me/screw.json');
  await shown.openDropped({ path: '/etc/passwd' } as unknown as File);
  expect(ipcRenderer.invoke.mock.calls).toEqual([['openDropped', { path: '/home/me/screw.json' }]]);
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
    const more = ['onCommand', 'onSaveAndClose', 'platform'];
    expect(Object.keys(shown).sort()).toEqual([...Object.keys(argumentChecks), ...more].sort());
    await shown.readExample({ id: 'demo' });
    expect(ipcRenderer.invoke).toHaveBeenCalledWith('readExample', { id: 'demo' });
    const listener = vi.fn();
    shown.onCommand(listener);
    const [channel, hear] = ipcRenderer.on.mock.calls[0] as [string, (event: unknown, id: unknown) => void];
    expect(channel).toBe(commandChannel);
    hear({ sender: 'hidden' }, 'undo');
    hear({}, { not: 'text' });
    expect(listener.mock.calls).toEqual([['undo']]);
    const asked = vi.fn();
    shown.onSaveAndClose(asked);
    const [closing, ask] = ipcRenderer.on.mock.calls[1] as [string, (event: unknown) => void];
    expect(closing).toBe(saveAndCloseChannel);
    ask({ sender: 'hidden' });
    expect(asked.mock.calls).toEqual([[]]);
  });
});
