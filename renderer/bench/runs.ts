/** Runs of the bench worker: one of each kind at a time, with progress, and cancelled by ending its worker. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { CalibrationFit, FactorName, ObservationKind, Project } from '../../core/index.ts';
import { currentProject } from '../store/project.ts';
import type { BenchAnswer, BenchOutcome, BenchRequest, Predictions } from './solve/protocol.ts';

/** Kind of a run. */
export type RunKind = BenchRequest['kind'];

/** A run under way, and how far it is. */
interface RunState {
  readonly running: boolean;
  readonly done: number;
  /** about how many predictions there will be; 0 before the first word */
  readonly of: number;
  readonly fault: string | null;
}

type Found<K extends RunKind> = Extract<BenchOutcome, { kind: K }>;

/** A result with the project it was made from. */
export type Kept<K extends RunKind> = Found<K> & { readonly from: Project; readonly revisionId: string };

/** The latest runs and their results. */
export interface Runs {
  readonly states: Readonly<Record<RunKind, RunState>>;
  readonly rows: Kept<'rows'> | null;
  readonly fit: Kept<'fit'> | null;
  readonly plan: Kept<'plan'> | null;
}

/** The part of Worker that is used, so that tests can stand in for it. */
export interface BenchWorker {
  postMessage(message: BenchRequest): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<BenchAnswer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

const idle: RunState = { running: false, done: 0, of: 0, fault: null };
const nothing: Runs = { states: { rows: idle, fit: idle, plan: idle }, rows: null, fit: null, plan: null };

/** Outside React: read with getState. */
export const runStore = createStore<Runs>(() => nothing);

/** Picks a part of the runs inside a view. */
export const useRuns = <T>(pick: (runs: Runs) => T): T => useStore(runStore, pick);

const workers = new Map<RunKind, BenchWorker>();

let makeWorker = (): BenchWorker =>
  new Worker(new URL('./solve/worker.ts', import.meta.url), { type: 'module', name: 'bench' });

/** Puts another maker of workers in place; for tests. */
export function setBenchWorker(make: () => BenchWorker): void {
  makeWorker = make;
}

const setState = (kind: RunKind, change: Partial<RunState>): void =>
  runStore.setState(({ states }) => ({ states: { ...states, [kind]: { ...states[kind], ...change } } }));

/** Ends a run; what was found before stays. */
export function cancelRun(kind: RunKind): void {
  workers.get(kind)?.terminate();
  workers.delete(kind);
  setState(kind, { running: false });
}

/** Forgets a result and ends its run. */
export function dropResult(kind: RunKind): void {
  cancelRun(kind);
  runStore.setState({ [kind]: null });
}

/** Ends every run and forgets every result, as when another project is opened. */
export function dropRuns(): void {
  for (const kind of ['rows', 'fit', 'plan'] as const) cancelRun(kind);
  runStore.setState(nothing);
}

function begin(request: BenchRequest, revisionId: string): void {
  const { kind, project } = request;
  cancelRun(kind);
  setState(kind, { ...idle, running: true });
  const worker = makeWorker();
  workers.set(kind, worker);
  worker.onmessage = ({ data }) => {
    if (workers.get(kind) !== worker) return;
    if (data.kind === 'progress') return setState(kind, { done: data.done, of: data.of });
    cancelRun(kind);
    if (data.kind === 'fault') setState(kind, { fault: data.message });
    else runStore.setState({ [kind]: { ...data, from: project, revisionId } });
  };
  worker.onerror = (event) => {
    if (workers.get(kind) !== worker) return;
    cancelRun(kind);
    setState(kind, { fault: event.message || 'it stopped without saying why' });
  };
  worker.postMessage(request);
}

/** The parts of a project on which predictions of trials depend. */
const described = ({ revisions, materials, process, print, calibrations }: Project): readonly unknown[] => [
  revisions,
  materials,
  process,
  print,
  calibrations,
];

/** Whether two states of a project predict the same trials alike. */
export const predictsAlike = (a: Project, b: Project): boolean => {
  const [one, other] = [described(a), described(b)];
  return one.every((part, i) => part === other[i]);
};

/** Whether a result belongs to an earlier state of the project. */
export const isOld = (from: Project, now: Project): boolean =>
  from !== now && !(predictsAlike(from, now) && from.benchLog === now.benchLog);

function knownPredictions(project: Project): Predictions {
  const { rows } = runStore.getState();
  if (!rows || !predictsAlike(rows.from, project)) return {};
  const same = new Set(rows.from.benchLog);
  return Object.fromEntries(
    project.benchLog.flatMap((trial) => {
      const known = rows.predictions[trial.id];
      return known && same.has(trial) ? [[trial.id, known]] : [];
    }),
  );
}

/** Predicts the trials of the log, those that are not known yet. */
export function predictRows(): void {
  const project = currentProject();
  if (project) begin({ kind: 'rows', project, known: knownPredictions(project) }, project.activeRevision);
}

/** Looks for factors. */
export function findFactors(revisionId: string, trialIds: readonly string[], factors: readonly FactorName[]): void {
  const project = currentProject();
  if (project) begin({ kind: 'fit', project, trialIds, factors }, revisionId);
}

/** Looks for the next trials. */
export function proposeTrials(
  revisionId: string,
  choice: { readonly date: string; readonly kinds: readonly ObservationKind[]; readonly count: number },
  fit: CalibrationFit | null,
): void {
  const project = currentProject();
  if (project) begin({ kind: 'plan', project, revisionId, fit, ...choice }, revisionId);
}
