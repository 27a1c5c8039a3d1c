/** Messages between the window and the worker that writes hand-over files. Plain data only. */

import type { HandoverFile, HandoverModule, HandoverValues, Issue, Prediction, Project } from '../../../core/index.ts';

/** A kind of file as the window knows it: everything but the writing. */
export type HandoverKind = Omit<HandoverModule, 'write'>;

/** What the window asks. */
export type HandoverAsk =
  | { readonly kind: 'kinds' }
  | {
      readonly kind: 'write';
      readonly moduleId: string;
      readonly project: Project;
      readonly revisionIds: readonly string[];
      readonly values: HandoverValues;
      /** YYYY-MM-DD */
      readonly date: string;
      /** solved predictions at hand, used where they belong to the very design */
      readonly known: readonly Prediction[];
    };

/** What the worker says; `done` follows, or a fault. */
export type HandoverAnswer =
  | { readonly kind: 'kinds'; readonly kinds: readonly HandoverKind[] }
  | { readonly kind: 'progress'; readonly done: number; readonly stage: string }
  | { readonly kind: 'refused'; readonly issues: readonly Issue[] }
  | { readonly kind: 'files'; readonly files: readonly HandoverFile[] };
