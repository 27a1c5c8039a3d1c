/** What a calibration takes and gives. */

import type { FactorName, Factors } from '../design/calibrate.ts';
import type { Trial } from '../project/schema.ts';
import type { FieldRatios, PredictedTrial, TrialFigures } from './trialFigures.ts';

/** What of a trial is compared. */
export type ObservationKind = 'rate' | 'torque' | 'colour';

/** A trial with what it measured. */
export interface FitTrial {
  readonly trial: Trial;
  readonly measured: TrialFigures;
}

/** The model: figures of a trial with factors, or null where there are none. May be slow; equal calls are asked once. */
export type TrialModel = (factors: Factors, trial: Trial) => PredictedTrial | null;

/** What a fit may be told. */
export interface FitOptions {
  /** factors to find; all where absent */
  readonly factors?: readonly FactorName[];
  /** most rounds, default 15 */
  readonly rounds?: number;
  /**
   * solved over formula without factors, for a model by formulas whose factors are to hold for solved fields; null where
   * a trial cannot be solved: it is then not used
   */
  readonly ratios?: (trial: Trial) => FieldRatios | null;
}

/** One factor as found. Dimensionless. */
export interface FittedFactor {
  readonly value: number;
  /** 95 % limits; value itself where the factor was held at 1 */
  readonly low: number;
  readonly high: number;
  readonly fitted: boolean;
  /** why it was held at 1, or what to mind about it, else null */
  readonly reason: string | null;
  /** held because other factors that were found can do all that it does in these trials */
  readonly entangled: boolean;
}

/** One compared figure before and after. */
export interface FitObservation {
  readonly trialId: string;
  readonly kind: ObservationKind;
  /** SI */
  readonly measured: number;
  readonly predictedBefore: number;
  readonly predictedAfter: number;
  /** ln(measured / predicted) */
  readonly before: number;
  readonly after: number;
  /** as after, with the factors found without this trial (linearised); null where they cannot be found without it */
  readonly leaveOneOut: number | null;
  /** 0 to 1; below 0.3 the trial is counted an outlier; 1 where the fit did not use the figure */
  readonly weight: number;
}

/** Size of ln(measured / predicted) of the figures that the fit used: root mean square, and median, which outliers do not move. */
export interface FitError {
  readonly rms: number;
  readonly median: number;
}

/** A calibration as found; applied by nobody but the user. */
export interface CalibrationFit {
  /** fields that the factors were found for; formulas where absent */
  readonly fields?: 'formula' | 'solved';
  readonly factors: Readonly<Record<FactorName, FittedFactor>>;
  readonly observations: readonly FitObservation[];
  readonly trialIds: readonly string[];
  /** trials, or figures of them, that were not used */
  readonly skipped: readonly { readonly trialId: string; readonly reason: string }[];
  readonly outliers: readonly string[];
  readonly error: { readonly before: FitError; readonly after: FitError; readonly leaveOneOut: FitError | null };
  /** scatter of the figures in units of what a careful bench repeats within */
  readonly scale: number;
  /** figures that the factors move, less the factors */
  readonly freedom: number;
  readonly converged: boolean;
  readonly rounds: number;
  /** calls of the model */
  readonly evaluations: number;
}

/**
 * What a careful bench repeats within, as standard deviation of ln: weighing a strand, torque from a current or a lever,
 * a colour shift of a few units. Own estimates; only their proportions count, the scatter itself is measured.
 */
export const benchScatter: Readonly<Record<ObservationKind, number>> = { rate: 0.05, torque: 0.15, colour: 0.25 };

/** Words for a factor within a sentence. */
export const factorWords: Readonly<Record<FactorName, string>> = {
  feed: 'feed',
  wallFriction: 'friction on the barrel',
  viscosity: 'viscosity',
  colourRate: 'rate of the colour',
};
