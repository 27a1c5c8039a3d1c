/** Keeps the work of checking a document in bounds, however much of it is wrong. */

import type { Issue } from '../result.ts';
import { childNode, type SchemaNode, variantOf } from './jsonSchema.ts';
import { isObject } from './looseView.ts';

/** Most issues that are told of one document; the rest would be read by nobody. */
export const mostIssues = 1000;

const andMore: Issue = {
  path: [],
  code: 'more-issues',
  message: 'There are more faults than are listed here.',
  allowed: `${mostIssues} faults are listed`,
  remedy: 'Mend the listed ones first, or restore a saved copy.',
};

/** The first issues of a long list, and one that says that there are more. */
export const fewEnough = (issues: readonly Issue[]): readonly Issue[] =>
  issues.length > mostIssues ? [...issues.slice(0, mostIssues), andMore] : issues;

/** Most entries that a list of the schema may have. */
const mostOf = ({ maxItems, prefixItems, items }: SchemaNode): number =>
  maxItems ?? (prefixItems && !items ? prefixItems.length : Number.POSITIVE_INFINITY);

/**
 * A document whose lists are no longer than one entry past what its schema allows: still refused for it, but without
 * looking at a million entries.
 * @param node schema of the document
 * @param value plain data; fields that the schema does not know are left as they are
 * @returns the same data where nothing is too long
 */
export function withoutExcess(node: SchemaNode | undefined, value: unknown): unknown {
  if (!node) return value;
  if (Array.isArray(value)) {
    const most = mostOf(node);
    const list = value.length > most ? value.slice(0, most + 1) : value;
    const cut = list.map((item, i) => withoutExcess(childNode(node, list, i), item));
    return list === value && cut.every((item, i) => item === list[i]) ? value : cut;
  }
  if (!isObject(value)) return value;
  const known = Object.keys(variantOf(node, value).properties ?? {}).filter((key) => Object.hasOwn(value, key));
  const changes = known.flatMap((key) => {
    const cut = withoutExcess(childNode(node, value, key), value[key]);
    return cut === value[key] ? [] : [[key, cut] as const];
  });
  return changes.length === 0 ? value : { ...value, ...Object.fromEntries(changes) };
}

/** Keys or indexes with what they lead to; none of a value that is no list or object. */
export function entriesOf(value: unknown): Iterable<readonly [string | number, unknown]> {
  if (Array.isArray(value)) return value.entries();
  return isObject(value) ? Object.entries(value) : [];
}

/**
 * Numbers too large for a computer, which saving would turn into nothing; the schema finds those in fields it knows.
 * @param node plain data
 * @returns one issue for each, as many as are told of a document
 */
export function infinityIssues(node: unknown): readonly Issue[] {
  const found: Issue[] = [];
  // one path that is grown and cut back: a copy for each of a million values would take long
  const path: (string | number)[] = [];
  const visit = (value: unknown): void => {
    if (found.length > mostIssues) return;
    if (value === Number.POSITIVE_INFINITY || value === Number.NEGATIVE_INFINITY) {
      found.push({
        path: [...path],
        code: 'out-of-range',
        message: 'The number is too large.',
        value: 'a number beyond 1.8e308',
        allowed: 'a number from -1.8e308 to 1.8e308',
        remedy: 'Change the value to one that is allowed.',
      });
    } else {
      for (const [key, item] of entriesOf(value)) {
        path.push(key);
        visit(item);
        path.pop();
      }
    }
  };
  visit(node);
  return found;
}
