/** Starting and stopping searches. */

import type { Evaluated, Project, SearchInput, SeekSpec, SweepPlan } from '../../core/index.ts';
import type { JobWorker } from '../solve/job.ts';
import { projectStore } from '../store/project.ts';
import { createPool, type Pool } from './solve/pool.ts';
import { runSeek, runSensitivity, runSweep } from './solve/runs.ts';
import { startSearchWorker, workerCount } from './solve/startWorker.ts';
import { emptySearch, type SeekRun, type SweepRun, searchStore, setSearch } from './store.ts';

/** What a run is on. */
export interface RunOn {
  readonly project: Project;
  readonly revisionId: string;
  readonly inputs: readonly SearchInput[];
}

/** Between two pictures of a sweep, ms: a map of ten thousand cells is not drawn anew for each. */
const drawEveryMs = 120;

let pool: Pool | null = null;
/** Counts runs, so that news of one that was ended are not heard. */
let current = 0;

const clock = (): number => performance.now();
const reasonOf = (fault: unknown): string => (fault instanceof Error ? fault.message : String(fault));

function freshPool(on: RunOn, startWorker: () => JobWorker, workers: number): { pool: Pool; run: number } {
  pool?.end();
  pool = createPool(startWorker, workers, on);
  return { pool, run: ++current };
}

const begun = (on: RunOn) =>
  ({ ...on, state: 'running', fault: null, since: clock(), now: clock() }) as const satisfies Partial<SweepRun>;

/** Ends what runs; what it found stays, and is called stopped. */
export function stopSearch(): void {
  pool?.end();
  pool = null;
  current++;
  const { sweepRun, seekRun, sensitivity } = searchStore.getState();
  setSearch({
    sweepRun: sweepRun?.state === 'running' ? { ...sweepRun, state: 'stopped' } : sweepRun,
    seekRun: seekRun?.state === 'running' ? { ...seekRun, state: 'stopped' } : seekRun,
    sensitivity: sensitivity?.state === 'running' ? null : sensitivity,
  });
}

/** Follows a run to its end; `change` alters its state in the store. */
async function followed(
  run: number,
  work: Promise<void>,
  change: (end: Pick<SweepRun, 'state' | 'fault' | 'now'>) => void,
): Promise<void> {
  const ended = (end: Pick<SweepRun, 'state' | 'fault'>) => {
    if (run !== current) return;
    change({ ...end, now: clock() });
    pool?.end();
    pool = null;
  };
  await work.then(
    () => ended({ state: 'done', fault: null }),
    (fault: unknown) => ended({ state: 'fault', fault: reasonOf(fault) }),
  );
}

/** Starts a sweep; another search that runs is stopped. */
export function startSweep(
  on: RunOn,
  plan: SweepPlan,
  fields: Evaluated['fields'],
  startWorker: () => JobWorker = startSearchWorker,
  workers = workerCount(),
): Promise<void> {
  stopSearch();
  const { pool: at, run } = freshPool(on, startWorker, workers);
  const designs: (Evaluated | undefined)[] = plan.candidates.map(() => undefined);
  let done = 0;
  let drawn = clock();
  const change = (more: Partial<SweepRun>) => {
    const { sweepRun } = searchStore.getState();
    if (sweepRun) setSearch({ sweepRun: { ...sweepRun, designs: [...designs], done, ...more } });
  };
  setSearch({ sweepRun: { ...begun(on), plan, designs, done, fields } });
  const hear = (design: Evaluated, index: number) => {
    if (run !== current) return;
    designs[index] = design;
    done++;
    if (clock() - drawn < drawEveryMs) return;
    drawn = clock();
    change({ now: drawn });
  };
  return followed(run, runSweep(at, plan, fields, hear), change);
}

/** Starts a goal seek; another search that runs is stopped. */
export function startSeek(
  on: RunOn,
  spec: SeekSpec,
  solve: boolean,
  startWorker: () => JobWorker = startSearchWorker,
  workers = workerCount(),
): Promise<void> {
  stopSearch();
  const { pool: at, run } = freshPool(on, startWorker, workers);
  const change = (more: Partial<SeekRun>) => {
    const { seekRun } = searchStore.getState();
    if (seekRun) setSearch({ seekRun: { ...seekRun, ...more } });
  };
  const news = { phase: 'present', done: 0, of: spec.budget, result: null, solved: null } as const;
  setSearch({ seekRun: { ...begun(on), spec, news }, chosen: null, sensitivity: null, taken: [] });
  const hear = (heard: SeekRun['news']) => {
    const before = searchStore.getState().seekRun?.news.phase;
    if (run !== current) return;
    // confirming takes its own time a design, so that its time left is reckoned anew
    const fresh = heard.phase === 'confirming' && before !== 'confirming';
    change({ news: heard, now: clock(), ...(fresh ? { since: clock() } : {}) });
  };
  return followed(run, runSeek(at, spec, solve, hear), change);
}

/** Works out what a maker's step does to a candidate. */
export function startSensitivity(
  on: RunOn,
  spec: SeekSpec,
  design: Evaluated,
  startWorker: () => JobWorker = startSearchWorker,
  workers = workerCount(),
): Promise<void> {
  stopSearch();
  const { pool: at, run } = freshPool(on, startWorker, workers);
  const of = design.changes;
  setSearch({ sensitivity: { of, state: 'running', rows: [], fault: null } });
  const work = runSensitivity(at, spec, design).then((rows) => {
    if (run === current) setSearch({ sensitivity: { of, state: 'done', rows, fault: null } });
  });
  return followed(run, work, ({ state, fault }) => {
    if (state === 'fault') setSearch({ sensitivity: { of, state, rows: [], fault } });
  });
}

// What was searched in one project says nothing of another: nothing of it may stay.
projectStore.subscribe((state, before) => {
  const opened = state.file !== before.file && state.history?.past.length === 0 && state.history !== before.history;
  if (!opened) return;
  stopSearch();
  searchStore.setState(emptySearch);
});
