/** Web contents that remember the guards put on them. */

import { EventEmitter } from 'node:events';
import type { WebContents } from 'electron';
import { vi } from 'vitest';

const setters = [
  'setPermissionRequestHandler',
  'setPermissionCheckHandler',
  'setDevicePermissionHandler',
  'setDisplayMediaRequestHandler',
  'setBluetoothPairingHandler',
  'setCertificateVerifyProc',
  'setSpellCheckerEnabled',
] as const;

type Setter = ReturnType<typeof vi.fn>;

/** A session that remembers its guards by the names of their setters. */
export function fakeSession() {
  const guards = Object.fromEntries(setters.map((name) => [name, vi.fn()])) as Record<(typeof setters)[number], Setter>;
  return Object.assign(new EventEmitter(), guards, { webRequest: { onBeforeRequest: vi.fn() } });
}

/** Whether whoever hears an event stops it. */
export function stops(source: EventEmitter, name: string, ...rest: readonly unknown[]): boolean {
  const [first = {}, ...more] = rest;
  const event = { ...(first as object), preventDefault: vi.fn() };
  source.emit(name, event, ...more);
  return event.preventDefault.mock.calls.length > 0;
}

/** Contents under test. */
export function fakeContents() {
  return Object.assign(new EventEmitter(), {
    session: fakeSession(),
    setWindowOpenHandler: vi.fn(),
    setWebRTCIPHandlingPolicy: vi.fn(),
    send: vi.fn(),
    getURL: vi.fn(() => 'augerwright://app/index.html'),
    forcefullyCrashRenderer: vi.fn(),
    mainFrame: { url: 'augerwright://app/index.html' },
  });
}

/** See `fakeContents`. */
export type FakeContents = ReturnType<typeof fakeContents>;

/** The same, as our modules take them. */
export const asContents = (fake: FakeContents): WebContents => fake as unknown as WebContents;

/** The guard that a setter was given. */
export const guardOf = (setter: Setter) => setter.mock.calls[0]?.[0] as (...args: unknown[]) => unknown;
