/** Places of numbers in a project: `material.meltDensityKgM3`, `screw.sections[2].leadStartMm`, `process.feedC`. */

import { isObject } from '../project/looseView.ts';
import type { Project } from '../project/schema.ts';

/** Keys and indexes from the project's root. */
export type FieldPath = readonly (string | number)[];

/** Keys that name no field but the language's own machinery. */
const forbidden: readonly string[] = ['__proto__', 'constructor', 'prototype'];

/**
 * Text of a place to its keys.
 * @returns null where the text is none, such as with empty keys
 */
export function parseFieldPath(text: string): FieldPath | null {
  if (text.length > 200 || !/^[A-Za-z_$][\w$-]*(\[\d{1,5}\])*(\.[A-Za-z_$][\w$-]*(\[\d{1,5}\])*)*$/.test(text))
    return null;
  const parts = text.split(/[.[\]]+/).filter((part) => part !== '');
  if (parts.some((part) => forbidden.includes(part))) return null;
  return parts.map((part) => (/^\d+$/.test(part) ? Number(part) : part));
}

function childOf(node: unknown, key: string | number): unknown {
  if (Array.isArray(node)) return typeof key === 'number' ? node[key] : undefined;
  return isObject(node) && Object.hasOwn(node, key) ? node[key] : undefined;
}

/** What stands at a place, or undefined. */
export const valueAt = (root: unknown, path: FieldPath): unknown => path.reduce<unknown>(childOf, root);

/**
 * A copy with one value replaced; everything beside the way to it is shared with the original.
 * @param path leads to something that exists
 */
export function replacedAt<T>(root: T, path: FieldPath, value: unknown): T;
/** The same for what has no type. */
export function replacedAt(root: unknown, path: FieldPath, value: unknown): unknown {
  if (path.length === 0) return value;
  const [key, ...rest] = path;
  const inner = replacedAt<unknown>(childOf(root, key), rest, value);
  if (Array.isArray(root)) return root.map((item, i) => (i === key ? inner : item));
  return isObject(root) ? { ...root, [key]: inner } : root;
}

/**
 * Where the number of a place stands, from the root of the project.
 * @param text starts at the revision, or with `material`, `process` or `print`; a sourced value stands for its number
 * @returns null where there is no number
 */
export function resolveField(project: Project, revisionId: string, text: string): FieldPath | null {
  const parts = parseFieldPath(text);
  const index = project.revisions.findIndex(({ id }) => id === revisionId);
  if (parts === null || index < 0) return null;
  const materialId = project.revisions[index].materialId;
  const [head, ...rest] = parts;
  const material = project.materials.findIndex(({ id }) => id === materialId);
  const path =
    head === 'process' || head === 'print'
      ? parts
      : head === 'material'
        ? ['materials', material, ...rest]
        : ['revisions', index, ...parts];
  const found = valueAt(project, path);
  if (typeof found === 'number') return path;
  return isObject(found) && typeof found.value === 'number' ? [...path, 'value'] : null;
}
