/** Order of the candidates in a table. */

import type { Candidate } from '../../core/index.ts';

/** What a table is sorted by: the place, an input's id, or a figure's id; and which way. */
export interface Sorting {
  readonly by: string;
  readonly falling: boolean;
}

/** The number that a column sorts by; what has none comes last. */
function numberOf({ rank, design, figures }: Candidate, by: string): number | null {
  if (by === 'rank') return rank;
  const change = design.changes.find(({ input }) => input === by);
  return change ? change.value : (figures.find(({ id }) => id === by)?.value ?? null);
}

/** The candidates in order; equal ones by their place. */
export function sorted(candidates: readonly Candidate[], { by, falling }: Sorting): readonly Candidate[] {
  const way = falling ? -1 : 1;
  return [...candidates].sort((a, b) => {
    const [p, q] = [numberOf(a, by), numberOf(b, by)];
    if (p === null || q === null) return p === q ? a.rank - b.rank : p === null ? 1 : -1;
    return way * (p - q) || a.rank - b.rank;
  });
}

/** What pressing a column's head does: rising first, then falling. */
export const pressed = (before: Sorting, by: string): Sorting => ({
  by,
  falling: before.by === by ? !before.falling : false,
});
