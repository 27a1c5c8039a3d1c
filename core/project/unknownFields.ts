/** Fields of a project file that this program does not know: kept when it is saved, used for nothing. */

import type { Issue } from '../result.ts';
import { entriesOf, mostIssues } from './excess.ts';
import { childNode, type SchemaNode, schemaNode, variantOf } from './jsonSchema.ts';
import { isObject } from './looseView.ts';
import { type Project, projectSchema } from './schema.ts';

/** Longest name that is looked at for a slip; a longer one is none. */
const longestName = 60;

/** Letters to add, drop or change to come from one name to another (Levenshtein 1966). */
function slips(from: string, to: string): number {
  let row = Array.from({ length: to.length + 1 }, (_, k) => k);
  for (let i = 0; i < from.length; i++) {
    const next = [i + 1];
    for (let k = 0; k < to.length; k++) {
      next.push(Math.min(next[k] + 1, row[k + 1] + 1, row[k] + (from[i] === to[k] ? 0 : 1)));
    }
    row = next;
  }
  return row[to.length];
}

const plain = (name: string): string => name.toLowerCase().replace(/[^a-z0-9]/g, '');

/** The known name that is meant, or null: the same but for capitals and dashes, or one or two letters off. */
function meant(name: string, known: readonly string[]): string | null {
  if (name.length > longestName) return null;
  const off = (each: string) => slips(plain(name), plain(each));
  const [best] = known.map((each) => ({ each, by: off(each) })).sort((a, b) => a.by - b.by);
  return best && best.by <= Math.min(2, name.length / 4) ? best.each : null;
}

/** @param owner what the field stands in */
function unknownField(path: readonly (string | number)[], owner: object, known: readonly string[]): Issue {
  const near = meant(String(path.at(-1)), known);
  const remedy =
    near === null
      ? 'Mend its name, or leave it.'
      : Object.hasOwn(owner, near)
        ? `"${near}" stands beside it and counts: take one of the two out.`
        : `If "${near}" is meant, call it that.`;
  const message = 'This field is not known here: it is kept, but used for nothing.';
  return { path, code: 'unknown-field', message, remedy };
}

/**
 * The fields of a project that this program does not know, where the format says what there may be.
 * @param project of today's shape
 * @returns one remark each, with the name that may be meant; none of them hinders anything
 */
export function unknownFields(project: Project): readonly Issue[] {
  const found: Issue[] = [];
  const visit = (node: SchemaNode | undefined, value: unknown, path: readonly (string | number)[]): void => {
    if (!node) return;
    const names = isObject(value) ? Object.keys(variantOf(node, value).properties ?? {}) : [];
    for (const [key, item] of entriesOf(value)) {
      if (found.length >= mostIssues) return;
      // an object of which the format names no field may hold any
      if (isObject(value) && typeof key === 'string' && names.length > 0 && !names.includes(key)) {
        found.push(unknownField([...path, key], value, names));
      } else visit(childNode(node, value, key), item, [...path, key]);
    }
  };
  visit(schemaNode(projectSchema), project, []);
  return found;
}
