/** Which version of a file a window has. */

/** Versions of files by window and path. */
export interface VersionsByWindow {
  /** null where none is known */
  get(windowId: string, path: string): string | null;
  set(windowId: string, path: string, version: string): void;
  forget(windowId: string, path: string): void;
}

/** None known yet. */
export function createVersions(): VersionsByWindow {
  const known = new Map<string, string>();
  const key = (windowId: string, path: string) => `${windowId}\n${path}`;
  return {
    get: (windowId, path) => known.get(key(windowId, path)) ?? null,
    set: (windowId, path, version) => void known.set(key(windowId, path), version),
    forget: (windowId, path) => void known.delete(key(windowId, path)),
  };
}
