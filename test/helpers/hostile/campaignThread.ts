/** The thread that reads hostile cases, ended and begun anew where one takes too long or too much memory. */

import { Worker } from 'node:worker_threads';
import type { CaseAnswer, CaseTask } from './campaignWorker.ts';
import type { Recipe } from './mutate.ts';

/**
 * Longest computing time of a case, ms (a machine that others use counts for nothing), and largest heap, MB: with what
 * the process takes besides, and the mutations made in the same thread, it stays below 500 MB.
 */
const [longestMs, largestMb] = [2000, 280];

/** FUZZ_SECONDS: after so long the record is closed with what was done. */
const closesAt = performance.now() + 1000 * Number(process.env.FUZZ_SECONDS ?? Number.POSITIVE_INFINITY);

/** Why a run ended early without a fault. */
export const outOfTime = 'out of time';

/** Computing time of this process so far, ms: the thread's, since all others wait for it. */
const busyMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

let thread: Worker | null = null;

const begin = (): Worker =>
  new Worker(new URL('./campaignWorker.ts', import.meta.url), {
    execArgv: ['--import', new URL('../nativeCore.mjs', import.meta.url).href],
    resourceLimits: { maxOldGenerationSizeMb: largestMb, maxYoungGenerationSizeMb: 16 },
  });

/** Ends the thread. */
export async function endThread(): Promise<void> {
  const running = thread;
  thread = null;
  await running?.terminate();
}

/**
 * Has the thread run cases, and hears each answer.
 * @returns why it ended before the last case, or null
 */
export function ask(task: CaseTask, hear: (answer: CaseAnswer) => void): Promise<string | null> {
  return new Promise((resolve) => {
    thread ??= begin();
    const worker = thread;
    let begun = Number.POSITIVE_INFINITY;
    const timer = setInterval(() => {
      if (performance.now() > closesAt) end(outOfTime);
      else if (busyMs() - begun > longestMs) end(`took longer than ${longestMs} ms`);
    }, 50);
    const end = (why: string | null): void => {
      clearInterval(timer);
      // each by itself: taking all listeners off would take off what hands the messages on
      worker.off('error', onError).off('message', onMessage);
      if (why !== null) void endThread();
      resolve(why);
    };
    const onError = (error: Error): void => end(`the thread died: ${error.message}`);
    const onMessage = (answer: CaseAnswer | 'ready' | 'done'): void => {
      const begins = answer === 'ready' || (answer !== 'done' && answer.kind === 'begins');
      begun = begins ? busyMs() : Number.POSITIVE_INFINITY;
      if (answer === 'done') end(null);
      else if (answer !== 'ready') hear(answer);
    };
    worker.on('error', onError).on('message', onMessage);
    worker.postMessage(task);
  });
}

/** Why a case fails that is told by its recipe or its input, or null. */
export async function whyOf(target: number, recipe: Recipe | null, input: string | null): Promise<string | null> {
  let told: string | null = null;
  const died = await ask({ target, seed: 0, from: 0, to: 1, recipe, input }, ({ fault }) => {
    told = fault;
  });
  return died ?? told;
}
