/** What reaches the program from outside: a second start with files, and files that the system opens with it. */

import type { App } from 'electron';
import { launchFiles } from './services/launchFiles.ts';

/** Words before the first that a person gave: the program, and unpacked its folder as well. */
const ownWords = (packed: boolean): number => (packed ? 1 : 2);

/** Files that came in before there was a window for them, and a way to hear of all later ones. */
export interface Outside {
  /**
   * Hands the files of this start to the listener, and those that come later.
   * @param listener hears files to show; none where a second start named none
   */
  hear(listener: (files: readonly string[]) => void): void;
}

/**
 * Hears what comes from outside; must run before the app is ready.
 * @param words this start's own, as `process.argv` has them
 */
export function hearOutside(app: Pick<App, 'on' | 'isPackaged'>, words: readonly string[], folder: string): Outside {
  let listener: ((files: readonly string[]) => void) | null = null;
  const waiting = new Set(launchFiles(words.slice(ownWords(app.isPackaged)), folder));
  const take = (files: readonly string[]) => {
    if (listener) listener(files);
    else for (const file of files) waiting.add(file);
  };
  app.on('second-instance', (_event, given, itsFolder) => {
    take(launchFiles(given.slice(1), itsFolder));
  });
  app.on('open-file', (event, path) => {
    event.preventDefault();
    const files = launchFiles([path], folder);
    if (files.length > 0) take(files);
  });
  return {
    hear(next) {
      listener = next;
      next([...waiting]);
      waiting.clear();
    },
  };
}
