/** Reference entries solved by this project's own solvers, each once for all checks that look at it. */

import type { RowOut } from '../reference/caseFormat.ts';
import { channelCaseResults } from '../reference/channelCases.ts';
import { evaluateTipCase } from '../reference/tipCases.ts';

/** Where the expected numbers of an entry come from. */
export const elementSource = (kind: string, entry: number): string =>
  `Independent general finite-element package, P2/P1 Taylor-Hood elements, refined until settled; case ${kind}, entry ${entry} of the stored solutions`;

/** A stored number as the table shows it: six digits, after a change of unit. */
export const stored = (value: number, perUnit = 1): number => Number((value * perUnit).toPrecision(6));

/** A value that is made when first asked for, and then kept. */
export function once<T>(make: () => T): () => T {
  let known: { readonly value: T } | null = null;
  return () => {
    known ??= { value: make() };
    return known.value;
  };
}

/** Our value of a quantity of an entry, found by how its name begins; throws where there is no such row. */
export type GotOf = (quantity: string) => number;

const lookUp =
  (rows: () => readonly RowOut[]): GotOf =>
  (quantity) => {
    const row = rows().find((one) => one.quantity.startsWith(quantity));
    if (!row) throw new Error(`no ${quantity} among ${rows().map((one) => one.quantity)}`);
    return row.got;
  };

/** Entry of case A, B or D. @param kind name of the case; @param entry in its layout */
export const channelEntry = (kind: string, entry: unknown): GotOf =>
  lookUp(once(() => channelCaseResults({ case: kind, entries: [entry] })?.[0].rows ?? []));

/** Entry of case C, in its layout. */
export const tipEntry = (entry: unknown): GotOf => lookUp(once(() => evaluateTipCase(entry)));
