/** Edits of the bench log: project in, changed project out; and acts on the open project, each one undo step. */

import { produce } from 'immer';
import {
  applyCalibration,
  type CalibrationChoice,
  type CalibrationFit,
  type Project,
  type Trial,
} from '../../core/index.ts';
import { announce } from '../files.ts';
import { applyEdit, currentProject } from '../store/project.ts';
import { benchText } from '../strings/bench.ts';
import { today } from '../today.ts';

const steps = benchText.trials.steps;

/** Ids T1, T2 … that no trial has; the first of them. */
export function freshTrialId({ benchLog }: Project): string {
  const taken = new Set(benchLog.map(({ id }) => id));
  for (let n = 1; ; n++) if (!taken.has(`T${n}`)) return `T${n}`;
}

/** Puts trials at the end of the log. */
const withTrials =
  (trials: readonly Trial[]) =>
  (project: Project): Project => ({
    ...project,
    benchLog: [...project.benchLog, ...trials],
  });

/** Puts a trial in place of the one with this id. */
const withTrial =
  (id: string, trial: Trial) =>
  (project: Project): Project => ({
    ...project,
    benchLog: project.benchLog.map((each) => (each.id === id ? trial : each)),
  });

/** Takes a trial out of the log. */
const withoutTrial =
  (id: string) =>
  (project: Project): Project => ({
    ...project,
    benchLog: project.benchLog.filter((each) => each.id !== id),
  });

/** Adds what was typed. */
export const addTrial = (trial: Trial): void => applyEdit(withTrials([trial]), { label: steps.add(trial.id) });

/** Takes over what was typed into a trial that is in the log. */
export const changeTrial = (id: string, trial: Trial): void =>
  applyEdit(withTrial(id, trial), { label: steps.change(id) });

/** Removes a trial. */
export const removeTrial = (id: string): void => applyEdit(withoutTrial(id), { label: steps.remove(id) });

/** Adds imported trials as one step. */
export const importTrials = (trials: readonly Trial[]): void =>
  applyEdit(withTrials(trials), { label: steps.import(trials.length) });

const inTrial = (id: string, change: (trial: Trial) => void) =>
  produce<Project>((draft) => {
    const trial = draft.benchLog.find((each) => each.id === id);
    if (trial) change(trial);
  });

/** Uses a trial again that was left out. */
export const takeBack = (id: string): void =>
  applyEdit(
    inTrial(id, (trial) => {
      delete trial.excluded;
      delete trial.excludedWhy;
    }),
    { label: steps.takeBack(id) },
  );

/** Gives a trial the colour of its strand, rounded to a tenth. */
export const colourTrial = (id: string, lab: readonly [number, number, number]): void =>
  applyEdit(
    inTrial(id, (trial) => {
      trial.lab = [lab[0], lab[1], lab[2]];
    }),
    { label: steps.colour(id) },
  );

/** Applies a fit to a revision or keeps it as a variant, which is then opened; says why where that is refused. */
export function keepFit(fit: CalibrationFit, choice: CalibrationChoice, revisionId: string, name: string): boolean {
  const project = currentProject();
  if (!project) return false;
  const kept = applyCalibration(project, fit, choice, { revisionId, name, date: today() });
  if (!kept.ok) {
    announce('bad', kept.issues.map(({ message, remedy }) => `${message} ${remedy}`).join(' '));
    return false;
  }
  const words = benchText.calibrate;
  applyEdit(() => ({ ...kept.value.project, activeRevision: kept.value.revisionId }), {
    label: words.steps[choice](revisionId),
  });
  announce('good', words.applied(kept.value.revisionId));
  return true;
}

/** Takes the calibration off a revision; it stays among the project's. */
export const takeCalibrationOff = (revisionId: string): void =>
  applyEdit(
    produce<Project>((draft) => {
      const revision = draft.revisions.find(({ id }) => id === revisionId);
      if (revision) delete revision.calibrationId;
    }),
    { label: benchText.calibrate.steps.off(revisionId) },
  );

/** Gives a revision a calibration that the project keeps. */
export const applyKept = (revisionId: string, calibrationId: string): void =>
  applyEdit(
    produce<Project>((draft) => {
      const revision = draft.revisions.find(({ id }) => id === revisionId);
      if (revision) revision.calibrationId = calibrationId;
    }),
    { label: benchText.calibrate.steps.use(revisionId) },
  );

/** Deletes a calibration that no revision uses. */
export const dropKept = (calibrationId: string): void =>
  applyEdit(
    produce<Project>((draft) => {
      if (draft.revisions.some((revision) => revision.calibrationId === calibrationId)) return;
      draft.calibrations = draft.calibrations?.filter(({ id }) => id !== calibrationId);
    }),
    { label: benchText.calibrate.steps.drop },
  );
