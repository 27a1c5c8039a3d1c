/** Text of a reference file to entries that a solver can take. */

import { fewEnough } from '../project/excess.ts';
import { isObject } from '../project/looseView.ts';
import { parseJson } from '../project/parse.ts';
import { shortValue } from '../project/schemaIssues.ts';
import { fail, ok, type Result } from '../result.ts';
import { referenceIssues } from './entryIssues.ts';
import { inputRanges } from './entryRanges.ts';

/** Most entries of one file. */
const mostEntries = 2000;

/** A file of reference cases. */
export interface ReferenceCases {
  /** A, B, C or D */
  readonly kind: string;
  readonly entries: readonly unknown[];
}

function refused(path: readonly string[], message: string, value: string | undefined, allowed: string): Result<never> {
  const found = value === undefined ? {} : { value };
  return fail({ path, code: 'reference-file', message, ...found, allowed, remedy: 'Name a file in that format.' });
}

/**
 * Reads a reference file.
 * @param text file content
 * @returns the case and its entries, each of which can be meshed; or every issue: syntax by line and column, else place,
 *   value, allowed range
 */
export function readReference(text: string): Result<ReferenceCases> {
  const data = parseJson(text);
  if (!data.ok) return data;
  const { case: kind, entries } = isObject(data.value) ? data.value : {};
  const kinds = Object.keys(inputRanges);
  if (typeof kind !== 'string' || !kinds.includes(kind)) {
    const allowed = `an object with case (${kinds.join(', ')}), count and entries`;
    return refused(['case'], 'This is no file of reference cases.', `case ${shortValue(kind)}`, allowed);
  }
  if (!Array.isArray(entries) || entries.length === 0 || entries.length > mostEntries) {
    const found = Array.isArray(entries) && entries.length > 0 ? `${entries.length} entries` : 'no entries';
    return refused(['entries'], 'There is nothing to compare, or too much.', found, `1 to ${mostEntries} entries`);
  }
  const issues = entries.flatMap((entry, i) => referenceIssues(kind, entry, ['entries', i]));
  return issues.length > 0 ? fail(...fewEnough(issues)) : ok({ kind, entries });
}
