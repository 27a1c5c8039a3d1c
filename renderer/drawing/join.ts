/** Which stored ends touch and agree, so that a pull may move them together. */

import type { Change } from '../fields/check.ts';
import { type Path, valueAt } from '../store/path.ts';
import { clean } from './types.ts';

/** Stored ends count as touching within this, mm. */
const touchMm = 1e-6;

/** Whether two stored numbers are the same. */
export const agree = (a: unknown, b: unknown): boolean =>
  typeof a === 'number' && typeof b === 'number' && Math.abs(a - b) <= touchMm;

/** Gives every place the same value. */
export const sameAt = (paths: readonly Path[], value: number): readonly Change[] =>
  paths.map((path) => ({ path, value: clean(value) }));

/**
 * The run of places around `at` that hold the same number without a break.
 * @param root what the paths are looked up in, with the paths' own beginning cut off by `skip`
 */
export function runOf(root: unknown, skip: number, chain: readonly Path[], at: number): readonly Path[] {
  const value = (index: number) => valueAt(root, chain[index]?.slice(skip) ?? []);
  let [from, to] = [at, at];
  while (from > 0 && agree(value(from - 1), value(at))) from--;
  while (to + 1 < chain.length && agree(value(to + 1), value(at))) to++;
  return chain.slice(from, to + 1);
}
