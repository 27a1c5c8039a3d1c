/** Messages between the bench log and the worker that predicts its trials. Plain data only. */

import type {
  BenchRow,
  CalibrationFit,
  FactorName,
  ObservationKind,
  PredictedTrial,
  Project,
  Result,
  TrialPlan,
} from '../../../core/index.ts';

/** Predictions of trials by their ids. */
export type Predictions = Readonly<Record<string, Result<PredictedTrial>>>;

/** What the window asks for. */
export type BenchRequest =
  | {
      readonly kind: 'rows';
      readonly project: Project;
      /** predictions that still hold */
      readonly known: Predictions;
    }
  | {
      readonly kind: 'fit';
      readonly project: Project;
      readonly trialIds: readonly string[];
      readonly factors: readonly FactorName[];
    }
  | {
      readonly kind: 'plan';
      readonly project: Project;
      readonly revisionId: string;
      /** YYYY-MM-DD */
      readonly date: string;
      /** factors just found; null = those of the revision's calibration, if any */
      readonly fit: CalibrationFit | null;
      readonly kinds: readonly ObservationKind[];
      readonly count: number;
    };

/** What a finished request gave. */
export type BenchOutcome =
  | { readonly kind: 'rows'; readonly rows: readonly BenchRow[]; readonly predictions: Predictions }
  | { readonly kind: 'fit'; readonly fit: CalibrationFit }
  | { readonly kind: 'plan'; readonly plan: TrialPlan };

/** What the worker says: progress, then one of the others, which ends the run. */
export type BenchAnswer =
  | BenchOutcome
  /** predictions made, and about how many there will be */
  | { readonly kind: 'progress'; readonly done: number; readonly of: number }
  | { readonly kind: 'fault'; readonly message: string };
