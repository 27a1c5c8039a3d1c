/** Sweeps: every value of one input, or every pair of two. */

import type { Project } from '../project/schema.ts';
import { fail, type Issue, ok, type Result } from '../result.ts';
import { overlapOf } from './changes.ts';
import type { SearchInput, SweepAxis, SweepPlan } from './types.ts';

/** Most designs of one sweep. */
export const mostDesigns = 10_000;

const clean = (value: number): number => Number(value.toPrecision(12));

/**
 * Values of an axis, ends included.
 * @param axis log only where both ends are above 0
 */
export function axisValues({ from, to, steps, scale }: SweepAxis): readonly number[] {
  return Array.from({ length: steps }, (_, i) => {
    const share = i / (steps - 1);
    return clean(scale === 'log' ? from * (to / from) ** share : from + (to - from) * share);
  });
}

const issue = (
  axis: SweepAxis,
  code: string,
  message: string,
  value: string,
  allowed: string,
  remedy: string,
): Issue => ({
  path: [axis.input],
  code,
  message,
  value,
  allowed,
  remedy,
});

const rangeText = ({ floor, ceiling, unit }: SearchInput): string => {
  const tail = unit === '' ? '' : ` ${unit}`;
  const round = (value: number) => Number(value.toPrecision(6));
  if (!Number.isFinite(floor) && !Number.isFinite(ceiling)) return 'any number';
  if (!Number.isFinite(ceiling)) return `at least ${round(floor)}${tail}`;
  return Number.isFinite(floor) ? `${round(floor)} to ${round(ceiling)}${tail}` : `at most ${round(ceiling)}${tail}`;
};

/** Why an axis cannot be swept, or null. */
function axisIssue(axis: SweepAxis, inputs: readonly SearchInput[]): Issue | null {
  const { from, to, steps, scale } = axis;
  const found = inputs.find(({ id }) => id === axis.input);
  if (!found) {
    const near = inputs.filter(({ id }) => id.toLowerCase().includes(axis.input.toLowerCase().slice(-12))).slice(0, 3);
    const named = (near.length > 0 ? near : inputs.slice(0, 6)).map(({ id }) => id).join(', ');
    return issue(
      axis,
      'input-unknown',
      'The revision has no number of this name that can be varied.',
      axis.input,
      `such as ${named}`,
      'Name a number of the file by its place, or a joint input.',
    );
  }
  if (!Number.isInteger(steps) || steps < 2)
    return issue(
      axis,
      'steps',
      'A sweep needs whole steps.',
      String(steps),
      'a whole number of at least 2',
      'Give how many values there are, both ends included.',
    );
  if (!Number.isFinite(from) || !Number.isFinite(to) || from === to)
    return issue(
      axis,
      'ends',
      'The ends of a sweep have to be two different numbers.',
      `${from} to ${to}`,
      rangeText(found),
      'Move one of the ends.',
    );
  const outside = [from, to].find((end) => end < found.floor || end > found.ceiling);
  if (outside !== undefined)
    return issue(
      axis,
      'out-of-range',
      `${found.label}: this cannot be.`,
      String(outside),
      rangeText(found),
      'Move the end into the range.',
    );
  if (scale === 'log' && !(from > 0 && to > 0))
    return issue(
      axis,
      'log-ends',
      'Even ratios need both ends above zero.',
      `${from} to ${to}`,
      'above 0',
      'Move the ends, or take even steps.',
    );
  return null;
}

/**
 * Lays out a sweep of one or two inputs.
 * @param inputs of searchInputs
 * @returns the plan, or what is wrong with an axis, named by its input
 */
export function sweepPlan(
  project: Project,
  revisionId: string,
  inputs: readonly SearchInput[],
  axes: readonly SweepAxis[],
): Result<SweepPlan> {
  const issues = axes.flatMap((axis) => axisIssue(axis, inputs) ?? []);
  if (issues.length > 0) return fail(...issues);
  const [first, second] = axes;
  if (!first || axes.length > 2)
    return fail({
      path: ['inputs'],
      code: 'axis-count',
      message: 'A sweep varies one or two inputs.',
      value: String(axes.length),
      allowed: '1 or 2',
      remedy: 'Choose one or two.',
    });
  const shared = overlapOf(
    project,
    revisionId,
    axes.map(({ input }) => input),
  );
  if (shared)
    return fail({
      path: [shared[1]],
      code: 'overlap',
      message: `It sets a number that ${shared[0]} sets too.`,
      remedy: 'Choose one of the two.',
    });
  const values = axes.map(axisValues);
  const count = values.reduce((product, { length }) => product * length, 1);
  if (count > mostDesigns)
    return fail(
      issue(
        first,
        'too-many',
        'These are too many designs.',
        String(count),
        `at most ${mostDesigns}`,
        'Take fewer steps.',
      ),
    );
  const [columns = [], rows] = values;
  const column = (value: number) => ({ input: first.input, value });
  const candidates =
    second && rows
      ? rows.flatMap((row) => columns.map((value) => [column(value), { input: second.input, value: row }]))
      : columns.map((value) => [column(value)]);
  return ok({ axes, values, candidates });
}
