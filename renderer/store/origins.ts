/** What becomes of a value's source when another number is typed: it no longer stands for what the source says. */

import type { Project, Sourced } from '../../core/index.ts';
import { text } from '../strings.ts';

/** Ways of knowing that speak of the number as it was, not of any number typed since. */
const quoted: readonly Sourced['status'][] = ['seen', 'from memory', 'common practice'];
/** Longest source that a file holds, characters. */
const longest = 600;

const isSourced = (node: object): node is Sourced => 'value' in node && 'status' in node && 'source' in node;

const words = text.describe.granulate;

function retold(before: Sourced, after: Sourced): Sourced {
  if (before.value === after.value || before.source !== after.source || before.status !== after.status) return after;
  if (!quoted.includes(before.status)) return after;
  const source = words.replaced(String(before.value), words.statuses[before.status], before.source).slice(0, longest);
  return { ...after, source, status: 'estimated' };
}

function walk(before: unknown, after: unknown): unknown {
  if (before === after || typeof before !== 'object' || typeof after !== 'object' || !before || !after) return after;
  if (isSourced(before) && isSourced(after)) return retold(before, after);
  const changed = Object.entries(after).flatMap(([key, node]) => {
    const next = walk(Reflect.get(before, key), node);
    return next === node ? [] : [[key, next] as const];
  });
  if (changed.length === 0) return after;
  if (Array.isArray(after)) return after.map((node, i) => changed.find(([key]) => key === String(i))?.[1] ?? node);
  return { ...after, ...Object.fromEntries(changed) };
}

/**
 * The project after an edit, with every material value whose number the edit changed told as estimated and its old
 * number and source kept in words, where it was seen, remembered or usual. Measured, estimated and invented values keep
 * what is said of them: another number is one of the same kind.
 * @returns `after` itself where nothing has to be retold
 */
export function withRetoldOrigins(before: Project, after: Project): Project {
  const materials = walk(before.materials, after.materials) as Project['materials'];
  return materials === after.materials ? after : { ...after, materials };
}
