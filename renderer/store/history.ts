/** Undo history as a pure value: named steps, quick repeats in one field merged into one step. */

/** A state left behind, and the name of the step that left it. */
interface Step<T> {
  readonly label: string;
  readonly state: T;
}

/** A present state with what came before it and what was undone. */
export interface History<T> {
  readonly present: T;
  readonly past: readonly Step<T>[];
  readonly future: readonly Step<T>[];
  /** field of the latest step and when it was last touched (ms), for merging; null after undo, redo or load */
  readonly open: { readonly key: string; readonly at: number } | null;
}

/** Steps of one field closer than this are one step, ms. */
export const mergeWithinMs = 1500;
/** Oldest steps beyond this many are forgotten. */
export const stepLimit = 300;

/** A history that starts at `present` with nothing to undo. */
export function startHistory<T>(present: T): History<T> {
  return { present, past: [], future: [], open: null };
}

/** What a step is called, and the field it belongs to if repeats may merge. */
export interface StepName {
  readonly label: string;
  readonly key?: string;
}

/** Records `next` as a step at time `now` (ms). A state equal by identity is no step. */
export function record<T>(history: History<T>, next: T, step: StepName, now: number): History<T> {
  if (next === history.present) return history;
  const open = step.key === undefined ? null : { key: step.key, at: now };
  const merges = open !== null && history.open?.key === open.key && now - history.open.at <= mergeWithinMs;
  const past = merges
    ? history.past
    : [...history.past, { label: step.label, state: history.present }].slice(-stepLimit);
  return { present: next, past, future: [], open };
}

/** One step back; the same history when there is none. */
export function stepBack<T>(history: History<T>): History<T> {
  const last = history.past.at(-1);
  if (!last) return history;
  return {
    present: last.state,
    past: history.past.slice(0, -1),
    future: [{ label: last.label, state: history.present }, ...history.future],
    open: null,
  };
}

/** One step forward; the same history when there is none. */
export function stepForward<T>(history: History<T>): History<T> {
  const [next, ...future] = history.future;
  if (!next) return history;
  return {
    present: next.state,
    past: [...history.past, { label: next.label, state: history.present }],
    future,
    open: null,
  };
}
