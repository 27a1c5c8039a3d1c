/** Which windows there are, as far as this process knows. */

/** Silence after which a page in a browser may be gone, ms: pages close without a word. */
export const pageQuietAfterMs = 20_000;

/** As many times that silence, and it is taken for gone: a page asleep for so long finds its file taken when it wakes. */
const goneAfterQuiets = 9;

/** Windows by the names that the shell, or their pages, gave them. */
export interface Windows {
  /** A window called: it is there. */
  heard(windowId: string): void;
  /** A window was closed for good. */
  closed(windowId: string): void;
  /** True: there; false: closed, never heard of, or silent for minutes; null: silent for too long to tell. */
  isThere(windowId: string): boolean | null;
}

/** @param quietAfterMs silence after which a window may be gone; null where windows are told to be closed */
export function createWindows(quietAfterMs: number | null, now: () => number = Date.now): Windows {
  const last = new Map<string, number>();
  const gone = new Set<string>();
  return {
    heard(windowId) {
      // a call that was under way when the window was closed
      if (!gone.has(windowId)) last.set(windowId, now());
    },
    closed(windowId) {
      gone.add(windowId);
      last.delete(windowId);
    },
    isThere(windowId) {
      const at = last.get(windowId);
      if (at === undefined) return false;
      const quiet = quietAfterMs === null ? 0 : (now() - at) / quietAfterMs;
      if (quiet <= 1) return true;
      return quiet <= goneAfterQuiets ? null : false;
    },
  };
}
