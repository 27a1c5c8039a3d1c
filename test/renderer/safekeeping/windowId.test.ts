// @vitest-environment jsdom
import { beforeEach, expect, test } from 'vitest';
import { forgetWindow, renewWindow, settleWindow, windowId } from '../../../renderer/safekeeping/windowId.ts';

/** Locks as the browser's: a name is held until its page goes. */
function locks() {
  const held = new Set<string>();
  const request = async (name: string, _options: LockOptions, use: (lock: Lock | null) => unknown) => {
    const free = !held.has(name);
    if (free) held.add(name);
    return use(free ? { name, mode: 'exclusive' } : null);
  };
  return { held, manager: { request } as unknown as LockManager };
}

beforeEach(() => {
  sessionStorage.clear();
  forgetWindow();
});

test('a window draws a name, and has the same after its page is loaded anew', async () => {
  const { held, manager } = locks();
  expect(await settleWindow(manager)).toBe(false);
  const before = windowId();
  expect(before).toMatch(/^[0-9a-f]{32}$/);
  forgetWindow();
  // the page that is left gives its lock up
  held.clear();
  expect(await settleWindow(manager)).toBe(true);
  expect(windowId()).toBe(before);
});

test('a duplicated tab, whose storage was copied, draws a name of its own', async () => {
  const { manager } = locks();
  await settleWindow(manager);
  const original = windowId();
  forgetWindow();
  expect(await settleWindow(manager)).toBe(false);
  expect(windowId()).not.toBe(original);
});

test('another name can be drawn on purpose; spoilt storage is no name', async () => {
  const before = windowId();
  await renewWindow(locks().manager);
  expect(windowId()).not.toBe(before);
  sessionStorage.setItem('augerwright.window', '../../etc');
  forgetWindow();
  expect(windowId()).toMatch(/^[0-9a-f]{32}$/);
});
