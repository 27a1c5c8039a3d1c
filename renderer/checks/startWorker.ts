/** Starts the worker that runs the checks. */

import type { JobWorker } from '../solve/job.ts';

/** A new one. */
export const startChecks = (): JobWorker =>
  new Worker(new URL('./solve/worker.ts', import.meta.url), { type: 'module', name: 'checks' });
