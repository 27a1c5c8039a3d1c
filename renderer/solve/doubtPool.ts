/** Shares the samples of a study of doubt among workers and sums up on the way. */

import type { DoubtSummary, Project, SampleResult } from '../../core/index.ts';
import type { DoubtAnswer, DoubtAsk } from './doubtProtocol.ts';
import type { JobWorker } from './job.ts';

/** A study as it is asked for. */
export interface StudyAsk {
  readonly project: Project;
  readonly revisionId: string;
  readonly samples: number;
  readonly seed: number;
}

/** What is heard of it. */
export type StudyNews =
  | { readonly kind: 'progress'; readonly done: number }
  | { readonly kind: 'summary'; readonly summary: DoubtSummary }
  | { readonly kind: 'done' }
  | { readonly kind: 'fault'; readonly message: string };

/** Samples between two summaries. */
const summedEvery = 8;

/**
 * Runs a study. The nominal values come first, then the samples, each worker taking the next one when it is free; the
 * answer does not depend on which worker ran what.
 * @returns the function that stops it
 */
export function runStudy(
  startWorker: () => JobWorker,
  count: number,
  ask: StudyAsk,
  hear: (news: StudyNews) => void,
): () => void {
  const workers = Array.from({ length: Math.max(1, count) }, startWorker);
  const results: SampleResult[] = [];
  let nominal: SampleResult | null = null;
  let next = -1;
  const end = () => {
    for (const worker of workers) worker.terminate();
  };
  const fail = (message: string) => {
    end();
    hear({ kind: 'fault', message });
  };
  const post = (worker: JobWorker, message: DoubtAsk) => worker.postMessage(message);
  const take = (worker: JobWorker) => {
    if (next < ask.samples) post(worker, { kind: 'run', index: next++ });
  };
  const took = (worker: JobWorker, result: SampleResult) => {
    if (result.index < 0) nominal = result;
    else results.push(result);
    hear({ kind: 'progress', done: results.length });
    const all = results.length === ask.samples;
    if (nominal && (all || (result.index >= 0 && results.length % summedEvery === 0)))
      post(worker, { kind: 'sum', nominal, results });
    take(worker);
  };
  for (const worker of workers) {
    worker.onmessage = ({ data }: MessageEvent<DoubtAnswer>) => {
      if (data.kind === 'fault') fail(data.message);
      else if (data.kind === 'sample') took(worker, data.result);
      else if (data.kind === 'summary') {
        hear({ kind: 'summary', summary: data.summary });
        if (data.summary.done < ask.samples) return;
        end();
        hear({ kind: 'done' });
      }
    };
    worker.onerror = (event) => fail(event.message || 'the calculation stopped without saying why');
    post(worker, { kind: 'draw', ...ask });
    take(worker);
  }
  return end;
}
