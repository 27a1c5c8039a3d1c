/** What the bench worker does, as functions that a test can call without one. */

import {
  benchRows,
  type CalibrationFit,
  createFieldCache,
  type Factors,
  type FieldRatios,
  fieldRatios,
  fitCalibration,
  freshColour,
  measuredFigures,
  type PredictedTrial,
  type Project,
  plainFactors,
  planCandidates,
  planTrials,
  predictTrial,
  type Result,
  type Trial,
  type TrialModel,
} from '../../../core/index.ts';
import type { BenchOutcome, BenchRequest } from './protocol.ts';

/** Hears how many predictions are made, of about how many. */
export type Tell = (done: number, of: number) => void;

/** Predictions that a fit makes of each trial, for one factor and for each further one; measured on made-up trials. */
const callsOfFit = (factors: number): number => 6 + 6 * factors;
/** Predictions that a plan makes of each setting: one plain, and one to either side of each factor, and one more. */
const callsOfPlan = 10;

type Of<K extends BenchRequest['kind']> = Extract<BenchRequest, { kind: K }>;

/** The prediction as a fit asks for it, counted. */
function countedModel(project: Project, of: number, tell: Tell): TrialModel {
  let done = 0;
  return (factors: Factors, trial: Trial): PredictedTrial | null => {
    const predicted = predictTrial(project, trial, factors);
    done++;
    tell(done, Math.max(of, done));
    return predicted.ok ? predicted.value : null;
  };
}

/** What solved fields change of each trial's figures, without factors; fields are kept from trial to trial. */
function solvedOver(project: Project): (trial: Trial) => FieldRatios | null {
  const cache = createFieldCache();
  return (trial) => {
    const formula = predictTrial(project, trial, plainFactors);
    const solved = predictTrial(project, trial, plainFactors, { fields: 'solved', cache });
    return formula.ok && solved.ok ? fieldRatios(solved.value, formula.value) : null;
  };
}

/** Fields that a trial's revision is calibrated for: its prediction must go by the same. */
function fieldsOf(project: Project, { revisionId }: Trial): 'formula' | 'solved' {
  const id = project.revisions.find((revision) => revision.id === revisionId)?.calibrationId;
  return project.calibrations?.find((calibration) => calibration.id === id)?.fields ?? 'formula';
}

function rowsOf({ project, known }: Of<'rows'>, tell: Tell): BenchOutcome {
  const of = project.benchLog.filter(({ id }) => !known[id]).length;
  let done = 0;
  const cache = createFieldCache();
  const predictions: Record<string, Result<PredictedTrial>> = {};
  for (const trial of project.benchLog) {
    const before = known[trial.id];
    predictions[trial.id] = before ?? predictTrial(project, trial, null, { fields: fieldsOf(project, trial), cache });
    if (!before) tell(++done, of);
  }
  const rows = benchRows(project.benchLog, ({ id }) => predictions[id] as Result<PredictedTrial>);
  return { kind: 'rows', rows, predictions };
}

function fitOf({ project, trialIds, factors }: Of<'fit'>, tell: Tell): BenchOutcome {
  const trials = project.benchLog
    .filter(({ id }) => trialIds.includes(id))
    .map((trial) => {
      const material = project.materials.find(({ id }) => id === trial.materialId);
      // a colour is held against the model only where its rate is looked for: no other factor is there to mend it
      const fresh = factors.includes('colourRate') ? freshColour(material) : null;
      return { trial, measured: measuredFigures(trial, fresh) };
    });
  const used = trials.filter(({ trial }) => !trial.excluded).length;
  const model = countedModel(project, used * callsOfFit(factors.length), tell);
  return { kind: 'fit', fit: fitCalibration(trials, model, { factors, ratios: solvedOver(project) }) };
}

/** A kept calibration as the planner takes a fit: it reads the factors only. */
function storedFit(project: Project, revisionId: string): CalibrationFit | null {
  const revision = project.revisions.find(({ id }) => id === revisionId);
  const stored = project.calibrations?.find(({ id }) => id === revision?.calibrationId);
  if (!stored) return null;
  const { feed, viscosity, wallFriction, colourRate } = stored.factors;
  const found = (factor: typeof feed) => ({ ...factor, reason: null, entangled: false });
  const { before, after } = stored.error;
  return {
    factors: {
      feed: found(feed),
      viscosity: found(viscosity),
      wallFriction: found(wallFriction),
      colourRate: found(colourRate),
    },
    observations: [],
    trialIds: stored.trialIds,
    skipped: [],
    outliers: [],
    error: { before: { rms: before, median: before }, after: { rms: after, median: after }, leaveOneOut: null },
    scale: 1,
    freedom: 0,
    converged: true,
    rounds: 0,
    evaluations: 0,
  };
}

function planOf({ project, revisionId, date, fit, kinds, count }: Of<'plan'>, tell: Tell): BenchOutcome {
  const candidates = planCandidates(project, revisionId, date);
  const model = countedModel(project, candidates.length * callsOfPlan, tell);
  return { kind: 'plan', plan: planTrials(candidates, model, fit ?? storedFit(project, revisionId), { kinds, count }) };
}

/** Does what was asked, telling how far it is. */
export function perform(request: BenchRequest, tell: Tell): BenchOutcome {
  if (request.kind === 'rows') return rowsOf(request, tell);
  return request.kind === 'fit' ? fitOf(request, tell) : planOf(request, tell);
}
