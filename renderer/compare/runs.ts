/** What has been worked out of revisions, kept by what they are described as, so that opening again shows it at once. */

import { useEffect, useMemo, useRef } from 'react';
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import { contentHash, issueReason, type Prediction, type Presentation, type Project } from '../../core/index.ts';
import type { WorkerLike } from '../solve/client.ts';
import { type CompareTask, runTasks } from '../solve/compareRuns.ts';
import type { Answer, Shape } from '../solve/protocol.ts';

/** A prediction and its curves. */
export interface Made {
  readonly prediction: Prediction;
  readonly presentation: Presentation;
}

/** What is known of one description. */
export interface Found {
  readonly estimate?: Made;
  readonly solved?: Made;
  readonly shape?: Shape;
  /** why there is no prediction, in words */
  readonly refusal?: string;
  /** what broke, in words; tried again when asked to go on */
  readonly fault?: string;
}

/** Everything found so far, and what is being worked out. */
export interface RunState {
  /** by key of the description, oldest first */
  readonly found: Readonly<Record<string, Found>>;
  readonly now: { readonly key: string; readonly fields: CompareTask['fields']; readonly done: number } | null;
  readonly running: boolean;
  /** stopped by the person */
  readonly stopped: boolean;
}

/** Outside React: read with getState. */
export const runStore = createStore<RunState>(() => ({ found: {}, now: null, running: false, stopped: false }));

/** Picks a part of the state inside a view. */
export const useRuns = <T>(pick: (state: RunState) => T): T => useStore(runStore, pick);

/** Descriptions beyond this many are forgotten, oldest first: solved fields are megabytes. */
export const mostKept = 16;

/** Key of all that a prediction of a revision depends on, and of nothing else. */
export function runKey(project: Project, id: string): string {
  const revision = project.revisions.find((candidate) => candidate.id === id);
  if (!revision) return '';
  const { name: _n, note: _o, date: _d, locked: _l, parent: _p, ...described } = revision;
  const { materials, process, print, invented, calibrations = [] } = project;
  const used = materials.filter((material) => material.id === revision.materialId);
  const factors = calibrations.filter((calibration) => calibration.id === revision.calibrationId);
  return contentHash({ described, used, process, print, invented, factors });
}

function foundBy(fields: CompareTask['fields'], answer: Answer): Found {
  if (answer.kind === 'shape') return { shape: answer.shape };
  if (answer.kind === 'issues') return { refusal: answer.issues.map(issueReason).join(' ') };
  if (answer.kind === 'fault') return { fault: answer.message };
  if (answer.kind !== 'prediction') return {};
  const made = { prediction: answer.prediction, presentation: answer.presentation };
  return fields === 'solved' ? { solved: made } : { estimate: made };
}

/** Takes one answer in. */
export function takeFound(key: string, fields: CompareTask['fields'], answer: Answer): void {
  runStore.setState(({ found }) => {
    if (answer.kind === 'progress') return { now: { key, fields, done: answer.done } };
    const { [key]: before, ...others } = found;
    const kept = Object.entries(others).slice(-(mostKept - 1));
    return { found: { ...Object.fromEntries(kept), [key]: { ...before, ...foundBy(fields, answer) } } };
  });
}

/** Whether a task has nothing left to find. */
const isKnown = (found: Found | undefined, fields: CompareTask['fields']): boolean =>
  found !== undefined &&
  (found.refusal !== undefined ||
    found.fault !== undefined ||
    (fields === 'solved' ? found.solved !== undefined : found.estimate !== undefined && found.shape !== undefined));

/** Estimates of all revisions first, so that there is something to see; then their fields. */
const tasksFor = (ids: readonly string[]): CompareTask[] => [
  ...ids.map((revisionId) => ({ revisionId, fields: 'formula' as const, withShape: true })),
  ...ids.map((revisionId) => ({ revisionId, fields: 'solved' as const, withShape: false })),
];

/** Works out what is missing of these revisions; answers with the function that ends it. */
export function findMissing(project: Project, ids: readonly string[], startWorker?: () => WorkerLike): () => void {
  const keys = new Map(ids.map((id) => [id, runKey(project, id)]));
  const keyOf = (task: CompareTask) => keys.get(task.revisionId) ?? '';
  const known = (task: CompareTask) => isKnown(runStore.getState().found[keyOf(task)], task.fields);
  const tasks = tasksFor(ids);
  if (tasks.every(known)) return () => undefined;
  runStore.setState({ running: true });
  const over = () => runStore.setState({ running: false, now: null });
  const end = runTasks(
    project,
    tasks,
    (task, answer) => takeFound(keyOf(task), task.fields, answer),
    over,
    known,
    startWorker,
  );
  return () => {
    end();
    over();
  };
}

/** Stops working things out; what was found stays. */
export const stopRuns = (): void => runStore.setState({ stopped: true });

/** Goes on working out what is missing; what broke is tried again. */
export const goOnRuns = (): void =>
  runStore.setState(({ found }) => ({
    stopped: false,
    found: Object.fromEntries(Object.entries(found).map(([key, { fault: _, ...rest }]) => [key, rest])),
  }));

/** One chosen revision with what is known of it. */
export interface Compared {
  readonly id: string;
  readonly key: string;
  readonly found: Found;
}

/** What is known of the revisions, in their order; what is missing is worked out while this stands and is not stopped. */
export function useCompared(project: Project, ids: readonly string[]): readonly Compared[] {
  const keys = useMemo(() => ids.map((id) => runKey(project, id)), [project, ids]);
  const found = useRuns((state) => state.found);
  const stopped = useRuns((state) => state.stopped);
  const latest = useRef({ project, ids });
  latest.current = { project, ids };
  const list = keys.join();
  // biome-ignore lint/correctness/useExhaustiveDependencies: runs depend on what is described, not on the objects
  useEffect(() => {
    if (stopped) return;
    return findMissing(latest.current.project, latest.current.ids);
  }, [list, stopped]);
  return useMemo(
    () => ids.map((id, i) => ({ id, key: keys[i] ?? '', found: found[keys[i] ?? ''] ?? {} })),
    [ids, keys, found],
  );
}

/** The predictions to be compared: solved ones where every revision that can be has them, else estimates. */
export function comparable(compared: readonly Compared[]): {
  readonly made: readonly { readonly id: string; readonly made: Made }[];
  readonly solved: boolean;
  readonly solvedCount: number;
  readonly count: number;
} {
  const alive = compared.filter(({ found }) => found.refusal === undefined && found.fault === undefined);
  const solvedCount = alive.filter(({ found }) => found.solved).length;
  const solved = alive.length > 0 && solvedCount === alive.length;
  const made = alive.flatMap(({ id, found }) => {
    const one = solved ? found.solved : found.estimate;
    return one ? [{ id, made: one }] : [];
  });
  return { made, solved, solvedCount, count: alive.length };
}
