import { EventEmitter } from 'node:events';
import type { App, BrowserWindow } from 'electron';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { careFor } from '../../electron/care.ts';
import { hearFaults } from '../../electron/faults.ts';
import { failedAddress, startAddress } from '../../electron/protocol.ts';
import { app, dialog, BrowserWindow as FakeWindow } from './electronStub.ts';
import { stops } from './fakeContents.ts';

vi.mock('electron', () => import('./electronStub.ts'));

const log = { info: vi.fn(), warn: vi.fn(), error: vi.fn() };
let time = 0;

function cared() {
  const window = new FakeWindow({});
  const gone = vi.fn();
  const watch = careFor({ window: window as unknown as BrowserWindow, log, gone, now: () => time });
  const crash = async (reason = 'crashed') => {
    window.webContents.emit('render-process-gone', {}, { reason, exitCode: 5 });
    await vi.advanceTimersByTimeAsync(1);
  };
  return { window, gone, crash, watch };
}

const lastAsked = () => dialog.showMessageBox.mock.calls.at(-1)?.at(-1) as { buttons: string[]; signal?: AbortSignal };

beforeEach(() => {
  vi.useFakeTimers();
  app.removeAllListeners();
  dialog.showMessageBox.mockClear();
  for (const told of Object.values(log)) told.mockClear();
});

afterEach(() => vi.useRealTimers());

describe('a page that stopped', () => {
  test.each(['crashed', 'oom', 'killed', 'launch-failed', 'abnormal-exit'])('by %s starts again', async (reason) => {
    const { window, gone, crash } = cared();
    await crash(reason);
    expect(window.loaded).toEqual([startAddress]);
    expect(gone).toHaveBeenCalledTimes(1);
    expect(log.error).toHaveBeenCalledWith(`page gone: ${reason}, code 5`);
    expect(dialog.showMessageBox).not.toHaveBeenCalled();
  });

  test('as it was told to, is let go', async () => {
    const { window, crash } = cared();
    await crash('clean-exit');
    expect(window.loaded).toEqual([]);
  });

  test('starts three times a minute by itself, then when the person says so', async () => {
    const { window, crash } = cared();
    for (let i = 0; i < 3; i += 1) await crash();
    expect(window.loaded).toHaveLength(3);
    dialog.showMessageBox.mockResolvedValueOnce({ response: 0 });
    await crash();
    expect(lastAsked().buttons).toEqual(['Start again', 'Close']);
    expect(window.loaded).toHaveLength(4);
    await crash();
    expect(dialog.showMessageBox).toHaveBeenCalledTimes(1);
    expect(window.loaded).toHaveLength(5);
  });

  test('again and again can be closed', async () => {
    const { window, crash } = cared();
    dialog.showMessageBox.mockResolvedValueOnce({ response: 1 });
    for (let i = 0; i < 4; i += 1) await crash();
    expect(window.isDestroyed()).toBe(true);
    await crash();
    expect(window.loaded).toHaveLength(3);
  });

  test('is asked about once at a time', async () => {
    const { crash } = cared();
    dialog.showMessageBox.mockReturnValueOnce(new Promise(() => undefined));
    for (let i = 0; i < 5; i += 1) await crash();
    expect(dialog.showMessageBox).toHaveBeenCalledTimes(1);
  });

  test('is started by itself again a minute later', async () => {
    const { window, crash } = cared();
    for (let i = 0; i < 3; i += 1) await crash();
    time += 60_000;
    await crash();
    expect(window.loaded).toHaveLength(4);
  });

  test('holds no restart up with a question of its own, and its broken preload script is written down', () => {
    const { window } = cared();
    expect(stops(window.webContents, 'will-prevent-unload')).toBe(true);
    const fault = new Error('no bridge');
    window.webContents.emit('preload-error', {}, '/p/preload.cjs', fault);
    expect(log.error).toHaveBeenCalledWith(fault);
  });
});

describe('a page that does not load', () => {
  const fails = async (window: FakeWindow, address: string, code = -6, isMainFrame = true) => {
    window.webContents.emit('did-fail-load', {}, code, 'ERR_FILE_NOT_FOUND', address, isMainFrame);
    await vi.advanceTimersByTimeAsync(1);
  };

  test('gives way to one that says so, and then to a question', async () => {
    const { window } = cared();
    await fails(window, startAddress);
    expect(window.loaded).toEqual([failedAddress]);
    expect(window.show).toHaveBeenCalled();
    dialog.showMessageBox.mockResolvedValueOnce({ response: 1 });
    await fails(window, failedAddress);
    expect(window.isDestroyed()).toBe(true);
  });

  test('or loads and never calls, gives way too; one that calls stays', async () => {
    const { window, watch } = cared();
    const loads = () => window.webContents.emit('did-finish-load');
    loads();
    await vi.advanceTimersByTimeAsync(19_000);
    watch.heard();
    await vi.advanceTimersByTimeAsync(19_000);
    expect(window.loaded).toEqual([]);
    loads();
    await vi.advanceTimersByTimeAsync(21_000);
    expect(window.loaded).toEqual([failedAddress]);
    window.webContents.getURL.mockReturnValue(failedAddress);
    loads();
    await vi.advanceTimersByTimeAsync(21_000);
    expect(window.loaded).toEqual([failedAddress]);
  });

  test('is none where another load took its place, or a frame failed', async () => {
    const { window } = cared();
    await fails(window, startAddress, -3);
    await fails(window, startAddress, -6, false);
    expect(window.loaded).toEqual([]);
    expect(log.error).not.toHaveBeenCalled();
  });
});

describe('a page that does not answer', () => {
  test('is ended after some seconds where the person says so, which starts it again', async () => {
    const { window } = cared();
    dialog.showMessageBox.mockResolvedValueOnce({ response: 1 });
    window.emit('unresponsive');
    await vi.advanceTimersByTimeAsync(4_000);
    expect(dialog.showMessageBox).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(1_100);
    expect(lastAsked().buttons).toEqual(['Wait', 'Start it again']);
    expect(window.webContents.forcefullyCrashRenderer).toHaveBeenCalledTimes(1);
  });

  test('is let be where the person waits, and asked about again at the next silence', async () => {
    const { window } = cared();
    for (let i = 0; i < 2; i += 1) {
      window.emit('unresponsive');
      await vi.advanceTimersByTimeAsync(6_000);
    }
    expect(dialog.showMessageBox).toHaveBeenCalledTimes(2);
    expect(window.webContents.forcefullyCrashRenderer).not.toHaveBeenCalled();
  });

  test('asks nothing where it answers in time, and takes the question back where it answers later', async () => {
    const { window } = cared();
    window.emit('unresponsive');
    window.emit('responsive');
    await vi.advanceTimersByTimeAsync(6_000);
    expect(dialog.showMessageBox).not.toHaveBeenCalled();
    dialog.showMessageBox.mockReturnValueOnce(new Promise(() => undefined));
    window.emit('unresponsive');
    await vi.advanceTimersByTimeAsync(6_000);
    expect(lastAsked().signal?.aborted).toBe(false);
    window.emit('responsive');
    expect(lastAsked().signal?.aborted).toBe(true);
  });
});

describe('faults of the host', () => {
  test('are written down each, told once at a time, and lived with', async () => {
    const source = new EventEmitter();
    hearFaults(source, app as unknown as App, log);
    let close = () => undefined as unknown;
    dialog.showMessageBox.mockReturnValueOnce(
      new Promise((done) => {
        close = () => done({ response: 0 });
      }),
    );
    const [first, second] = [new Error('first'), new Error('second')];
    source.emit('uncaughtException', first);
    source.emit('unhandledRejection', second);
    expect(log.error.mock.calls).toEqual([[first], [second]]);
    expect(dialog.showMessageBox).toHaveBeenCalledTimes(1);
    close();
    await vi.advanceTimersByTimeAsync(1);
    source.emit('uncaughtException', first);
    expect(dialog.showMessageBox).toHaveBeenCalledTimes(2);
  });

  test('of the engine’s other processes are written down', () => {
    hearFaults(new EventEmitter(), app as unknown as App, log);
    app.emit('child-process-gone', {}, { type: 'GPU', reason: 'crashed', exitCode: 9 });
    app.emit('child-process-gone', {}, { type: 'Utility', reason: 'clean-exit', exitCode: 0, name: 'Audio' });
    expect(log.error.mock.calls).toEqual([['process gone: GPU, crashed, code 9']]);
  });
});
