/** What a trial weighed and what a prediction says of it, in the same terms. */

import type { Lab } from '../age/cielab.ts';
import { colourPath } from '../age/colourPath.ts';
import { deltaE2000 } from '../age/deltaE2000.ts';
import { type Factors, withFactors } from '../design/calibrate.ts';
import { validateDesign } from '../design/validate.ts';
import type { FieldCache } from '../path/fieldCache.ts';
import { predict } from '../prediction/predict.ts';
import type { CapacityKind, Prediction, PredictionOptions } from '../prediction/types.ts';
import type { Material } from '../project/materialSchema.ts';
import type { Project, Trial } from '../project/schema.ts';
import { ok, type Result } from '../result.ts';
import { toSi } from '../units.ts';
import { projectForTrial } from './trialProject.ts';

/** Figures that a trial can be held against. */
export interface TrialFigures {
  /** kg/s */
  readonly massFlow: number;
  /** at the screw, N m; null where not known */
  readonly torque: number | null;
  /** mean colour shift against the fresh granulate, dE00; null where not known */
  readonly dE00: number | null;
}

/** Solved over formula, both without factors, figure by figure; null where either is missing. */
export type FieldRatios = Readonly<Record<keyof TrialFigures, number | null>>;

const ratioOf = (solved: number | null, formula: number | null): number | null =>
  solved !== null && formula !== null && solved > 0 && formula > 0 ? solved / formula : null;

/**
 * What solved fields change of the figures that formulas give. Factors move both alike to a few per cent, so that a fit
 * may ask the formulas many times and the fields once.
 * @param solved predictTrial with fields 'solved' and plain factors
 * @param formula the same by formulas
 */
export const fieldRatios = (solved: TrialFigures, formula: TrialFigures): FieldRatios => ({
  massFlow: ratioOf(solved.massFlow, formula.massFlow),
  torque: ratioOf(solved.torque, formula.torque),
  dE00: ratioOf(solved.dE00, formula.dE00),
});

/** Figures of a prediction. */
export interface PredictedTrial extends TrialFigures {
  readonly limit: CapacityKind;
  /** mean residence, s; null where nothing flows */
  readonly residence: number | null;
  /** false where the drive could not hold the trial's speed, or an iteration did not converge */
  readonly sound: boolean;
}

/** Colour of the fresh granulate by the material's anchors, or null. */
export const freshColour = (material: Pick<Material, 'colourAnchors'> | undefined): Lab | null =>
  colourPath(
    (material?.colourAnchors ?? []).map(({ extent, lightness, a, b }) => ({ extent, lab: [lightness, a, b] as const })),
  )?.at(0).lab ?? null;

/**
 * What a trial measured.
 * @param fresh colour of the granulate, from freshColour; without it a colour reading tells nothing
 */
export function measuredFigures(trial: Trial, fresh: Lab | null): TrialFigures {
  return {
    massFlow: toSi(trial.grams, 'g') / toSi(trial.seconds, 's'),
    torque: trial.torqueNm ?? null,
    dE00: trial.lab && fresh ? deltaE2000(fresh, trial.lab) : null,
  };
}

/** What a prediction says of a trial. */
function predictedFigures(prediction: Prediction): PredictedTrial {
  const { output, drive, colour } = prediction;
  return {
    massFlow: output.massFlow,
    torque: output.flows ? drive.torque : null,
    dE00: output.flows ? colour.dE00Mean : null,
    limit: prediction.limit,
    residence: output.flows ? prediction.residence.mean : null,
    sound: prediction.converged && prediction.limit !== 'torque' && prediction.limit !== 'motorSpeed',
  };
}

/** How a trial is predicted: by formulas where absent. */
export interface TrialPrediction {
  readonly fields?: PredictionOptions['fields'];
  /** solved fields, kept by the caller from trial to trial */
  readonly cache?: FieldCache;
}

/**
 * Predicts a trial.
 * @param factors trial factors in place of the revision's calibration; null = the calibration as it stands
 * @param way formulas or solved fields
 * @returns figures, or the issues that prevent it; about as long as one prediction without curve
 */
export function predictTrial(
  project: Project,
  trial: Trial,
  factors: Factors | null,
  { fields = 'formula', cache }: TrialPrediction = {},
): Result<PredictedTrial> {
  const run = projectForTrial(project, trial, factors === null ? 'as it stands' : 'without');
  if (!run.ok) return run;
  const made = validateDesign(run.value.project, run.value.revisionId);
  if (!made.ok) return made;
  const design = factors === null ? made.value : withFactors(made.value, factors);
  return ok(predictedFigures(predict(design, { curvePoints: 0, fields }, undefined, cache)));
}
