/** Schema faults as issues in clear words: place, value, allowed range, what to do. */

import type { z } from 'zod';
import type { Issue, Result } from '../result.ts';
import { allowedAt, valueAt } from './allowedText.ts';
import { mostIssues } from './excess.ts';
import { schemaNode } from './jsonSchema.ts';
import { isObject } from './looseView.ts';

type Path = readonly (string | number)[];
type ZodIssue = z.core.$ZodIssue;

/** Longest value that an issue shows. */
const shownLength = 60;

const isTooLarge = (value: unknown): boolean => value === Infinity || value === -Infinity;

/** Enough of a value for its first 60 characters: the whole of it may be as large as the file. */
function beginning(value: unknown): unknown {
  if (typeof value === 'string') return value.slice(0, shownLength);
  if (Array.isArray(value)) return value.slice(0, shownLength).map(beginning);
  if (!isObject(value)) return value;
  const keys = Object.keys(value).slice(0, shownLength);
  return Object.fromEntries(keys.map((key) => [key.slice(0, shownLength), beginning(value[key])]));
}

/** A value shortened for display; undefined where nothing is there. */
export function shortValue(value: unknown): string | undefined {
  if (value === undefined) return undefined;
  // JSON has no infinity: this is what a number such as 1e999 becomes when it is read.
  if (isTooLarge(value)) return 'a number beyond 1.8e308';
  const text = typeof value === 'number' ? String(value) : (JSON.stringify(beginning(value)) ?? String(value));
  return text.length > shownLength ? `${text.slice(0, shownLength - 3)}…` : text;
}

/** Zod's names of types, as a maker says them. */
const typeWords: Readonly<Record<string, string>> = {
  array: 'list',
  string: 'text',
  int: 'whole number',
  boolean: 'true or false',
};

const article = (word: string): string =>
  word.startsWith('true') ? word : /^[aeiou]/.test(word) ? `an ${word}` : `a ${word}`;

const limitMessage = (issue: ZodIssue & { code: 'too_small' | 'too_big' }): string => {
  const small = issue.code === 'too_small';
  if (issue.origin === 'string') return small ? 'The text is too short.' : 'The text is too long.';
  if (issue.origin === 'array') return small ? 'The list has too few entries.' : 'The list has too many entries.';
  return small ? 'The number is too small.' : 'The number is too large.';
};

function messageOf(issue: ZodIssue, found: unknown): { readonly code: string; readonly message: string } {
  if (found === undefined) return { code: 'missing', message: 'This field is missing.' };
  if (isTooLarge(found)) return { code: 'out-of-range', message: 'The number is too large.' };
  switch (issue.code) {
    case 'invalid_type':
      return {
        code: 'wrong-type',
        message: `This must be ${article(typeWords[issue.expected] ?? issue.expected)}.`,
      };
    case 'too_small':
    case 'too_big':
      return { code: 'out-of-range', message: limitMessage(issue) };
    case 'invalid_value':
      return { code: 'not-a-choice', message: 'This is none of the choices.' };
    case 'invalid_union':
      return { code: 'not-a-choice', message: 'This fits none of the kinds known here.' };
    case 'invalid_format':
      return { code: 'bad-text', message: formatMessage(issue.format) };
    default:
      return { code: 'invalid', message: issue.message };
  }
}

const formatMessage = (format: string): string =>
  format === 'date'
    ? 'The date must read year-month-day, such as 2026-03-09.'
    : 'The text has characters that are not allowed.';

const pattern = (issue: ZodIssue): string | undefined =>
  issue.code === 'invalid_format'
    ? issue.format === 'date'
      ? 'YYYY-MM-DD'
      : 'letters, digits, dot, hyphen and underscore, beginning with a letter or digit'
    : undefined;

function toIssue(issue: ZodIssue, schema: z.ZodType, document: unknown, prefix: Path): Issue {
  const path = issue.path.map((part) => (typeof part === 'symbol' ? String(part) : part));
  const found = valueAt(document, path);
  const { code, message } = messageOf(issue, found);
  const allowed = pattern(issue) ?? allowedAt(schemaNode(schema), document, path);
  const value = shortValue(found);
  return {
    path: [...prefix, ...path],
    code,
    message,
    ...(value === undefined ? {} : { value }),
    ...(allowed === undefined ? {} : { allowed }),
    remedy: found === undefined ? 'Add the field.' : 'Change the value to one that is allowed.',
  };
}

/** The schema's answer; null where there are more faults than its lists can carry. */
function safely<T>(schema: z.ZodType<T>, document: unknown) {
  try {
    return schema.safeParse(document);
  } catch (fault) {
    if (fault instanceof RangeError) return null;
    throw fault;
  }
}

const tooMany = (path: Path): Issue => ({
  path,
  code: 'too-many-faults',
  message: 'Nearly every field is wrong.',
  allowed: 'fields of the file format',
  remedy: 'Choose another file, or restore a saved copy.',
});

/**
 * A document checked against a schema, with every fault at once.
 * @param schema any schema of the file format
 * @param document the data
 * @param prefix path of the document inside a larger one
 * @returns the typed document, unknown fields kept, or one issue per fault
 */
export function checkSchema<T>(schema: z.ZodType<T>, document: unknown, prefix: Path = []): Result<T> {
  const checked = safely(schema, document);
  if (checked === null) return { ok: false, issues: [tooMany(prefix)] };
  if (checked.success) return { ok: true, value: checked.data };
  // one past what is told, so that the list shows that it goes on
  const told = checked.error.issues.slice(0, mostIssues + 1);
  return { ok: false, issues: told.map((issue) => toIssue(issue, schema, document, prefix)) };
}
