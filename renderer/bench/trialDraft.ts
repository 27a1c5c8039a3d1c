/** A trial as it is typed: texts that are judged field by field and become a trial only when all of them fit. */

import { checkProject, type Issue, type Project, setTemperatures, type Trial } from '../../core/index.ts';
import { readNumber, writeNumber } from '../fields/quantity.ts';
import type { FieldSpec, FieldUnit } from '../fields/spec.ts';
import { activeRevision } from '../store/project.ts';
import { benchText } from '../strings/bench.ts';
import { today } from '../today.ts';
import type { TrialFieldName } from './names.ts';
import { freshTrialId } from './trials.ts';

/** Texts that are typed, other than the temperatures. */
export type DraftTexts = Readonly<Record<Exclude<TrialFieldName, 'setTempsC'>, string>>;

/** What is being typed. */
export interface TrialDraft {
  /** the trial that is changed; null for a new one */
  readonly of: string | null;
  readonly texts: DraftTexts;
  readonly temps: readonly string[];
  readonly excluded: boolean;
  /** taking over was tried, so empty fields are told too */
  readonly asked?: boolean;
}

/** Issues by field; those of a temperature by `setTempsC/0` and so on. */
export type DraftIssues = Readonly<Record<string, Issue>>;

/** A draft as a trial, or why it is none. */
export interface JudgedDraft {
  readonly trial: Trial | null;
  readonly issues: DraftIssues;
}

const words = benchText.trials;

const numberUnits = {
  screwSpeedRpm: 'rpm',
  seconds: 's',
  grams: 'g',
  torqueNm: 'N·m',
  currentA: 'A',
  labL: 'ratio',
  labA: 'ratio',
  labB: 'ratio',
} as const satisfies Partial<Record<TrialFieldName, FieldUnit>>;

/** Fields that hold a number. */
export type NumberName = keyof typeof numberUnits;

const optional: readonly string[] = ['torqueNm', 'currentA', 'labL', 'labA', 'labB'];

/** What a number field needs to know. */
export const specOf = (name: NumberName | 'setTempsC'): FieldSpec => ({
  key: name,
  ...benchText.fields[name],
  unit: name === 'setTempsC' ? '°C' : numberUnits[name],
  ...(optional.includes(name) ? { optional: true } : {}),
});

const shown = (value: number | undefined): string => (value === undefined ? '' : writeNumber(value));

/** The names of the heaters of a revision, from the feed to the nozzle. */
export function heaterNames(project: Project, revisionId: string): readonly string[] {
  const zones = project.revisions.find(({ id }) => id === revisionId)?.barrel.zones ?? [];
  const heated = zones.filter(({ kind }) => kind === 'heated').sort((p, q) => p.startMm - q.startMm);
  return [...heated.map(({ name }) => name), 'nozzle'];
}

/** A new trial with the settings of the open revision; what is weighed stays empty. */
export function newDraft(project: Project): TrialDraft {
  const revision = activeRevision(project);
  const last = project.benchLog.at(-1);
  const texts: DraftTexts = {
    date: today(),
    revisionId: revision.id,
    materialId: revision.materialId,
    lot: last?.materialId === revision.materialId ? (last.lot ?? '') : '',
    screwSpeedRpm: shown(project.process.screwSpeedRpm),
    ...{ seconds: '', grams: '', torqueNm: '', currentA: '', labL: '', labA: '', labB: '', note: '', excludedWhy: '' },
  };
  return { of: null, texts, temps: setTemperatures(revision).map(writeNumber), excluded: false };
}

/** A trial as text. */
export function draftOf(trial: Trial): TrialDraft {
  const { lab } = trial;
  return {
    of: trial.id,
    texts: {
      date: trial.date,
      revisionId: trial.revisionId,
      materialId: trial.materialId,
      lot: trial.lot ?? '',
      screwSpeedRpm: shown(trial.screwSpeedRpm),
      seconds: shown(trial.seconds),
      grams: shown(trial.grams),
      torqueNm: shown(trial.torqueNm),
      currentA: shown(trial.currentA),
      labL: shown(lab?.[0]),
      labA: shown(lab?.[1]),
      labB: shown(lab?.[2]),
      note: trial.note ?? '',
      excludedWhy: trial.excludedWhy ?? '',
    },
    temps: trial.setTempsC.map(writeNumber),
    excluded: trial.excluded === true,
  };
}

/** A draft with another revision: as many temperatures as that one has heaters, its own where there are none yet. */
export function withRevision(project: Project, draft: TrialDraft, revisionId: string): TrialDraft {
  const revision = project.revisions.find(({ id }) => id === revisionId);
  const set = revision ? setTemperatures(revision).map(writeNumber) : [];
  const temps = set.map((value, i) => (set.length === draft.temps.length ? (draft.temps[i] ?? value) : value));
  return { ...draft, texts: { ...draft.texts, revisionId }, temps };
}

const own = (code: string, message: string, remedy: string): Issue => ({ path: [], code, message, remedy });

interface Reading {
  readonly numbers: Partial<Record<NumberName, number>>;
  readonly temps: readonly number[];
  readonly issues: Record<string, Issue>;
}

function readTexts({ texts, temps, excluded }: TrialDraft): Reading {
  const issues: Record<string, Issue> = {};
  const read = (key: string, name: NumberName | 'setTempsC', typed: string): number | undefined => {
    const spec = specOf(name);
    if (spec.optional && typed.trim() === '') return undefined;
    const result = readNumber(typed, spec, [key]);
    if (result.ok) return result.value;
    if (result.issues[0]) issues[key] = result.issues[0];
    return undefined;
  };
  const numbers: Partial<Record<NumberName, number>> = {};
  for (const name of Object.keys(numberUnits) as NumberName[]) {
    const value = read(name, name, texts[name]);
    if (value !== undefined) numbers[name] = value;
  }
  const celsius = temps.map((typed, i) => read(`setTempsC/${i}`, 'setTempsC', typed) ?? Number.NaN);
  if (texts.date === '') issues.date = own('no-date', words.wantDate, '');
  if (excluded && texts.excludedWhy.trim() === '') {
    issues.excludedWhy = own('no-reason', words.whyNeeded, words.whyRemedy);
  }
  const lab = (['labL', 'labA', 'labB'] as const).filter((name) => texts[name].trim() === '');
  if (lab.length === 1 || lab.length === 2) {
    for (const name of lab) issues[name] = own('half-colour', words.colourIncomplete, words.colourRemedy);
  }
  return { numbers, temps: celsius, issues };
}

function trialOf(id: string, before: Trial | undefined, draft: TrialDraft, { numbers, temps }: Reading): Trial {
  const { texts, excluded } = draft;
  const {
    lot: _l,
    note: _n,
    torqueNm: _t,
    currentA: _c,
    lab: _a,
    excluded: _e,
    excludedWhy: _w,
    ...rest
  } = before ?? {};
  const { screwSpeedRpm = 0, seconds = 0, grams = 0, torqueNm, currentA, labL, labA, labB } = numbers;
  const some = {
    lot: texts.lot.trim() || undefined,
    note: texts.note.trim() || undefined,
    torqueNm,
    currentA,
    lab: labL !== undefined && labA !== undefined && labB !== undefined ? ([labL, labA, labB] as const) : undefined,
    excluded: excluded || undefined,
    excludedWhy: (excluded && texts.excludedWhy.trim()) || undefined,
  };
  const given = Object.fromEntries(Object.entries(some).filter(([, value]) => value !== undefined));
  const { date, revisionId, materialId } = texts;
  return { ...rest, id, date, revisionId, materialId, screwSpeedRpm, setTempsC: [...temps], seconds, grams, ...given };
}

/** The field that an issue of the project belongs to. */
function fieldOf(path: Issue['path']): string {
  const [, , key, index] = path;
  if (key === 'lab') return (['labL', 'labA', 'labB'] as const)[Number(index ?? 0)] ?? 'labL';
  return key === 'setTempsC' && index !== undefined ? `setTempsC/${index}` : String(key ?? 'date');
}

/** Judges a draft. Ranges and ids are checked as a saved file's are. */
export function judgeDraft(project: Project, draft: TrialDraft): JudgedDraft {
  const reading = readTexts(draft);
  if (Object.keys(reading.issues).length > 0) return { trial: null, issues: reading.issues };
  const before = project.benchLog.find(({ id }) => id === draft.of);
  const trial = trialOf(draft.of ?? freshTrialId(project), before, draft, reading);
  const checked = checkProject({ ...project, benchLog: [trial], calibrations: [] });
  const own = checked.ok ? [] : checked.issues.filter(({ path }) => path[0] === 'benchLog');
  const issues = Object.fromEntries([...own].reverse().map((issue) => [fieldOf(issue.path), issue]));
  return { trial: own.length === 0 ? trial : null, issues };
}
