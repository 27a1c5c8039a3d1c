/** One line of the parts list. */

/** One line; its place in the tree follows from `parts`. */
export interface Part {
  readonly name: string;
  /** null where it is not described */
  readonly quantity: number | null;
  readonly source: 'make' | 'buy' | 'by the maker';
  readonly figures: readonly string[];
  readonly parts?: readonly Part[];
}

/** What is said of a thing that the design does not describe. */
export const unknown = 'not described';
