/**
 * Memory of solved fields, by their dimensionless problem. Handed in and out by the caller, so every stage stays a pure
 * function: what a key holds depends on the key alone, never on what was solved before.
 */

/** One shelf of the cache: least recently used entries go first. */
export interface Shelf<T> {
  /** most entries kept */
  readonly limit: number;
  readonly entries: Map<string, T>;
  /** how often a key was asked for and found, or had to be made */
  hits: number;
  misses: number;
}

/** All shelves; see the stages that fill them for what they hold. */
export interface FieldCache {
  /** called between the steps of a solver that fills them, some ten times a second; may wait, or throw to give the run up */
  readonly onStep: () => void;
  /** meshed cross-sections: large */
  readonly prepared: Shelf<unknown>;
  /** solved points of cross-sections: small */
  readonly channel: Shelf<unknown>;
  /** solved heads: medium */
  readonly head: Shelf<unknown>;
}

const shelf = (limit: number): Shelf<unknown> => ({ limit, entries: new Map(), hits: 0, misses: 0 });

/**
 * An empty cache; holds at most about 150 MB. One per thread: it is not shared and not sent.
 * @param onStep see FieldCache
 */
export const createFieldCache = (onStep: () => void = () => {}): FieldCache => ({
  onStep,
  prepared: shelf(8),
  channel: shelf(3000),
  head: shelf(32),
});

/** The entry of a key if there is one; it becomes the most recently used. */
export function recall<T>(from: Shelf<unknown>, key: string): T | null {
  const known = from.entries.get(key);
  if (known === undefined) return null;
  from.hits++;
  from.entries.delete(key);
  from.entries.set(key, known);
  // each stage gives its keys a prefix of its own, so a key tells the type
  return known as T;
}

/** Stores an entry, dropping the least recently used one beyond the limit. */
export function store<T>(to: Shelf<unknown>, key: string, value: T): T {
  to.misses++;
  to.entries.delete(key);
  to.entries.set(key, value);
  const oldest = to.entries.keys().next();
  if (to.entries.size > to.limit && !oldest.done) to.entries.delete(oldest.value);
  return value;
}

/** The entry of a key, made where it is missing. */
export const remember = <T>(on: Shelf<unknown>, key: string, make: () => T): T =>
  recall<T>(on, key) ?? store(on, key, make());

/** A number in a key: six digits, so that rounding in the units does not split equal problems. */
export const keyNumber = (value: number): string => (Math.abs(value) < 1e-12 ? '0' : value.toPrecision(6));
