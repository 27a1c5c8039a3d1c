/** Colour studies as streams of answers: sweeps of one revision, print speeds of all, a change-over. */

import {
  type ChangeOver,
  type ColourSweep,
  changeOver,
  colourAtPrintSpeed,
  colourAtShift,
  createFieldCache,
  type Design,
  type Lab,
  layerStep,
  mostPrintSpeed,
  type PausedColour,
  type Prediction,
  type Project,
  type StudyRun,
  type StudyWay,
  setRun,
  speedSweepOf,
  studyBase,
  studySpeeds,
  temperatureShifts,
  temperatureSweepOf,
  validateDesign,
  withPauses,
} from '../../core/index.ts';

/** What is asked of the worker. */
export type ColourAsk = SweepsAsk | SpeedsAsk | ChangeAsk;

/** Colour over print speed and set temperature of one revision. */
export interface SweepsAsk {
  readonly kind: 'sweeps';
  readonly project: Project;
  readonly revisionId: string;
  readonly fields: StudyWay['fields'];
}

/** Colour of revisions at print speeds, m/s. */
export interface SpeedsAsk {
  readonly kind: 'speeds';
  readonly project: Project;
  readonly revisionIds: readonly string[];
  readonly speeds: readonly number[];
  readonly fields: StudyWay['fields'];
}

/** Washing out of an old colour. */
export interface ChangeAsk {
  readonly kind: 'change';
  /** s and shares */
  readonly residence: Pick<Prediction['residence'], 'time' | 'cumulative'>;
  /** kg/s */
  readonly massFlow: number;
  readonly labOld: Lab;
  readonly labNew: Lab;
  /** dE00 */
  readonly aim: number;
}

/** How far a job is: 0 to 1. */
interface ToldProgress {
  readonly kind: 'progress';
  readonly done: number;
}

/** Sweeps as far as they are known; later answers replace earlier ones. */
export interface SweepsAnswer {
  readonly kind: 'sweeps';
  readonly speed: ColourSweep;
  readonly temperature: ColourSweep;
  /** print speed that the set screw speed feeds, m/s; null where nothing flows */
  readonly setFeeds: number | null;
  /** the nozzle's, K */
  readonly setTemperature: number;
  /** highest print speed that the drive can feed, m/s; null where a feeder sets the output */
  readonly most: number | null;
  /** how it was worked out */
  readonly fields: StudyWay['fields'];
  /** at the set print speed with the print's pauses */
  readonly paused: PausedColour | null;
  /** why single places are missing */
  readonly gaps: readonly { readonly asked: number; readonly of: 'speed' | 'temperature'; readonly reason: string }[];
}

/** One revision at all print speeds asked for. */
export interface SpeedsAnswer {
  readonly kind: 'speeds';
  readonly revisionId: string;
  /** in the order asked for; empty where the revision is refused */
  readonly runs: readonly StudyRun[];
  /** dE00 between the means at the first and the last speed; null where one is missing */
  readonly step: number | null;
  readonly refusal: string | null;
}

/** The change-over. */
interface ChangeAnswer {
  readonly kind: 'change';
  readonly change: ChangeOver;
}

/** What a revision's refusal says. */
interface RefusedAnswer {
  readonly kind: 'refused';
  readonly reason: string;
}

/** Everything the worker says. */
export type ColourAnswer = ToldProgress | SweepsAnswer | SpeedsAnswer | ChangeAnswer | RefusedAnswer;

/** A study under way: the design, its prediction as set, and the places so far. */
interface Study {
  readonly design: Design;
  readonly base: Prediction;
  readonly way: StudyWay;
  readonly speeds: StudyRun[];
  readonly shifts: StudyRun[];
}

function sweepsNow({ design, base, way, speeds, shifts }: Study): SweepsAnswer {
  const gap = (of: 'speed' | 'temperature') => (run: StudyRun) =>
    run.reason === null ? [] : [{ asked: run.asked, of, reason: run.reason }];
  const speed = speedSweepOf(design, speeds);
  return {
    kind: 'sweeps',
    speed,
    temperature: temperatureSweepOf(design, shifts),
    setFeeds: base.output.flows ? base.print.highestSpeed : null,
    setTemperature: design.nozzle.setTemperature,
    most: mostPrintSpeed(design, base),
    fields: way.fields,
    paused: withPauses(design, speed, design.print.speed),
    gaps: [...speeds.flatMap(gap('speed')), ...shifts.flatMap(gap('temperature'))],
  };
}

/** The study with nothing but the design as it is set, which both sweeps hold. */
function begun(design: Design, way: StudyWay): Study {
  const base = studyBase(design, way);
  const run = setRun(design, base);
  const at = design.nozzle.setTemperature;
  return {
    design,
    base,
    way,
    speeds: [run],
    shifts: [{ ...run, asked: at, point: run.point && { ...run.point, at } }],
  };
}

/** Fills both sweeps, telling the share done after each place. */
function* filled({ design, base, way, speeds, shifts }: Study): Generator<number> {
  if (speeds[0].point === null) return;
  const asked = studySpeeds(design, base);
  const all = asked.length + temperatureShifts.length;
  for (const speed of asked) {
    speeds.push(colourAtPrintSpeed(design, base, speed, way));
    yield (speeds.length - 1) / all;
  }
  for (const kelvins of temperatureShifts) {
    shifts.push(colourAtShift(design, kelvins, way));
    yield (asked.length + shifts.length - 1) / all;
  }
}

/** Share of the time that formulas take where solved fields follow. */
const quickShare = 0.15;

function* sweeps({ project, revisionId, fields }: SweepsAsk): Generator<ColourAnswer> {
  const made = validateDesign(project, revisionId);
  if (!made.ok) {
    yield { kind: 'refused', reason: made.issues.map((issue) => issue.message).join(' ') };
    return;
  }
  const share = fields === 'solved' ? quickShare : 1;
  const quick = begun(made.value, { fields: 'formula' });
  yield sweepsNow(quick);
  for (const done of filled(quick)) {
    yield { kind: 'progress', done: share * done };
    yield sweepsNow(quick);
  }
  if (fields === 'formula') return;
  const fine = begun(made.value, { fields, cache: createFieldCache() });
  // the estimate stays until all is solved: a line of both would mislead
  for (const done of filled(fine)) yield { kind: 'progress', done: share + (1 - share) * done };
  yield sweepsNow(fine);
}

function speedsOf(project: Project, revisionId: string, asked: readonly number[], way: StudyWay): SpeedsAnswer {
  const made = validateDesign(project, revisionId);
  if (!made.ok) {
    const refusal = made.issues.map((issue) => issue.message).join(' ');
    return { kind: 'speeds', revisionId, runs: [], step: null, refusal };
  }
  const base = studyBase(made.value, way);
  const runs = asked.map((speed) => colourAtPrintSpeed(made.value, base, speed, way));
  const [first, last] = [runs[0]?.point, runs.at(-1)?.point];
  return { kind: 'speeds', revisionId, runs, step: first && last ? layerStep(first, last) : null, refusal: null };
}

function* speeds({ project, revisionIds, speeds: asked, fields }: SpeedsAsk): Generator<ColourAnswer> {
  for (const [i, id] of revisionIds.entries()) {
    yield { kind: 'progress', done: i / revisionIds.length };
    yield speedsOf(project, id, asked, { fields, cache: createFieldCache() });
  }
}

/** The stream of answers to an ask; each is made when it is taken, so a worker can send it before the next. */
export function* colourAnswers(ask: ColourAsk): Generator<ColourAnswer> {
  if (ask.kind === 'sweeps') yield* sweeps(ask);
  else if (ask.kind === 'speeds') yield* speeds(ask);
  else {
    const { residence, massFlow, labOld, labNew, aim } = ask;
    yield { kind: 'change', change: changeOver(residence, massFlow, labOld, labNew, aim) };
  }
}
