/** A trial applied to a project: the machine, the granulate and the settings it was run with. */

import { withoutCalibration } from '../doubt/sample.ts';
import type { Project, Revision, Trial } from '../project/schema.ts';
import { fail, type Issue, ok, type Result } from '../result.ts';

/** The project as the trial was run, and the revision to predict. */
export interface TrialProject {
  readonly project: Project;
  readonly revisionId: string;
}

/** Whether the revision's calibration counts: for fits it must not. */
export type TrialCalibration = 'as it stands' | 'without';

const placeOf = (project: Project, trial: Trial): (string | number)[] => {
  const index = project.benchLog.findIndex(({ id }) => id === trial.id);
  return index < 0 ? ['trial'] : ['benchLog', index];
};

function issuesOf(project: Project, trial: Trial, revision: Revision | undefined): readonly Issue[] {
  const at = placeOf(project, trial);
  const issues: Issue[] = [];
  const add = (key: string, code: string, message: string, value: string, allowed: string, remedy: string) =>
    issues.push({ path: [...at, key], code, message, value, allowed, remedy });
  const ids = (list: readonly { readonly id: string }[]) => `one of: ${list.map(({ id }) => id).join(', ')}`;
  if (!revision) {
    const { revisions } = project;
    add('revisionId', 'unknown-id', 'No revision has this id.', trial.revisionId, ids(revisions), 'Name a revision.');
  }
  if (!project.materials.some(({ id }) => id === trial.materialId)) {
    const { materials } = project;
    add('materialId', 'unknown-id', 'No material has this id.', trial.materialId, ids(materials), 'Name a material.');
  }
  if (!(trial.screwSpeedRpm >= 0.01)) {
    const value = `${trial.screwSpeedRpm} rpm`;
    add('screwSpeedRpm', 'trial-at-rest', 'The screw did not turn.', value, 'at least 0.01 rpm', 'Give the speed.');
  }
  const heated = revision?.barrel.zones.filter(({ kind }) => kind === 'heated').map(({ name }) => name) ?? [];
  if (revision && trial.setTempsC.length !== heated.length + 1) {
    const names = [...heated, 'nozzle'].join(', ');
    const message = 'The trial does not give one temperature for each heater of its revision.';
    const remedy = 'Give them from the feed to the nozzle.';
    const count = `${trial.setTempsC.length} temperatures`;
    add('setTempsC', 'trial-temperatures', message, count, `${heated.length + 1}: ${names}`, remedy);
  }
  return issues;
}

/** The revision with the trial's granulate and temperatures, given from the feed on, nozzle last. */
function revisionAsRun(revision: Revision, { materialId, setTempsC }: Trial): Revision {
  const { zones } = revision.barrel;
  const heated = zones.filter(({ kind }) => kind === 'heated').sort((p, q) => p.startMm - q.startMm);
  const set = zones.map((zone) =>
    zone.kind === 'heated' ? { ...zone, setTempC: setTempsC[heated.indexOf(zone)] } : zone,
  );
  const nozzle = { ...revision.nozzle, setTempC: setTempsC[setTempsC.length - 1] };
  return { ...revision, materialId, barrel: { ...revision.barrel, zones: set }, nozzle };
}

/**
 * The project as a trial was run: its revision, granulate, screw speed and set temperatures.
 * @param calibration whether the revision's calibration stays
 * @returns a changed copy, or issues at the trial's fields: unknown ids, a screw at rest, a wrong count of temperatures
 */
export function projectForTrial(
  project: Project,
  trial: Trial,
  calibration: TrialCalibration = 'as it stands',
): Result<TrialProject> {
  const revision = project.revisions.find(({ id }) => id === trial.revisionId);
  const issues = issuesOf(project, trial, revision);
  if (!revision || issues.length > 0) return fail(...issues);
  const asRun = revisionAsRun(revision, trial);
  const revisions = project.revisions.map((each) => (each.id === revision.id ? asRun : each));
  const process = { ...project.process, screwSpeedRpm: trial.screwSpeedRpm };
  const run = { ...project, revisions, process };
  return ok({
    project: calibration === 'without' ? withoutCalibration(run, revision.id) : run,
    revisionId: revision.id,
  });
}
