/** Starts the worker that writes hand-over files. */

import type { JobWorker } from '../solve/job.ts';

let make = (): JobWorker =>
  new Worker(new URL('./solve/worker.ts', import.meta.url), { type: 'module', name: 'handover' });

/** A fresh worker. */
export const startHandoverWorker = (): JobWorker => make();

/** Puts another maker of workers in place; for tests. */
export function setHandoverWorker(maker: () => JobWorker): void {
  make = maker;
}
