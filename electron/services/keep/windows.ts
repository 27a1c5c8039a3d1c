/** Which windows there are, as far as this process knows. */

/** How long after its last call a page in a browser counts as there, ms: pages close without a word. */
export const pageQuietAfterMs = 20_000;

/** Windows by the names that the shell, or their pages, gave them. */
export interface Windows {
  /** A window called: it is there. */
  heard(windowId: string): void;
  closed(windowId: string): void;
  /** True: there; false: closed, or never heard of; null: silent for too long to tell. */
  isThere(windowId: string): boolean | null;
}

/** @param quietAfterMs silence after which a window may be gone; null where windows are told to be closed */
export function createWindows(quietAfterMs: number | null, now: () => number = Date.now): Windows {
  const last = new Map<string, number>();
  return {
    heard: (windowId) => void last.set(windowId, now()),
    closed: (windowId) => void last.delete(windowId),
    isThere(windowId) {
      const at = last.get(windowId);
      if (at === undefined) return false;
      return quietAfterMs === null || now() - at <= quietAfterMs ? true : null;
    },
  };
}
