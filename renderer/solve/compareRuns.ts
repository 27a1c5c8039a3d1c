/** Predictions of several revisions, one after the other in a worker of their own. */

import type { Project } from '../../core/index.ts';
import type { WorkerLike } from './client.ts';
import { startSolveWorker } from './follow.ts';
import type { Answer, Request } from './protocol.ts';

/** One prediction to be made. */
export interface CompareTask {
  readonly revisionId: string;
  readonly fields: Request['fields'];
  readonly withShape: boolean;
}

const ends = (answer: Answer): boolean =>
  answer.kind !== 'progress' && answer.kind !== 'shape' && answer.kind !== 'sameShape';

/** A worker that is started when it is needed, and again after it broke. */
function renewable(startWorker: () => WorkerLike, take: (answer: Answer) => void, runNow: () => number) {
  let worker: WorkerLike | null = null;
  const end = () => {
    worker?.terminate();
    worker = null;
  };
  const post = (request: Request) => {
    if (!worker) {
      worker = startWorker();
      worker.onmessage = (event) => take(event.data);
      worker.onerror = (event) => {
        end();
        const message = event.message || 'the calculation stopped without saying why';
        take({ kind: 'fault', run: runNow(), message });
      };
    }
    worker.postMessage(request);
  };
  return { post, end };
}

/**
 * Runs the tasks in order; a task that `skips` when its turn comes is left out. Every answer is heard with its task; the
 * worker ends after the last, or with the returned function. A worker that breaks is replaced for what is left.
 */
export function runTasks(
  project: Project,
  tasks: readonly CompareTask[],
  hear: (task: CompareTask, answer: Answer) => void,
  done: () => void,
  skips: (task: CompareTask) => boolean = () => false,
  startWorker: () => WorkerLike = startSolveWorker,
): () => void {
  let run = 0;
  const next = () => {
    while (run < tasks.length && skips(tasks[run] as CompareTask)) run++;
    const task = tasks[run];
    run++;
    if (task) {
      worker.post({ run, project, knownShape: null, ...task });
      return;
    }
    worker.end();
    done();
  };
  const take = (answer: Answer) => {
    const task = tasks[run - 1];
    if (task === undefined || answer.run !== run) return;
    hear(task, answer);
    if (ends(answer)) next();
  };
  const worker = renewable(startWorker, take, () => run);
  next();
  return worker.end;
}
