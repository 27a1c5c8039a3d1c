/** The question about unsaved edits, before a window closes and before the program ends. */

import { type App, type BrowserWindow, dialog } from 'electron';
import { saveAndCloseChannel } from './contract.ts';
import { words } from './words.ts';

/** What closing needs to know of a window. */
export interface Closable {
  readonly window: BrowserWindow;
  /** Whether closing would lose edits. */
  edited(): boolean;
  /** Name of the project's file, or null. */
  name(): string | null;
  /** Gives the kept work up, because the person said so. */
  forget(): Promise<void>;
}

/** Asks on closing. */
export interface Closing {
  /** From now on, closing this window asks where edits would be lost. */
  guard(one: Closable): void;
  /** A save did not come about: whatever waited for it is off. */
  saveFailed(): void;
}

type Answer = 'closed' | 'saving' | 'kept';

/** The question, in the window that it is about. */
async function ask({ window, name, forget }: Closable): Promise<Answer> {
  const { message, detail, save, discard, keep } = words.unsaved;
  window.show();
  const { response } = await dialog.showMessageBox(window, {
    type: 'warning',
    message: message(name()),
    detail,
    buttons: [save, discard, keep],
    defaultId: 0,
    cancelId: 2,
    noLink: true,
  });
  if (window.isDestroyed()) return 'closed';
  if (response === 0) {
    window.webContents.send(saveAndCloseChannel);
    return 'saving';
  }
  if (response !== 1) return 'kept';
  await forget();
  window.destroy();
  return 'closed';
}

/**
 * Guards windows, and the end of the program: that asks window by window, and goes on when each is closed.
 * @param all the windows that are open
 */
export function createClosing(app: Pick<App, 'on' | 'quit'>, all: () => readonly Closable[]): Closing {
  const asking = new Map<Closable, Promise<Answer>>();
  let quitting = false;
  const askOnce = (one: Closable): Promise<Answer> => {
    const asked = asking.get(one) ?? ask(one).finally(() => asking.delete(one));
    asking.set(one, asked);
    return asked;
  };
  app.on('before-quit', (event) => {
    const next = all().find((one) => one.edited());
    quitting = next !== undefined;
    if (!next) return;
    event.preventDefault();
    void askOnce(next).then((answer) => {
      if (answer === 'kept') quitting = false;
    });
  });
  return {
    guard(one) {
      one.window.on('close', (event) => {
        if (!one.edited()) return;
        event.preventDefault();
        void askOnce(one);
      });
      one.window.once('closed', () => {
        if (quitting) app.quit();
      });
    },
    saveFailed() {
      quitting = false;
    },
  };
}
