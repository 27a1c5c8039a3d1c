/** A thread that evaluates one design of a sweep after another, with solved fields of its own. */

import { parentPort, workerData } from 'node:worker_threads';
import { createFieldCache, evaluateCandidate } from '../../core/index.ts';
import type { SweepAnswer, SweepAsk, SweepJob } from './sweepAll.ts';

const { project, revisionId, fields } = workerData as SweepJob;
const cache = createFieldCache();

parentPort?.on('message', ({ index, changes }: SweepAsk) => {
  const answer: SweepAnswer = { index, design: evaluateCandidate(project, revisionId, changes, { fields }, cache) };
  parentPort?.postMessage(answer);
});
