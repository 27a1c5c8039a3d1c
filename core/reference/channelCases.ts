/**
 * Comparison of the channel solver with stored solutions of an independent general finite-element package: straight
 * channel (case A), residence times in it (case B), helical channel (case D). The layout of the entries and the sign
 * conventions are those of the files in test/reference/flow; any parameters in that layout will do.
 */

import { type RowOut, readEntries } from './caseFormat.ts';
import { flatCaseRows } from './flatCase.ts';
import { helicalCaseRows } from './helicalCase.ts';
import { residenceCaseRows } from './residenceCase.ts';

const solvers = new Map([
  ['A', flatCaseRows],
  ['B', residenceCaseRows],
  ['D', helicalCaseRows],
]);

/** Rows of one entry, with a name that says its parameters. */
export interface EntryResult {
  readonly entry: string;
  readonly rows: readonly RowOut[];
}

/**
 * Solves every entry of a file of case A, B or D.
 * @param file parsed JSON with `case` and `entries`
 * @returns one result per entry, or null when the file is of another case
 * @throws TypeError when a needed number is missing; the message names it
 */
export function channelCaseResults(file: unknown): EntryResult[] | null {
  const { name, entries } = readEntries(file);
  const solve = solvers.get(name);
  if (!solve) return null;
  return entries.map((entry) => ({ entry: entry.label, rows: solve(entry) }));
}
