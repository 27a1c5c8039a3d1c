/** Who this window is to its host: a name that outlives a reload or a crashed page, and that no other window has. */

const key = 'augerwright.window';

/** 32 hex digits from the system's random numbers. */
const drawn = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, '0')).join('');

let current: string | null = null;

function keep(id: string): string {
  current = id;
  try {
    sessionStorage.setItem(key, id);
  } catch {
    // a window that may not store is a new one after each reload
  }
  return id;
}

function kept(): string | null {
  try {
    const id = sessionStorage.getItem(key);
    return id !== null && /^[a-f0-9]{32}$/.test(id) ? id : null;
  } catch {
    return null;
  }
}

/** The window's name, 32 hex digits. */
export const windowId = (): string => current ?? keep(kept() ?? drawn());

/** Holds the lock of a name for as long as the page lives; false where another page holds it. */
function held(id: string, locks: LockManager): Promise<boolean> {
  return new Promise((resolve) => {
    locks
      .request(`augerwright-window-${id}`, { ifAvailable: true }, (lock) => {
        resolve(lock !== null);
        return lock === null ? undefined : new Promise(() => undefined);
      })
      // a page that may use no locks has nobody to share them with
      .catch(() => resolve(true));
  });
}

/** A page that is being left may keep its lock for a moment after its reload began, ms. */
const patienceMs = [0, 60, 120, 240];

/**
 * Settles who this window is before anything is asked of the host. A duplicated tab finds its name in use and draws
 * another one.
 * @returns whether the name was there before: then the page was loaded anew
 */
export async function settleWindow(locks: LockManager | undefined = navigator.locks): Promise<boolean> {
  const before = kept();
  if (before === null || !locks) {
    const id = windowId();
    if (locks) await held(id, locks);
    return before !== null;
  }
  for (const wait of patienceMs) {
    if (wait > 0) await new Promise((resolve) => setTimeout(resolve, wait));
    if (await held(before, locks)) return keep(before) === before;
  }
  await held(keep(drawn()), locks);
  return false;
}

/** Draws another name, so that what the host keeps under the old one stays as it is. */
export async function renewWindow(locks: LockManager | undefined = navigator.locks): Promise<void> {
  const id = keep(drawn());
  if (locks) await held(id, locks);
}

/** For tests: forgets the name in memory, as a page loaded anew does. */
export const forgetWindow = (): void => {
  current = null;
};
