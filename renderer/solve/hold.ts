/**
 * Lets the worker that solves fields stand still while an edit is answered: it takes a core for seconds, and first
 * figures, estimate and drawing want both. And tells it to give a run up, so that it need not be ended, which would lose
 * what it has solved and what the engine has compiled. The worker looks between the steps of its solvers, some ten times
 * a second.
 */

/** Longest hold, ms: whatever was to be answered, the fields go on after it. */
export const longestHoldMs = 1500;

/** Places in the shared memory: whether to stand still, and the number of the run to be given up. */
const [standing, unwanted] = [0, 1];

/** A hold that the window begins and ends. Does nothing where memory cannot be shared with a worker. */
export interface Hold {
  /** handed to the worker; null where it cannot be had */
  readonly shared: SharedArrayBuffer | null;
  readonly held: boolean;
  /** held since `restart`, ms */
  readonly heldMs: number;
  begin(): void;
  end(): void;
  /** Tells the worker to give up a run, held or not; false where it cannot be told. */
  giveUp(run: number): boolean;
  /** Counts from now. */
  restart(): void;
}

/** A hold that has not begun. */
export function createHold(): Hold {
  const shared = typeof SharedArrayBuffer === 'undefined' ? null : new SharedArrayBuffer(8);
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
    Atomics.store(flag, standing, 0);
    Atomics.notify(flag, standing);
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
      Atomics.store(flag, standing, 1);
      timer = setTimeout(end, longestHoldMs);
    },
    end,
    giveUp(run) {
      if (!flag) return false;
      Atomics.store(flag, unwanted, run);
      Atomics.notify(flag, standing);
      return true;
    },
    restart() {
      before = 0;
      if (since !== null) since = Date.now();
    },
  };
}

/** What a run that was given up throws from between two steps. */
export class GivenUp extends Error {}

/**
 * The worker's side: returns at once, or when the hold ends.
 * @throws GivenUp where the run is to be given up
 */
export function passOrWait(shared: SharedArrayBuffer | null, run: number): void {
  if (!shared) return;
  const flag = new Int32Array(shared);
  if (Atomics.load(flag, unwanted) !== run) Atomics.wait(flag, standing, 1, longestHoldMs);
  if (Atomics.load(flag, unwanted) === run) throw new GivenUp(`run ${run} is no longer wanted`);
}
