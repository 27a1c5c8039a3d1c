/** Makes a failing case smaller while it goes on failing. */

import type { Recipe, Step } from './mutate.ts';

/** Why a case fails, or null; told by its recipe, or by its input where that is not null. */
type Why = (recipe: Recipe | null, input: string | null) => Promise<string | null>;

/** Most attempts on the input: each may take as long as a case may. */
const mostTries = 60;

/** Fewer steps of a recipe, one taken away at a time. */
async function fewerSteps(recipe: Recipe, why: Why): Promise<readonly Step[]> {
  let { steps } = recipe;
  for (let i = steps.length - 1; i >= 0 && steps.length > 1; i--) {
    const less = steps.filter((_, k) => k !== i);
    if ((await why({ ...recipe, steps: less }, null)) !== null) steps = less;
  }
  return steps;
}

/** A shorter input, by leaving out halves, quarters and so on. */
async function shorter(input: string, why: Why): Promise<string> {
  let text = input;
  let tries = 0;
  for (let size = text.length >> 1; size > 0 && tries < mostTries; size >>= 1) {
    for (let at = 0; at < text.length && tries < mostTries; ) {
      tries++;
      const less = text.slice(0, at) + text.slice(at + size);
      if ((await why(null, less)) !== null) text = less;
      else at += size;
    }
  }
  return text;
}

/** The steps that are needed, and the shortest input found that still fails. */
export async function smaller(
  recipe: Recipe,
  make: (recipe: Recipe) => string,
  why: Why,
): Promise<{ readonly steps: readonly Step[]; readonly input: string }> {
  const steps = await fewerSteps(recipe, why);
  return { steps, input: await shorter(make({ ...recipe, steps }), why) };
}
