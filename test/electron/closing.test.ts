import type { App, BrowserWindow } from 'electron';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { type Closable, createClosing } from '../../electron/closing.ts';
import { saveAndCloseChannel } from '../../electron/contract.ts';
import { app, dialog, BrowserWindow as FakeWindow } from './electronStub.ts';
import { stops } from './fakeContents.ts';

vi.mock('electron', () => import('./electronStub.ts'));

const save = 0;
const discard = 1;
const keep = 2;
const settled = () => new Promise((wake) => setTimeout(wake, 0));

/** Windows of the given states, under guard. */
function guarded(...edited: readonly boolean[]) {
  const all = edited.map((state, i) => {
    const window = new FakeWindow({});
    const one = {
      window: window as unknown as BrowserWindow,
      edited: () => state,
      name: () => `${i}.json`,
      forget: vi.fn(async () => undefined),
    };
    return { one, window };
  });
  const open = () => all.filter(({ window }) => !window.isDestroyed()).map(({ one }): Closable => one);
  const closing = createClosing(app as unknown as App, open);
  for (const { one } of all) closing.guard(one);
  return { closing, windows: all.map(({ window }) => window), ones: all.map(({ one }) => one) };
}

const answers = (...buttons: readonly number[]) => {
  for (const response of buttons) dialog.showMessageBox.mockResolvedValueOnce({ response });
};

beforeEach(() => {
  app.removeAllListeners();
  app.quit.mockClear();
  dialog.showMessageBox.mockClear();
});

describe('closing a window', () => {
  test('without edits asks nothing', () => {
    const { windows } = guarded(false);
    windows[0].close();
    expect(windows[0].isDestroyed()).toBe(true);
    expect(dialog.showMessageBox).not.toHaveBeenCalled();
  });

  test('keeps it where the person keeps editing', async () => {
    const { windows, ones } = guarded(true);
    answers(keep);
    windows[0].close();
    await settled();
    expect(windows[0].isDestroyed()).toBe(false);
    expect(dialog.showMessageBox.mock.calls[0][1]).toMatchObject({
      message: 'Save the changes of 0.json?',
      cancelId: keep,
    });
    expect(ones[0].forget).not.toHaveBeenCalled();
  });

  test('without saving gives the kept work up and closes', async () => {
    const { windows, ones } = guarded(true);
    answers(discard);
    windows[0].close();
    await settled();
    expect(ones[0].forget).toHaveBeenCalled();
    expect(windows[0].isDestroyed()).toBe(true);
  });

  test('with saving lets the page save and close itself', async () => {
    const { windows, ones } = guarded(true);
    answers(save);
    windows[0].close();
    await settled();
    expect(windows[0].webContents.send.mock.calls).toEqual([[saveAndCloseChannel]]);
    expect(windows[0].isDestroyed()).toBe(false);
    expect(ones[0].forget).not.toHaveBeenCalled();
  });

  test('twice asks once', async () => {
    const { windows } = guarded(true);
    answers(keep);
    windows[0].close();
    windows[0].close();
    await settled();
    expect(dialog.showMessageBox).toHaveBeenCalledTimes(1);
  });
});

describe('ending the program', () => {
  const quit = () => stops(app, 'before-quit');

  test('goes on where nothing would be lost', () => {
    const { windows } = guarded(false, false);
    expect(quit()).toBe(false);
    windows[0].destroy();
    expect(app.quit).not.toHaveBeenCalled();
  });

  test('asks one window after the other, and ends when each is closed', async () => {
    const { windows } = guarded(true, false, true);
    answers(discard, save);
    expect(quit()).toBe(true);
    await settled();
    expect(windows.map((window) => window.isDestroyed())).toEqual([true, false, false]);
    expect(app.quit).toHaveBeenCalledTimes(1);
    expect(quit()).toBe(true);
    await settled();
    expect(windows[2].webContents.send).toHaveBeenCalledWith(saveAndCloseChannel);
    expect(app.quit).toHaveBeenCalledTimes(1);
    windows[2].destroy();
    expect(app.quit).toHaveBeenCalledTimes(2);
    expect(quit()).toBe(false);
  });

  test('is off where a window is kept, or a save did not come about', async () => {
    const { closing, windows } = guarded(true, true);
    answers(keep);
    quit();
    await settled();
    windows[1].destroy();
    expect(app.quit).not.toHaveBeenCalled();
    answers(save);
    quit();
    await settled();
    closing.saveFailed();
    windows[0].destroy();
    expect(app.quit).not.toHaveBeenCalled();
  });
});
