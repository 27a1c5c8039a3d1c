/** What the campaign and the tests need of a reader of hostile input. */

import type { Recipe } from './mutate.ts';
import type { Outcome } from './sound.ts';

/** A reader under attack. */
export interface Target {
  readonly name: string;
  /** its part of the cases of a campaign, relative to the others */
  readonly share: number;
  /** the input of a case: the same recipe gives the same text */
  make(recipe: Recipe): string;
  /**
   * Reads the input; throws where something that must hold does not.
   * @param deep also what takes long, such as a prediction of what was accepted
   */
  run(input: string, deep: boolean): Outcome | Promise<Outcome>;
}
