/** Which solver of core answers which case of the reference files. */

import { evaluateChannelCase, evaluateHelicalCase, evaluateOrbitCase, evaluateTipCase } from '../../core/index.ts';
import type { CheckedRow } from './referenceTable.ts';

/** By the file's `case`: takes one entry as parsed, gives every compared quantity; unreadable entries give failing rows. */
export const referenceSolvers: Readonly<Record<string, (entry: unknown) => readonly CheckedRow[]>> = {
  A: evaluateChannelCase,
  B: evaluateOrbitCase,
  C: (entry) => evaluateTipCase(entry),
  D: evaluateHelicalCase,
};
