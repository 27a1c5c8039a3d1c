/**
 * Lets the worker that solves fields stand still while an edit is answered: it takes a core for seconds, and first
 * figures, estimate and drawing want both. The worker looks between the steps of its solvers, some ten times a second.
 */

/** Longest hold, ms: whatever was to be answered, the fields go on after it. */
export const longestHoldMs = 1500;

/** A hold that the window begins and ends. Does nothing where memory cannot be shared with a worker. */
export interface Hold {
  /** handed to the worker; null where it cannot be had */
  readonly shared: SharedArrayBuffer | null;
  readonly held: boolean;
  /** held since `restart`, ms */
  readonly heldMs: number;
  begin(): void;
  end(): void;
  /** Counts from now. */
  restart(): void;
}

/** A hold that has not begun. */
export function createHold(): Hold {
  const shared = typeof SharedArrayBuffer === 'undefined' ? null : new SharedArrayBuffer(4);
  const flag = shared && new Int32Array(shared);
  let since: number | null = null;
  let before = 0;
  let timer: ReturnType<typeof setTimeout> | null = null;
  const lasting = () => (since === null ? 0 : Date.now() - since);
  const end = () => {
    if (timer) clearTimeout(timer);
    timer = null;
    before += lasting();
    since = null;
    if (!flag) return;
    Atomics.store(flag, 0, 0);
    Atomics.notify(flag, 0);
  };
  return {
    shared,
    get held() {
      return since !== null;
    },
    get heldMs() {
      return before + lasting();
    },
    begin() {
      if (!flag) return;
      end();
      since = Date.now();
      Atomics.store(flag, 0, 1);
      timer = setTimeout(end, longestHoldMs);
    },
    end,
    restart() {
      before = 0;
      if (since !== null) since = Date.now();
    },
  };
}

/** The worker's side: returns at once, or when the hold ends. */
export function waitWhileHeld(shared: SharedArrayBuffer | null): void {
  if (shared) Atomics.wait(new Int32Array(shared), 0, 1, longestHoldMs);
}
