/** A short run over one reader, for the tests of every day. */

import fc from 'fast-check';
import { anyRecipe, hostileSeed } from './recipes.ts';
import { checkPrototypes } from './sound.ts';
import type { Target } from './targetTypes.ts';

/**
 * Fails with the recipe, made small, of the first case whose answer is unsound.
 * @param numRuns cases
 * @param deepEvery one in so many is followed to a prediction
 */
export async function assertTarget(target: Target, numRuns: number, deepEvery: number): Promise<void> {
  let count = 0;
  const outcomes = { accepted: 0, refused: 0 };
  for (let pick = 0; pick < 4; pick++) outcomes[await target.run(target.make({ pick, steps: [] }), false)]++;
  const property = fc.asyncProperty(anyRecipe, async (recipe) => {
    outcomes[await target.run(target.make(recipe), count++ % deepEvery === 0)]++;
    checkPrototypes();
  });
  await fc.assert(property, { seed: hostileSeed(), numRuns });
  // a reader that refuses or accepts all would make this test worth nothing
  if (outcomes.refused === 0 || outcomes.accepted === 0) throw new Error(`${target.name}: ${JSON.stringify(outcomes)}`);
}

/** Computing time of what is done, ms; waiting for other programs does not count. */
export async function busyMs(act: () => unknown): Promise<number> {
  const begin = process.cpuUsage();
  await act();
  const { user, system } = process.cpuUsage(begin);
  return (user + system) / 1000;
}
