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

const ends = (answer: Answer): boolean => answer.kind !== 'progress' && answer.kind !== 'shape';

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
  let worker: WorkerLike | null = null;
  let run = 0;
  const end = () => {
    worker?.terminate();
    worker = null;
  };
  const started = (): WorkerLike => {
    const made = startWorker();
    made.onmessage = (event) => take(event.data);
    made.onerror = (event) => {
      end();
      take({ kind: 'fault', run, message: event.message || 'the calculation stopped without saying why' });
    };
    return made;
  };
  const next = () => {
    while (run < tasks.length && skips(tasks[run] as CompareTask)) run++;
    const task = tasks[run];
    run++;
    if (task === undefined) {
      end();
      done();
      return;
    }
    worker ??= started();
    worker.postMessage({ run, project, ...task } satisfies Request);
  };
  const take = (answer: Answer) => {
    const task = tasks[run - 1];
    if (task === undefined || answer.run !== run) return;
    hear(task, answer);
    if (ends(answer)) next();
  };
  next();
  return end;
}
