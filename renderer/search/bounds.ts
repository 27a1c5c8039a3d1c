/** What may be typed for the ends of an input, and what is begun with. */

import { overlapOf, type Project, type SearchInput } from '../../core/index.ts';
import { searchText } from '../strings/search.ts';
import { shownValue } from './shown.ts';
import type { AxisSetup, GoalInputSetup } from './store.ts';

/** Refuses what the file format or the machine cannot have. */
export const withinLimits =
  ({ floor, ceiling, unit }: SearchInput) =>
  (value: number): string | null => {
    if (value >= floor && value <= ceiling) return null;
    if (!Number.isFinite(ceiling)) return searchText.above(shownValue(floor, unit));
    return searchText.range(shownValue(floor, unit), shownValue(ceiling, unit));
  };

/** A first axis: the proposed range in 21 values, or every whole one of a few. */
export function firstAxis({ id, low, high, step }: SearchInput, many: boolean): AxisSetup {
  const usual = many ? 21 : 15;
  const whole = Math.round((high - low) / step) + 1;
  return { input: id, from: low, to: high, steps: Math.max(2, Math.min(usual, whole)), scale: 'linear' };
}

/** A first goal input: the proposed range. */
export const firstGoalInput = ({ id, low, high, step }: SearchInput): GoalInputSetup => ({
  input: id,
  low,
  high,
  step,
});

/** Refuses what is not whole or outside. */
export const wholeWithin = (least: number, most: number, refusal: string) => (value: number) =>
  Number.isInteger(value) && value >= least && value <= most ? null : refusal;

/** Why an input cannot be varied beside others: it writes a number that one of them writes. Null where it can. */
export function overlapping(
  project: Project,
  revisionId: string,
  inputs: readonly SearchInput[],
  chosen: readonly string[],
  id: string,
): string | null {
  const shared = overlapOf(project, revisionId, [...chosen, id]);
  if (shared === null) return null;
  const other = inputs.find((input) => input.id === shared[0]);
  return searchText.pick.overlap(other?.label ?? shared[0]);
}
