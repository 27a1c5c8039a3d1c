/** Seeded recipes of hostile cases. */

import fc from 'fast-check';
import type { Recipe, Step } from './mutate.ts';

const number = fc.nat(0x3fff_ffff);
const step: fc.Arbitrary<Step> = fc.tuple(number, number, number);

/** Mostly one or two steps: the more there are, the sooner a case is refused for the first of them. */
const steps: fc.Arbitrary<readonly Step[]> = fc.oneof(
  { weight: 5, arbitrary: fc.array(step, { minLength: 1, maxLength: 1 }) },
  { weight: 3, arbitrary: fc.array(step, { minLength: 2, maxLength: 3 }) },
  { weight: 1, arbitrary: fc.array(step, { minLength: 0, maxLength: 12 }) },
);

/** Any recipe. */
export const anyRecipe: fc.Arbitrary<Recipe> = fc.record({ pick: number, steps });

/** The seed of all hostile cases: HOSTILE_SEED, or a fixed one. */
export const hostileSeed = (): number => Number(process.env.HOSTILE_SEED ?? 20261129);

/** Recipes of a seed; the same every time. */
export const recipesOf = (seed: number, count: number): readonly Recipe[] =>
  fc.sample(anyRecipe, { seed, numRuns: count });
