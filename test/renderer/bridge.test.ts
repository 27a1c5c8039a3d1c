// @vitest-environment jsdom
import { afterEach, describe, expect, test, vi } from 'vitest';
import { argumentChecks, type Channel, type PreloadApi } from '../../electron/contract.ts';
import { getBridge, loopbackBridge, setBridge } from '../../renderer/bridge.ts';
import { electronBridge } from '../../renderer/bridgeElectron.ts';
import { memoryBridge } from '../helpers/memoryBridge.ts';

const answered = { ok: true, value: null };

afterEach(() => {
  vi.unstubAllGlobals();
  setBridge(null);
});

describe('over the preload functions', () => {
  test('every argument passes the check that the host will make', async () => {
    const sent: [Channel, unknown][] = [];
    const calls = Object.keys(argumentChecks).map((name) => [
      name,
      async (argument: unknown) => {
        sent.push([name as Channel, argument]);
        return answered;
      },
    ]);
    const events = { onCommand: vi.fn(), onSaveAndClose: vi.fn() };
    const openDropped = async (file: File) => {
      sent.push(['openDropped', { path: `/${file.name}` }]);
      return answered;
    };
    const api = { ...Object.fromEntries(calls), ...events, openDropped, platform: 'linux' };
    const bridge = electronBridge(api as unknown as PreloadApi);
    const handle = 'a'.repeat(32);
    const version = 'b'.repeat(64);
    await bridge.readStartProject();
    await bridge.listExamples();
    await bridge.readExample('demo');
    await bridge.listMaterials();
    await bridge.readMaterial('hdpe');
    await bridge.listRecent();
    await bridge.openRecent(handle);
    await bridge.openProject();
    const over = { name: 'a.json', version, evenIfChanged: false };
    await bridge.saveProject({ ...over, handle, text: 'one' });
    await bridge.saveProject({ ...over, handle: null, text: 'two' });
    await bridge.lookAtFile(handle, version);
    await bridge.takeOverFile(handle);
    await bridge.leaveFile(handle);
    await bridge.openPrevious(handle);
    await bridge.openDropped(new File(['{}'], 'b.json'));
    await bridge.writeJournal(handle, { handle, name: 'a.json', text: '{}', step: 'Lead', drafts: { 'a/0/b': '3,' } });
    await bridge.closeJournal(handle);
    await bridge.listRecoveries(handle);
    await bridge.readRecovery(handle);
    await bridge.dropRecovery(handle);
    await bridge.readAbout();
    await bridge.logFault('broke', 'window');
    bridge.newWindow();
    bridge.showLogFolder();
    bridge.closeWindow();
    await bridge.importText('csv');
    await bridge.exportFile('a.stl', new Uint8Array([1]));
    await bridge.printReport('a.pdf');
    bridge.setEdited(true);
    bridge.setMenu([
      { id: 'edit', label: 'Edit', items: [{ id: 'undo', label: 'Undo', keys: 'Mod+Z', enabled: true }] },
    ]);
    for (const [name, argument] of sent) expect(argumentChecks[name].safeParse(argument).error, name).toBeUndefined();
    expect(new Set(sent.map(([name]) => name))).toEqual(new Set(Object.keys(argumentChecks)));
    expect(sent).toContainEqual(['saveProjectAs', { text: 'two', suggestedName: 'a.json' }]);
  });
});

describe('over the loopback host', () => {
  const base = 'http://127.0.0.1:5000/token/';

  test('asks below the page address, with JSON', async () => {
    const fetched = vi.fn(async (_address: URL, _words: RequestInit) => ({ json: async () => answered }));
    vi.stubGlobal('fetch', fetched);
    expect(await loopbackBridge(base).readExample('demo')).toEqual(answered);
    const [address, words] = fetched.mock.calls[0];
    expect(String(address)).toBe(`${base}api/readExample`);
    expect(words).toMatchObject({ method: 'POST', body: '{"id":"demo"}' });
    const { 'X-Augerwright-Window': name } = words.headers as Record<string, string>;
    expect(name).toMatch(/^[0-9a-f]{32}$/);
    await loopbackBridge(base).listExamples();
    expect((fetched.mock.calls[1][1].headers as Record<string, string>)['X-Augerwright-Window']).toBe(name);
  });

  test('a host that is gone is an issue', async () => {
    vi.stubGlobal('fetch', async () => {
      throw new TypeError('Failed to fetch');
    });
    expect(await loopbackBridge(base).listExamples()).toMatchObject({
      ok: false,
      issues: [{ code: 'host-unreachable' }],
    });
  });

  test('a project without a handle is saved as a download', async () => {
    const clicked: string[] = [];
    vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function (this: HTMLAnchorElement) {
      clicked.push(this.download);
    });
    URL.createObjectURL = () => 'blob:none';
    const mine = { handle: null, name: 'mine.json', text: '{}', version: null, evenIfChanged: false };
    const saved = await loopbackBridge(base).saveProject(mine);
    expect(saved).toEqual({ ok: true, value: { handle: null, path: null, name: 'mine.json', version: null } });
    expect(clicked).toEqual(['mine.json']);
  });

  test('leaving with unsaved edits asks first', () => {
    const leave = () => {
      const event = new Event('beforeunload', { cancelable: true });
      window.dispatchEvent(event);
      return event.defaultPrevented;
    };
    const bridge = loopbackBridge(base);
    expect(leave()).toBe(false);
    bridge.setEdited(true);
    expect(leave()).toBe(true);
    bridge.setEdited(false);
    expect(leave()).toBe(false);
  });
});

test('without a preload script the loopback bridge is used, and another can be put in its place', () => {
  expect(getBridge().host).toBe('loopback');
  const { bridge } = memoryBridge({ handle: null, path: null, name: 'a.json', text: '{}' });
  setBridge(bridge);
  expect(getBridge()).toBe(bridge);
});

test('the stand-in for tests keeps what is saved', async () => {
  const { bridge, saved } = memoryBridge({ handle: null, path: null, name: 'a.json', text: 'start' });
  expect(await bridge.readStartProject()).toMatchObject({ ok: true, value: { text: 'start' } });
  await bridge.saveProjectAs('kept', 'b.json');
  expect(new TextDecoder().decode(saved.get('b.json'))).toBe('kept');
});
