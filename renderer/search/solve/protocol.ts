/** Messages between the window and the workers of a search. */

import type { Evaluated, Project, SearchChange } from '../../../core/index.ts';

/** Told once: what is searched. Asked then: one design at a time. */
export type SearchAsk =
  | { readonly kind: 'set'; readonly project: Project; readonly revisionId: string }
  | {
      readonly kind: 'design';
      readonly index: number;
      readonly changes: readonly SearchChange[];
      readonly fields: Evaluated['fields'];
    };

/** What a worker answers; setting has no answer of its own. */
export type SearchAnswer =
  | { readonly kind: 'design'; readonly index: number; readonly design: Evaluated }
  | { readonly kind: 'fault'; readonly message: string };
