/** Building blocks of this folder's issues. */

import type { Issue } from '../../result.ts';

/** A length in words. */
export const mm = (metres: number): string => `${(1e3 * metres).toPrecision(4)} mm`;

/** An issue from its parts. */
export function issue(
  path: Issue['path'],
  code: string,
  message: string,
  value: string,
  allowed: string,
  remedy: string,
): Issue {
  return { path, code, message, value, allowed, remedy };
}

/** Refuses a length that is not a positive number (or not even zero). */
export function positive(path: Issue['path'], value: number, name: string, zeroAllowed = false): Issue[] {
  if (Number.isFinite(value) && (zeroAllowed ? value >= 0 : value > 0)) return [];
  const allowed = zeroAllowed ? '0 mm or more' : 'more than 0 mm';
  return [
    issue(
      path,
      'not-a-length',
      `The ${name} is no usable length.`,
      mm(value),
      allowed,
      `Give the ${name} in millimetres.`,
    ),
  ];
}
