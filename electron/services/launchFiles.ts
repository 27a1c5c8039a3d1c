/** Files that a start of the program is told to open, out of words that anybody may have written. */

import { realpathSync, statSync } from 'node:fs';
import { resolve } from 'node:path';

/** Longest path that is looked at, characters. */
const longestPath = 4_096;
/** Most files that one start opens. */
const mostFiles = 12;
const projectFlag = '--project=';

/** Whether a path leads to a plain file: no folder, pipe or device. Never throws. */
function isPlainFile(path: string): boolean {
  try {
    return statSync(path).isFile();
  } catch {
    return false;
  }
}

/** Whether two paths lead to the same file, links followed. */
export function isSameFile(one: string, other: string): boolean {
  if (resolve(one) === resolve(other)) return true;
  try {
    return realpathSync(one) === realpathSync(other);
  } catch {
    return false;
  }
}

/**
 * Absolute paths of the plain files among a start's words, each once.
 * @param words what follows the program's own name; switches, the browser engine's among them, are passed over
 * @param folder the folder which that start was given in
 */
export function launchFiles(words: readonly string[], folder: string): readonly string[] {
  const named = words
    .map((word) => (word.startsWith(projectFlag) ? word.slice(projectFlag.length) : word))
    .filter((word) => word !== '' && !word.startsWith('-') && word.length <= longestPath)
    .map((word) => resolve(folder, word));
  return [...new Set(named)].filter(isPlainFile).slice(0, mostFiles);
}
