import { EventEmitter } from 'node:events';
import type { App, BrowserWindowConstructorOptions, Session } from 'electron';
import { describe, expect, test, vi } from 'vitest';
import { deniedSwitches, lockApp, lockDown, lockSession, lockSwitches } from '../../electron/lockdown.ts';
import { startAddress } from '../../electron/protocol.ts';
import { createWindow } from '../../electron/window.ts';
import { BrowserWindow } from './electronStub.ts';
import { asContents, fakeContents, fakeSession, guardOf, stops } from './fakeContents.ts';

vi.mock('electron', () => import('./electronStub.ts'));

describe('the window', () => {
  const optionsOf = (packed: boolean) => {
    BrowserWindow.made = [];
    createWindow({ distFolder: '/dist', packed, place: null, before: 0 });
    return BrowserWindow.made[0].options as BrowserWindowConstructorOptions;
  };

  test('is sandboxed, isolated, and without Node', () => {
    expect(optionsOf(true)).toMatchObject({ x: 240, y: 70, width: 1440, height: 900, show: false });
    expect(optionsOf(true).webPreferences).toEqual({
      preload: '/dist/electron/preload.cjs',
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      webviewTag: false,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      plugins: false,
      navigateOnDragDrop: false,
      safeDialogs: true,
      spellcheck: false,
      devTools: false,
      disableBlinkFeatures: 'Auxclick',
    });
  });

  test('has tools for developers in unpacked builds alone', () => {
    expect(optionsOf(false).webPreferences?.devTools).toBe(true);
  });
});

describe('contents', () => {
  test.each([
    ['will-navigate', { url: 'https://example.org/', isMainFrame: true }],
    ['will-navigate', { url: 'augerwright://app/other.html', isMainFrame: true }],
    ['will-navigate', { url: 'data:text/html,<p>', isMainFrame: true }],
    ['will-frame-navigate', { url: startAddress, isMainFrame: false }],
    ['will-frame-navigate', { url: 'https://example.org/', isMainFrame: true }],
    ['will-redirect', { url: startAddress, isMainFrame: true }],
    ['will-attach-webview', {}],
  ])('stop %s to %j', (name, event) => {
    const contents = fakeContents();
    lockDown(asContents(contents));
    expect(stops(contents, name, event)).toBe(true);
  });

  test('let the page start itself again', () => {
    const contents = fakeContents();
    lockDown(asContents(contents));
    const again = { url: startAddress, isMainFrame: true };
    expect(['will-navigate', 'will-frame-navigate'].map((name) => stops(contents, name, again))).toEqual([
      false,
      false,
    ]);
  });

  test('open no window, send nothing from peer to peer, and lock their session once', () => {
    const contents = fakeContents();
    lockDown(asContents(contents));
    lockDown(asContents(contents));
    expect(guardOf(contents.setWindowOpenHandler)({ url: startAddress })).toEqual({ action: 'deny' });
    expect(contents.setWebRTCIPHandlingPolicy).toHaveBeenCalledWith('disable_non_proxied_udp');
    expect(contents.session.setPermissionCheckHandler).toHaveBeenCalledTimes(1);
  });
});

describe('a session', () => {
  const lockedSession = (packed = true) => {
    const session = fakeSession();
    lockSession(session as unknown as Session, packed);
    return session;
  };
  const cancels = (url: string, packed = true) => {
    const decide = vi.fn();
    guardOf(lockedSession(packed).webRequest.onBeforeRequest)({ url }, decide);
    return decide.mock.calls[0]?.[0].cancel;
  };

  test.each([
    'https://example.org/',
    'http://127.0.0.1:8080/',
    'ws://example.org/',
    'file:///etc/passwd',
    'augerwright://application/index.html',
    'augerwright://app.example.org/',
    'blob:https://example.org/1',
    'devtools://devtools/bundled/inspector.html',
    'chrome-extension://abc/page.html',
  ])('lets no request to %s out', (url) => expect(cancels(url)).toBe(true));

  test('lets through what is ours, and the tools of an unpacked build', () => {
    const ours = [startAddress, 'blob:augerwright://app/1', 'data:image/png;base64,'];
    expect(ours.map((url) => cancels(url))).toEqual([false, false, false]);
    expect(cancels('devtools://devtools/bundled/inspector.html', false)).toBe(false);
    expect(cancels('https://example.org/', false)).toBe(true);
  });

  const grants = (permission: string, address: string, isMainFrame = true): readonly unknown[] => {
    const session = lockedSession();
    const decide = vi.fn();
    guardOf(session.setPermissionRequestHandler)(null, permission, decide, { requestingUrl: address, isMainFrame });
    return [
      decide.mock.calls[0]?.[0],
      guardOf(session.setPermissionCheckHandler)(null, permission, address, { isMainFrame }),
    ];
  };

  test.each([
    'media',
    'geolocation',
    'notifications',
    'clipboard-read',
    'fileSystem',
    'openExternal',
    'usb',
    'local-fonts',
    'unknown',
  ])('grants no permission for %s', (permission) => expect(grants(permission, startAddress)).toEqual([false, false]));

  test('lets our own page write the clipboard, so that plots can be copied, and no other', () => {
    const write = 'clipboard-sanitized-write';
    for (const ours of [startAddress, 'augerwright://app/', 'augerwright://app']) {
      expect(grants(write, ours), ours).toEqual([true, true]);
    }
    for (const other of ['https://example.org/', 'augerwright://app.example.org/', '']) {
      expect(grants(write, other), other).toEqual([false, false]);
    }
    expect(grants(write, startAddress, false)).toEqual([false, false]);
  });

  test('grants no device and no picture of the screen', () => {
    const session = lockedSession();
    const decide = vi.fn();
    guardOf(session.setDisplayMediaRequestHandler)({}, decide);
    guardOf(session.setBluetoothPairingHandler)({}, decide);
    expect(decide.mock.calls).toEqual([[null], [{ confirmed: false }]]);
    expect(guardOf(session.setDevicePermissionHandler)()).toBe(false);
  });

  test('takes no download and no certificate, and asks no spelling service', () => {
    const session = lockedSession();
    const decide = vi.fn();
    guardOf(session.setCertificateVerifyProc)({ errorCode: 0 }, decide);
    expect(decide.mock.calls).toEqual([[-2]]);
    expect(stops(session, 'will-download')).toBe(true);
    expect(session.setSpellCheckerEnabled).toHaveBeenCalledWith(false);
  });
});

describe('the program', () => {
  test('refuses certificates, sign-ins and certificates of its own', () => {
    const app = new EventEmitter();
    lockApp(app as unknown as App);
    const answer = vi.fn();
    expect(stops(app, 'certificate-error', {}, null, '', '', null, answer)).toBe(true);
    expect(stops(app, 'select-client-certificate', {}, null, '', [{}], answer)).toBe(true);
    expect(stops(app, 'login', {}, null, {}, {}, answer)).toBe(true);
    expect(answer.mock.calls).toEqual([[false], [], []]);
  });

  const commandLine = (given: readonly string[]) => {
    const there = new Set(given);
    return {
      there,
      hasSwitch: (name: string) => there.has(name),
      removeSwitch: (name: string) => void there.delete(name),
      appendSwitch: (name: string, value?: string) => void there.add(value === undefined ? name : `${name}=${value}`),
    };
  };
  const lock = (isPackaged: boolean, given: readonly string[]) => {
    const line = commandLine(given);
    const taken = lockSwitches({ commandLine: line, isPackaged } as unknown as App);
    return { taken, left: line.there };
  };

  test('takes the switches for debugging off where it is packed, and there alone', () => {
    for (const name of ['remote-debugging-port', 'remote-debugging-pipe', 'inspect', 'inspect-brk', 'js-flags']) {
      expect(deniedSwitches, name).toContain(name);
    }
    expect(lock(true, [...deniedSwitches, 'lang']).left).toContain('lang');
    expect([...lock(true, deniedSwitches).left].filter((name) => deniedSwitches.includes(name))).toEqual([]);
    expect(lock(true, ['inspect']).taken).toEqual(['inspect']);
    expect(lock(false, ['remote-debugging-port']).left).toContain('remote-debugging-port');
  });

  test('looks no name up in any network', () => {
    expect(lock(true, []).left).toContain('host-resolver-rules=MAP * ~NOTFOUND');
    expect(lock(false, []).left).toContain('no-proxy-server');
  });
});
