/** Predicts revisions on as many threads as there are processors, or on this one. */

import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { createFieldCache, type Prediction } from '../../core/index.ts';
import { type PredictTask, predictTask } from './predictTask.ts';

/**
 * Predictions in the order of the tasks.
 * @param tasks validated revisions
 * @param workerPath the thread's bundle; null, or no file: all are predicted on this thread
 * @param processors most threads that are started
 */
export async function predictAll(
  tasks: readonly PredictTask[],
  workerPath: string | null,
  processors = availableParallelism(),
): Promise<readonly Prediction[]> {
  const threads = Math.min(tasks.length, processors);
  // Formulas answer sooner than a thread starts.
  const worth = threads > 1 && tasks.some(({ fields }) => fields === 'solved');
  if (!worth || workerPath === null || !existsSync(workerPath)) {
    const cache = createFieldCache();
    return tasks.map((task) => predictTask(task, cache));
  }
  const results: Prediction[] = [];
  const left = tasks.map((task, index) => ({ task, index }));
  const work = async (): Promise<void> => {
    const worker = new Worker(workerPath);
    try {
      for (let next = left.shift(); next; next = left.shift()) results[next.index] = await ask(worker, next.task);
    } finally {
      await worker.terminate();
    }
  };
  await Promise.all(Array.from({ length: threads }, work));
  return results;
}

/** One answer of a thread; a thread that fails or ends fails the task. */
function ask(worker: Worker, task: PredictTask): Promise<Prediction> {
  return new Promise((resolve, reject) => {
    const ended = (code: number) => reject(new Error(`A thread ended early with status ${code}.`));
    worker.once('error', reject);
    worker.once('exit', ended);
    worker.once('message', (prediction: Prediction) => {
      worker.off('error', reject);
      worker.off('exit', ended);
      resolve(prediction);
    });
    worker.postMessage(task);
  });
}

/** Ends a table of estimates. */
export const solvedHint = 'Add --solved to look into corners, tip and nozzle: dead spots, ages, and what they change.';
