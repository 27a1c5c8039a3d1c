/** Which recent files the person has taken off the list. Kept on this machine; a file opened again is back on it. */

import type { RecentFile } from '../bridge.ts';

const key = 'augerwright.offTheList';
/** Longest list of paths taken off. */
const most = 50;

function offTheList(): readonly string[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(key) ?? '[]');
    return Array.isArray(kept) ? kept.filter((path) => typeof path === 'string') : [];
  } catch {
    return [];
  }
}

const keep = (paths: readonly string[]): void => localStorage.setItem(key, JSON.stringify(paths.slice(-most)));

/** The host's list without what was taken off. */
export function listRemembered(files: readonly RecentFile[]): readonly RecentFile[] {
  const off = offTheList();
  return files.filter(({ path }) => !off.includes(path));
}

/** Takes a path off the list. */
export const forgetRecent = (path: string): void => keep([...offTheList().filter((one) => one !== path), path]);

/** Puts a path back, since it was opened or saved. */
export function rememberRecent(path: string): void {
  const off = offTheList();
  if (off.includes(path)) keep(off.filter((one) => one !== path));
}
