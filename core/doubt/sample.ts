/** Samples of a study of doubt, one at a time, so that workers can share them and be stopped between two. */

import { type FactorName, type Factors, factorNames, plainFactors, withFactors } from '../design/calibrate.ts';
import type { Design } from '../design/types.ts';
import { validateDesign } from '../design/validate.ts';
import { predict } from '../prediction/predict.ts';
import type { Project } from '../project/schema.ts';
import { issueText, type Result } from '../result.ts';
import { replacedAt, resolveField, valueAt } from './fieldPath.ts';
import { doubtInputs } from './inputs.ts';
import { latinHypercube, triangularQuantile } from './latin.ts';
import { outputValues } from './outputs.ts';
import type { DoubtInput, DoubtInputs, SampleResult } from './types.ts';

/** What every sample of a study needs: plain data. */
export interface DoubtPlan extends DoubtInputs {
  readonly project: Project;
  readonly revisionId: string;
  readonly samples: number;
  readonly seed: number;
  /** points of the output over speed; 0 = none */
  readonly curvePoints: number;
  /** samples x inputs, unit of the file */
  readonly values: Float64Array;
}

/** Choices of a study; 100 samples and 8 points of the curve where absent. */
export interface DoubtOptions {
  /** 1 to 10 000 */
  readonly samples?: number;
  readonly seed?: number;
  readonly curvePoints?: number;
}

/**
 * Draws the samples of a study.
 * @returns the plan; without inputs every sample is the nominal one
 */
export function doubtPlan(project: Project, revisionId: string, options: DoubtOptions = {}): DoubtPlan {
  const found = doubtInputs(project, revisionId);
  const { inputs } = found;
  const samples = Math.min(10_000, Math.max(1, Math.round(options.samples ?? 100)));
  const seed = options.seed ?? 1;
  const unit = latinHypercube(samples, inputs.length, seed);
  const values = unit.map((share, i) => {
    const { low, nominal, high } = inputs[i % inputs.length];
    return triangularQuantile(share, low, nominal, high);
  });
  return { ...found, project, revisionId, samples, seed, curvePoints: options.curvePoints ?? 8, values };
}

const factorOf = ({ path }: DoubtInput): FactorName | undefined =>
  factorNames.find((name) => path === `factor.${name}`);

/** Factors of a sample: those of the revision's calibration, the sampled ones replaced. */
function sampledFactors(plan: DoubtPlan, values: ArrayLike<number>): Factors {
  const { project, revisionId, inputs } = plan;
  const calibrationId = project.revisions.find(({ id }) => id === revisionId)?.calibrationId;
  const stored = project.calibrations?.find(({ id }) => id === calibrationId)?.factors;
  const factors: Record<FactorName, number> = { ...plainFactors };
  for (const name of factorNames) factors[name] = stored?.[name].value ?? 1;
  inputs.forEach((input, i) => {
    const name = factorOf(input);
    if (name) factors[name] = values[i];
  });
  return factors;
}

/** The project without the calibration of one revision, whose factors then come from elsewhere. */
export function withoutCalibration(project: Project, revisionId: string): Project {
  const revisions = project.revisions.map((revision) => {
    if (revision.id !== revisionId) return revision;
    const { calibrationId: _, ...rest } = revision;
    return rest as typeof revision;
  });
  return { ...project, revisions };
}

/**
 * The design of one sample.
 * @param values one per input of the plan, unit of the file
 * @returns the design, or the issues of values that do not fit together
 */
export function sampledDesign(plan: DoubtPlan, values: ArrayLike<number>): Result<Design> {
  const { project, revisionId, inputs } = plan;
  const changed = inputs.reduce(
    (current, input, i) => {
      const path = resolveField(project, revisionId, input.path);
      return path === null ? current : replacedAt(current, path, values[i]);
    },
    withoutCalibration(project, revisionId),
  );
  const made = validateDesign(withoutRanges(withLags(changed, plan, values), plan), revisionId);
  return made.ok ? { ok: true, value: withFactors(made.value, sampledFactors(plan, values)) } : made;
}

/** A lag shortens as the sampled rate of its law grows, unless the lag is sampled itself. */
function withLags(project: Project, { revisionId, inputs }: DoubtPlan, values: ArrayLike<number>): Project {
  return inputs.reduce((current, { path, nominal }, i) => {
    const lagPath = path.replace(/\.rateAtReferencePerS$/, '.lagAtReferenceS');
    const sampled = lagPath === path || inputs.some((other) => other.path === lagPath);
    const at = sampled ? null : resolveField(current, revisionId, lagPath);
    return at === null ? current : replacedAt(current, at, (Number(valueAt(current, at)) * nominal) / values[i]);
  }, project);
}

/** A sampled value stands for itself: the range around it would be checked against it, and spread it a second time. */
function withoutRanges(project: Project, { revisionId, inputs }: DoubtPlan): Project {
  return inputs.reduce((current, { path }) => {
    const at = resolveField(current, revisionId, path);
    if (at === null || at[at.length - 1] !== 'value') return current;
    const place = at.slice(0, -1);
    return replacedAt(replacedAt(current, [...place, 'low'], undefined), [...place, 'high'], undefined);
  }, project);
}

/**
 * Runs one sample.
 * @param index row of the plan, or -1 for the nominal values
 * @returns figures and curve, or why there are none; never throws for a plan of doubtPlan
 * About as long as one prediction by formulas.
 */
export function sampleRun(plan: DoubtPlan, index: number): SampleResult {
  const { inputs, values: all, curvePoints } = plan;
  const values =
    index < 0
      ? Float64Array.from(inputs, ({ nominal }) => nominal)
      : all.slice(index * inputs.length, (index + 1) * inputs.length);
  const none = new Float64Array(0);
  const made = sampledDesign(plan, values);
  if (!made.ok) {
    return { index, values, outputs: none, speed: none, curve: none, failure: made.issues.map(issueText).join(' ') };
  }
  const prediction = predict(made.value, { curvePoints, fields: 'formula' });
  const { screwSpeed: speed, volumeFlow: curve } = prediction.curve;
  return { index, values, outputs: outputValues(prediction), speed, curve, failure: null };
}
