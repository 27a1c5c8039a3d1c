/** A thread that predicts one revision after another, with fields of its own; it shares nothing with other threads. */

import { parentPort } from 'node:worker_threads';
import { createFieldCache } from '../../core/index.ts';
import { type PredictTask, predictTask } from './predictTask.ts';

const cache = createFieldCache();

parentPort?.on('message', (task: PredictTask) => parentPort?.postMessage(predictTask(task, cache)));
