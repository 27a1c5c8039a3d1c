/** Shares designs among workers; the answers come back in the order of the asks, whoever made them. */

import type { Evaluated, Project, SearchChange } from '../../../core/index.ts';
import type { JobWorker } from '../../solve/job.ts';
import type { SearchAnswer, SearchAsk } from './protocol.ts';

/** A pool at work. */
export interface Pool {
  /**
   * Evaluates designs that do not depend on each other.
   * @param each hears every design as it comes, with its place
   * @returns all of them in order; never settles once the pool has ended; rejects where a worker broke
   */
  evaluate(
    candidates: readonly (readonly SearchChange[])[],
    fields: Evaluated['fields'],
    each?: (design: Evaluated, index: number) => void,
  ): Promise<readonly Evaluated[]>;
  /** Ends the workers; what they were at is lost. */
  end(): void;
}

/** One batch under way. */
interface Batch {
  readonly candidates: readonly (readonly SearchChange[])[];
  readonly fields: Evaluated['fields'];
  readonly designs: Evaluated[];
  readonly each: ((design: Evaluated, index: number) => void) | undefined;
  readonly resolve: (designs: readonly Evaluated[]) => void;
  readonly reject: (reason: Error) => void;
  next: number;
  done: number;
}

/** Starts a pool for one revision of a project. */
export function createPool(
  startWorker: () => JobWorker,
  count: number,
  at: { readonly project: Project; readonly revisionId: string },
): Pool {
  let batch: Batch | null = null;
  const post = (worker: JobWorker, message: SearchAsk) => worker.postMessage(message);
  const give = (worker: JobWorker) => {
    if (!batch || batch.next >= batch.candidates.length) return;
    const index = batch.next++;
    post(worker, { kind: 'design', index, changes: batch.candidates[index] ?? [], fields: batch.fields });
  };
  const take = ({ index, design }: Extract<SearchAnswer, { kind: 'design' }>) => {
    if (!batch) return;
    batch.designs[index] = design;
    batch.done++;
    batch.each?.(design, index);
    if (batch.done < batch.candidates.length) return;
    const { resolve, designs } = batch;
    batch = null;
    resolve(designs);
  };
  const workers = Array.from({ length: Math.max(1, count) }, startWorker);
  const end = () => {
    for (const worker of workers) worker.terminate();
  };
  const fail = (message: string) => {
    end();
    batch?.reject(new Error(message));
    batch = null;
  };
  for (const worker of workers) {
    worker.onmessage = ({ data }: MessageEvent<SearchAnswer>) => {
      if (data.kind === 'fault') {
        fail(data.message);
        return;
      }
      take(data);
      give(worker);
    };
    worker.onerror = (event) => fail(event.message || 'the calculation stopped without saying why');
    // nothing but what is asked for is copied over, whatever else the caller keeps beside it
    post(worker, { kind: 'set', project: at.project, revisionId: at.revisionId });
  }
  const evaluate: Pool['evaluate'] = (candidates, fields, each) =>
    candidates.length === 0
      ? Promise.resolve([])
      : new Promise((resolve, reject) => {
          batch = { candidates, fields, designs: [], each, resolve, reject, next: 0, done: 0 };
          for (const worker of workers) give(worker);
        });
  return { evaluate, end };
}
