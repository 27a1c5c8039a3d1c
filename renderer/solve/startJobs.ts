/** The workers of studies, bundled beside the window. */

import type { JobWorker } from './job.ts';

/** Colour studies. */
export const startColourWorker = (): JobWorker =>
  new Worker(new URL('./colourWorker.ts', import.meta.url), { type: 'module', name: 'colour' });

/** Studies of doubt. */
export const startDoubtWorker = (): JobWorker =>
  new Worker(new URL('./doubtWorker.ts', import.meta.url), { type: 'module', name: 'doubt' });

/** Placing granules for the picture. */
export const startGrainsWorker = (): JobWorker =>
  new Worker(new URL('./grainsWorker.ts', import.meta.url), { type: 'module', name: 'grains' });
