/** What differs between two projects, value by value: revisions, materials and trials are matched by their ids. */

import { isObject } from './looseView.ts';

/** One value, or one whole entry of a list, that differs. */
export interface Difference {
  /** Keys and list positions from the root; an entry that has an id stands under its id instead of a position. */
  readonly path: readonly (string | number)[];
  /** 'order': the same entries in another order; before and after are then lists of ids. */
  readonly kind: 'changed' | 'added' | 'removed' | 'order';
  /** undefined where added */
  readonly before: unknown;
  /** undefined where removed */
  readonly after: unknown;
}

type Path = Difference['path'];

const idOf = (entry: unknown): string | null => (isObject(entry) && typeof entry.id === 'string' ? entry.id : null);

/** Entries by id; null where an entry has none or two share one. */
function byId(list: readonly unknown[]): ReadonlyMap<string, unknown> | null {
  const entries = new Map<string, unknown>();
  for (const entry of list) {
    const id = idOf(entry);
    if (id === null || entries.has(id)) return null;
    entries.set(id, entry);
  }
  return entries;
}

function one(path: Path, before: unknown, after: unknown): Difference {
  if (before === undefined) return { path, kind: 'added', before, after };
  return { path, kind: after === undefined ? 'removed' : 'changed', before, after };
}

function* between(before: unknown, after: unknown, path: Path): Generator<Difference> {
  if (Object.is(before, after)) return;
  if (Array.isArray(before) && Array.isArray(after)) yield* betweenLists(before, after, path);
  else if (isObject(before) && isObject(after)) {
    const keys = new Set([...Object.keys(before), ...Object.keys(after)]);
    // looking at another revision changes nothing
    if (path.length === 0) keys.delete('activeRevision');
    for (const key of keys) yield* between(before[key], after[key], [...path, key]);
  } else yield one(path, before, after);
}

function* betweenLists(before: readonly unknown[], after: readonly unknown[], path: Path): Generator<Difference> {
  const [old, now] = [byId(before), byId(after)];
  if (!old || !now) {
    const length = Math.max(before.length, after.length);
    for (let i = 0; i < length; i++) yield* between(before[i], after[i], [...path, i]);
    return;
  }
  for (const id of new Set([...old.keys(), ...now.keys()])) yield* between(old.get(id), now.get(id), [...path, id]);
  const kept = [...old.keys()].filter((id) => now.has(id));
  const order = [...now.keys()].filter((id) => old.has(id));
  if (kept.some((id, i) => id !== order[i])) yield { path, kind: 'order', before: kept, after: order };
}

/**
 * What differs between two projects, in the order of the first one's keys.
 * @param before plain data, such as the file as it is
 * @param after plain data, such as the work in a window
 * @param most how many differences are told at most
 */
export function projectDifference(before: unknown, after: unknown, most = 1000): readonly Difference[] {
  const found: Difference[] = [];
  for (const difference of between(before, after, [])) {
    if (found.length >= most) break;
    found.push(difference);
  }
  return found;
}
