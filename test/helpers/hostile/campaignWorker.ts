/** Runs cases of the campaign, one after the other, in a thread that can be ended. */

import { parentPort } from 'node:worker_threads';
import type { Recipe } from './mutate.ts';
import { recipesOf } from './recipes.ts';
import { checkPrototypes, type Outcome } from './sound.ts';
import { targets } from './targets.ts';

/** Cases `from` to `to` of a seed, or one case told by its recipe or its input. */
export interface CaseTask {
  readonly target: number;
  readonly seed: number;
  readonly from: number;
  readonly to: number;
  readonly recipe: Recipe | null;
  readonly input: string | null;
}

/** What the thread says before and after each case. */
export type CaseAnswer =
  | { readonly kind: 'begins'; readonly recipe: Recipe; readonly fault: null }
  | {
      readonly kind: 'ends';
      readonly index: number;
      readonly ms: number;
      readonly outcome: Outcome | null;
      readonly fault: string | null;
    };

/** Recipes are drawn by the thousand: the list of a hundred thousand would take longer than a case may. */
const portion = 1000;

const say = (answer: CaseAnswer | 'ready' | 'done'): void => parentPort?.postMessage(answer);

const whyOf = (fault: unknown): string =>
  fault instanceof Error ? (fault.stack ?? fault.message).split('\n').slice(0, 5).join(' ') : String(fault);

/** One case in so many is followed to a prediction; every case that is told alone is. */
const deepEvery = 16;

async function runOne(target: number, index: number, input: string): Promise<void> {
  const begin = process.cpuUsage();
  let outcome: Outcome | null = null;
  let fault: string | null = null;
  try {
    outcome = (await targets[target]?.run(input, index % deepEvery === 0)) ?? null;
    checkPrototypes();
  } catch (thrown) {
    fault = whyOf(thrown);
  }
  const { user, system } = process.cpuUsage(begin);
  say({ kind: 'ends', index, ms: (user + system) / 1000, outcome, fault });
}

let isWarm = false;

/** Has the engine compile what a prediction takes, which is no fault of the first case. */
async function warm(target: number): Promise<void> {
  if (!targets[target]?.name.startsWith('project')) return;
  for (let i = 0; i < 3 && !isWarm; i++) await targets[0]?.run(targets[0].make({ pick: i, steps: [] }), true);
  isWarm = true;
}

async function runAll(task: CaseTask): Promise<void> {
  await warm(task.target);
  say('ready');
  const { target, seed, from, to, recipe, input } = task;
  if (recipe || input !== null) await runOne(target, 0, input ?? targets[target]?.make(recipe as Recipe) ?? '');
  for (let index = from; !recipe && input === null && index < to; ) {
    const block = Math.floor(index / portion);
    const recipes = recipesOf(seed + 7919 * block, portion);
    for (; index < to && Math.floor(index / portion) === block; index++) {
      const each = recipes[index % portion] as Recipe;
      const made = targets[target]?.make(each) ?? '';
      say({ kind: 'begins', recipe: each, fault: null });
      await runOne(target, index, made);
    }
  }
  say('done');
}

parentPort?.on('message', (task: CaseTask) => void runAll(task));
