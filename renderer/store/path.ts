/** Reading and replacing values inside plain data by path, as issues and fields name them. */

import type { Project } from '../../core/index.ts';

/** Keys and indexes from the root of the project. */
export type Path = readonly (string | number)[];

/** The value at `path`, or undefined where nothing stands there. */
export function valueAt(root: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, key) => (typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined),
    root,
  );
}

/** A copy of `root` with `value` at `path`; untouched branches are shared. */
export function withValue<T>(root: T, path: Path, value: unknown): T {
  const [key, ...rest] = path;
  if (key === undefined) return value as T;
  const child = withValue(valueAt(root, [key]), rest, value);
  if (Array.isArray(root)) return root.map((item, index) => (index === key ? child : item)) as T;
  return { ...root, [key]: child };
}

/** A copy of `root` without the key at the end of `path`; untouched branches are shared. */
export function withoutValue<T>(root: T, path: Path): T {
  const parent = path.slice(0, -1);
  const kept = Object.entries(Object(valueAt(root, parent))).filter(([key]) => key !== String(path.at(-1)));
  return withValue(root, parent, Object.fromEntries(kept));
}

/** One text per path, for keys and comparisons. */
export const pathKey = (path: Path): string => path.join('/');

/** Whether `path` lies at or below `prefix`. */
export const isWithin = (path: Path, prefix: Path): boolean =>
  prefix.length <= path.length && prefix.every((key, index) => key === path[index]);

/** Path of the revision with this id; index -1 names nothing. */
export const revisionPath = (project: Project, id: string): Path => [
  'revisions',
  project.revisions.findIndex((revision) => revision.id === id),
];
