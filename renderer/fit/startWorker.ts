/** Starts the worker that fits. */

import type { JobWorker } from '../solve/job.ts';

let make = (): JobWorker => new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name: 'fit' });

/** A fresh worker. */
export const startFitWorker = (): JobWorker => make();

/** Puts another maker of workers in place; for tests. */
export function setFitWorker(maker: () => JobWorker): void {
  make = maker;
}
