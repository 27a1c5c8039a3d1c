/** Starts workers of a search, and says how many are worth starting. */

import type { JobWorker } from '../../solve/job.ts';

/** One worker, bundled beside the window. */
export const startSearchWorker = (): JobWorker =>
  new Worker(new URL('./searchWorker.ts', import.meta.url), { type: 'module', name: 'search' });

/** Most workers; more would only wait for memory. */
const most = 4;

/**
 * One fewer than there are processors, so that window and predictions keep one; both of two, since a window that draws
 * nothing needs little and the system shares fairly.
 */
export function workerCount(processors = globalThis.navigator?.hardwareConcurrency ?? 1): number {
  return processors <= 2 ? Math.max(1, processors) : Math.min(most, processors - 1);
}
