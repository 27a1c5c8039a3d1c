/** What becomes of a calibration that was found: only what the user says. */

import { factorNames } from '../design/calibrate.ts';
import type { Calibration, Project, Revision } from '../project/schema.ts';
import { fail, type Issue, ok, type Result } from '../result.ts';
import type { CalibrationFit } from './fitTypes.ts';

/** `apply`: the revision is predicted with it from now on; `variant`: a new revision is, the old one stays as it is. */
export type CalibrationChoice = 'apply' | 'variant';

/** Where a calibration goes and what it is called. */
export interface CalibrationTarget {
  readonly revisionId: string;
  readonly name: string;
  /** YYYY-MM-DD, told by the caller */
  readonly date?: string;
}

/** The first of `base`, `base-2`, `base-3` … that is not taken; at most `longest` characters. */
function freeId(base: string, taken: readonly string[], longest: number): string {
  for (let i = 1; ; i++) {
    const ending = i === 1 ? '' : `-${i}`;
    const id = `${base.slice(0, longest - ending.length)}${ending}`;
    if (!taken.includes(id)) return id;
  }
}

function stored(fit: CalibrationFit, id: string, materialId: string, { name, date }: CalibrationTarget): Calibration {
  const [feed, viscosity, wallFriction, colourRate] = (
    ['feed', 'viscosity', 'wallFriction', 'colourRate'] as const
  ).map((each) => {
    const { value, low, high, fitted } = fit.factors[each];
    return { value, low, high, fitted };
  });
  const { before, after, leaveOneOut } = fit.error;
  return {
    id,
    name,
    ...(date === undefined ? {} : { date }),
    materialId,
    trialIds: [...fit.trialIds],
    fields: fit.fields ?? 'formula',
    factors: { feed, viscosity, wallFriction, colourRate },
    error: { before: before.rms, after: after.rms, leaveOneOut: leaveOneOut?.rms ?? null },
  };
}

function problem(
  project: Project,
  fit: CalibrationFit,
  choice: CalibrationChoice,
  target: CalibrationTarget,
): Issue | null {
  const revision = project.revisions.find(({ id }) => id === target.revisionId);
  const issue = (code: string, message: string, remedy: string): Issue => ({
    path: ['revisions'],
    code,
    message,
    remedy,
  });
  if (!revision) return issue('unknown-id', 'No revision has this id.', 'Name a revision of this project.');
  if (!factorNames.some((name) => fit.factors[name].fitted)) {
    return issue('nothing-fitted', 'These trials tell no factor.', 'Weigh more trials, as the planner proposes.');
  }
  const { before, after } = fit.error;
  if (after.rms > before.rms && after.median > before.median) {
    const message = 'The trials are met worse with these factors than without.';
    return issue(
      'calibration-worse',
      message,
      'Look for a trial that is wrong and leave it out, or weigh more trials.',
    );
  }
  if (choice === 'apply' && revision.locked) {
    return issue(
      'revision-locked',
      'The revision is locked.',
      'Keep the calibration as a variant, or unlock the revision.',
    );
  }
  if ((project.calibrations?.length ?? 0) >= 200)
    return issue('too-many', 'The project holds 200 calibrations.', 'Delete some.');
  if (choice === 'variant' && project.revisions.length >= 200) {
    return issue('too-many', 'The project holds 200 revisions.', 'Delete some.');
  }
  return null;
}

function variantOf(revision: Revision, project: Project, calibrationId: string): Revision {
  const { locked: _, ...rest } = revision;
  const taken = project.revisions.map(({ id }) => id);
  return {
    ...rest,
    id: freeId(`${revision.id}-calibrated`, taken, 40),
    name: `${revision.name.slice(0, 100)}, calibrated`,
    parent: revision.id,
    calibrationId,
  } as Revision;
}

/**
 * The project with a calibration kept.
 * @param fit found by fitCalibration
 * @param choice see CalibrationChoice; to discard is not to call this
 * @returns a changed copy with the calibration among the project's, and the id of the revision that uses it; or an issue:
 * unknown or locked revision, no factor told, no room
 */
export function applyCalibration(
  project: Project,
  fit: CalibrationFit,
  choice: CalibrationChoice,
  target: CalibrationTarget,
): Result<{ readonly project: Project; readonly revisionId: string }> {
  const issue = problem(project, fit, choice, target);
  const revision = project.revisions.find(({ id }) => id === target.revisionId);
  if (issue !== null || !revision) return fail(...(issue ? [issue] : []));
  const known = project.calibrations ?? [];
  const ids = known.map(({ id }) => id);
  const id = freeId(`${revision.id}-trials`, ids, 60);
  const calibrations = [...known, stored(fit, id, revision.materialId, target)];
  const used = choice === 'variant' ? variantOf(revision, project, id) : { ...revision, calibrationId: id };
  const revisions =
    choice === 'variant'
      ? [...project.revisions, used]
      : project.revisions.map((each) => (each.id === revision.id ? used : each));
  return ok({ project: { ...project, calibrations, revisions }, revisionId: used.id });
}
