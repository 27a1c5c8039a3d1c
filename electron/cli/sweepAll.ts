/** Evaluates the designs of a sweep on as many threads as there are processors, or on this one. */

import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import {
  createFieldCache,
  type Evaluated,
  evaluateCandidate,
  type Project,
  type SearchChange,
} from '../../core/index.ts';

/** What a thread is told once. */
export interface SweepJob {
  readonly project: Project;
  readonly revisionId: string;
  readonly fields: Evaluated['fields'];
}

/** What a thread is asked, and its answer. */
export interface SweepAsk {
  readonly index: number;
  readonly changes: readonly SearchChange[];
}
/** One design with its place in the sweep. */
export interface SweepAnswer {
  readonly index: number;
  readonly design: Evaluated;
}

/** Fewer designs than this are done before threads have started. */
const worthThreads = 8;

type Candidates = readonly (readonly SearchChange[])[];

/** All on this thread. */
function sweepHere(job: SweepJob, candidates: Candidates, done: (count: number) => void): readonly Evaluated[] {
  const cache = createFieldCache();
  return candidates.map((changes, i) => {
    const design = evaluateCandidate(job.project, job.revisionId, changes, { fields: job.fields }, cache);
    done(i + 1);
    return design;
  });
}

/**
 * Shares candidates among threads; the first that fails ends all, since nothing that the others find is kept.
 * @returns designs in the order of the candidates
 */
export async function shareOut(
  candidates: Candidates,
  threads: readonly SweepThread[],
  done: (count: number) => void,
): Promise<readonly Evaluated[]> {
  const designs: Evaluated[] = [];
  let next = 0;
  let count = 0;
  let failed = false;
  const work = async (thread: SweepThread): Promise<void> => {
    while (next < candidates.length && !failed) {
      const index = next++;
      const answer = await thread.ask({ index, changes: candidates[index] ?? [] });
      designs[answer.index] = answer.design;
      // after a failure nobody waits for the count
      if (!failed) done(++count);
    }
  };
  try {
    await Promise.all(threads.map(work));
    return designs;
  } finally {
    failed = true;
    await Promise.all(threads.map((thread) => thread.end()));
  }
}

/** A thread that evaluates one design after another. */
export interface SweepThread {
  ask(question: SweepAsk): Promise<SweepAnswer>;
  end(): Promise<unknown>;
}

/**
 * Designs in the order of the candidates, whatever thread had which.
 * @param workerPath the thread's bundle; null, or no file: all are evaluated on this thread
 * @param done hears how many are evaluated
 */
export async function sweepAll(
  job: SweepJob,
  candidates: Candidates,
  workerPath: string | null,
  done: (count: number) => void,
  processors = availableParallelism(),
): Promise<readonly Evaluated[]> {
  const count = Math.min(candidates.length, processors);
  const worth = count > 1 && (candidates.length >= worthThreads || job.fields === 'solved');
  if (!worth || workerPath === null || !existsSync(workerPath)) return sweepHere(job, candidates, done);
  const threads = Array.from({ length: count }, (): SweepThread => {
    const worker = new Worker(workerPath, { workerData: job });
    return { ask: (question) => ask(worker, question), end: () => worker.terminate() };
  });
  return shareOut(candidates, threads, done);
}

/** One answer of a thread; a thread that fails or ends fails the sweep. */
function ask(worker: Worker, question: SweepAsk): Promise<SweepAnswer> {
  return new Promise((resolve, reject) => {
    const ended = (code: number) => reject(new Error(`A thread ended early with status ${code}.`));
    worker.once('error', reject);
    worker.once('exit', ended);
    worker.once('message', (answer: SweepAnswer) => {
      worker.off('error', reject);
      worker.off('exit', ended);
      resolve(answer);
    });
    worker.postMessage(question);
  });
}
