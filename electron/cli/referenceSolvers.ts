/** Which solver of core answers which case of the reference files. */

import { channelCaseResults, evaluateTipCase } from '../../core/index.ts';
import type { CheckedRow } from './referenceTable.ts';

/** Takes one entry as parsed; throws a TypeError that names what the entry lacks. */
type ReferenceSolver = (entry: unknown) => readonly CheckedRow[];

const channel =
  (kind: string): ReferenceSolver =>
  (entry) =>
    (channelCaseResults({ case: kind, entries: [entry] }) ?? []).flatMap(({ rows }) => rows);

/** By the file's `case`: straight channel, residence in it, tip and nozzle, helical channel. */
export const referenceSolvers: Readonly<Record<string, ReferenceSolver>> = {
  A: channel('A'),
  B: channel('B'),
  C: (entry) => evaluateTipCase(entry),
  D: channel('D'),
};
