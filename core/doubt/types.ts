/** What a study of doubt takes and gives: plain data, so that it can cross to a worker and back. */

import type { Unit } from '../units.ts';

/** One thing that is not known well. */
export interface DoubtInput {
  /** `material.…`, `process.…`, `print.…`, from the revision on, or `factor.feed` and its like */
  readonly path: string;
  readonly label: string;
  /** symbol of the file's unit, '' where it has none */
  readonly unit: string;
  /** unit of the file; low <= nominal <= high, low < high */
  readonly nominal: number;
  readonly low: number;
  readonly high: number;
  /** likeliest at the nominal value, impossible outside low and high */
  readonly distribution: 'triangular';
  readonly from: 'material' | 'user' | 'model' | 'calibration';
  readonly why: string;
}

/** A range that was not taken, and why. */
export interface SkippedDoubt {
  readonly path: string;
  readonly reason: string;
}

/** All doubts of a revision. */
export interface DoubtInputs {
  readonly inputs: readonly DoubtInput[];
  readonly skipped: readonly SkippedDoubt[];
}

/** One figure of a sample: an entry per quantity of `doubtOutputs`, SI; NaN where there is no number. */
export interface SampleResult {
  /** row of the plan; -1 = nominal values */
  readonly index: number;
  readonly values: Float64Array;
  readonly outputs: Float64Array;
  /** output over speed, m³/s, on the speeds of `speed`, rev/s */
  readonly speed: Float64Array;
  readonly curve: Float64Array;
  /** why nothing could be computed, else null; the arrays are then empty */
  readonly failure: string | null;
}

/** Spread of one output. SI. */
export interface OutputDoubt {
  readonly id: string;
  readonly label: string;
  readonly unit: Unit | '';
  readonly nominal: number;
  /** quantiles over the samples that gave a number */
  readonly q05: number;
  readonly q50: number;
  readonly q95: number;
  /** samples with a number */
  readonly known: number;
}

/** How strongly an output follows an input. */
export interface Influence {
  readonly path: string;
  readonly label: string;
  /** -1 to 1 or slightly beyond: standardised coefficient of the ranks, or their correlation */
  readonly strength: number;
  /** false where chance alone gives as much in one of twenty cases */
  readonly aboveNoise: boolean;
}

/** Inputs by their influence on one output. */
export interface OutputInfluences {
  readonly output: string;
  readonly label: string;
  readonly method: 'rank regression' | 'rank correlation';
  /** what chance alone reaches in one of twenty cases */
  readonly noiseFloor: number;
  /** share of the ranks' variance that the inputs explain one by one; null for the correlation */
  readonly explained: number | null;
  /** strongest first */
  readonly ranked: readonly Influence[];
}

/** What would narrow the prediction most. */
export interface NextMeasurement {
  readonly path: string;
  readonly label: string;
  /** share of the weighted spread of the outputs, 0 to 1 */
  readonly share: number;
  readonly outputs: readonly string[];
  readonly how: string;
}

/** The study's answer, complete or not. */
export interface DoubtSummary {
  /** the samples go by formulas, since fields are too slow for a hundred of them */
  readonly fields: 'formula';
  readonly samples: number;
  readonly done: number;
  readonly failed: number;
  readonly failures: readonly { readonly reason: string; readonly count: number }[];
  readonly outputs: readonly OutputDoubt[];
  /** bands of the output over speed: rev/s and m³/s */
  readonly curve: {
    readonly speed: Float64Array;
    readonly nominal: Float64Array;
    readonly q05: Float64Array;
    readonly q50: Float64Array;
    readonly q95: Float64Array;
  };
  readonly influences: readonly OutputInfluences[];
  readonly measureNext: readonly NextMeasurement[];
  /** how the influences were found, and what that leaves out */
  readonly note: string;
}
