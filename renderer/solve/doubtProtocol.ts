/** Messages between the window and the workers that study doubt. */

import type { DoubtInputs, DoubtSummary, Project, SampleResult } from '../../core/index.ts';
import type { DoubtableField } from './doubtable.ts';

/** Asked of a worker: what is doubtful; draw the samples; run one (-1: the nominal values); sum up. */
export type DoubtAsk =
  | { readonly kind: 'inputs'; readonly project: Project; readonly revisionId: string }
  | {
      readonly kind: 'draw';
      readonly project: Project;
      readonly revisionId: string;
      readonly samples: number;
      readonly seed: number;
    }
  | { readonly kind: 'run'; readonly index: number }
  | { readonly kind: 'sum'; readonly nominal: SampleResult; readonly results: readonly SampleResult[] };

/** What it answers; drawing has no answer of its own. */
export type DoubtAnswer =
  | { readonly kind: 'inputs'; readonly found: DoubtInputs; readonly fields: readonly DoubtableField[] }
  | { readonly kind: 'sample'; readonly result: SampleResult }
  | { readonly kind: 'summary'; readonly summary: DoubtSummary }
  | { readonly kind: 'fault'; readonly message: string };
