/** Sweeps: every value of one input, or every pair of two. */

import type { Project } from '../project/schema.ts';
import { fail, type Issue, ok, type Result } from '../result.ts';
import { overlapOf } from './changes.ts';
import { builtValue } from './joint.ts';
import type { SearchInput, SweepAxis, SweepPlan } from './types.ts';

/** Most designs of one sweep. */
const mostDesigns = 10_000;

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

/** What is wrong with an axis: code, message, found, allowed, remedy. */
type Fault = readonly [code: string, message: string, value: string, allowed: string, remedy: string];

const issue = (axis: SweepAxis, [code, message, value, allowed, remedy]: Fault): Issue => ({
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

function unknownInput(axis: SweepAxis, inputs: readonly SearchInput[]): Fault {
  const near = inputs.filter(({ id }) => id.toLowerCase().includes(axis.input.toLowerCase().slice(-12))).slice(0, 3);
  const named = (near.length > 0 ? near : inputs.slice(0, 6)).map(({ id }) => id).join(', ');
  const message = 'The revision has no number of this name that can be varied.';
  const remedy = 'Name a number of the file by its place, or a joint input.';
  return ['input-unknown', message, axis.input, `such as ${named}`, remedy];
}

function stepsFault({ steps }: SweepAxis): Fault | null {
  if (Number.isInteger(steps) && steps >= 2 && steps <= mostDesigns) return null;
  const allowed = `a whole number from 2 to ${mostDesigns}`;
  const remedy = 'Give how many values there are, both ends included.';
  return ['steps', 'A sweep needs whole steps, and not too many.', String(steps), allowed, remedy];
}

function endsFault({ from, to, scale }: SweepAxis, input: SearchInput): Fault | null {
  const both = `${from} to ${to}`;
  if (!Number.isFinite(from) || !Number.isFinite(to) || from === to) {
    const message = 'The ends of a sweep have to be two different numbers.';
    return ['ends', message, both, rangeText(input), 'Move one of the ends.'];
  }
  const outside = [from, to].find((end) => end < input.floor || end > input.ceiling);
  if (outside !== undefined) {
    const message = `${input.label}: this cannot be.`;
    return ['out-of-range', message, String(outside), rangeText(input), 'Move the end into the range.'];
  }
  if (scale === 'linear' || (from > 0 && to > 0)) return null;
  const message = 'Even ratios need both ends above zero.';
  return ['log-ends', message, both, 'above 0', 'Move the ends, or take even steps.'];
}

/** Why an axis cannot be swept, or null. */
function axisIssue(axis: SweepAxis, inputs: readonly SearchInput[]): Issue | null {
  const found = inputs.find(({ id }) => id === axis.input);
  const fault = found ? (stepsFault(axis) ?? endsFault(axis, found)) : unknownInput(axis, inputs);
  return fault && issue(axis, fault);
}

/** Why axes that are each in order cannot be swept together, or null. */
function togetherIssue(project: Project, revisionId: string, axes: readonly SweepAxis[]): Issue | null {
  const [first] = axes;
  if (!first || axes.length > 2)
    return {
      path: ['inputs'],
      code: 'axis-count',
      message: 'A sweep varies one or two inputs.',
      value: String(axes.length),
      allowed: '1 or 2',
      remedy: 'Choose one or two.',
    };
  const inputs = axes.map(({ input }) => input);
  const shared = overlapOf(project, revisionId, inputs);
  if (shared)
    return {
      path: [shared[1]],
      code: 'overlap',
      message: `It and ${shared[0]} set one number, or one of them rests on what the other sets.`,
      remedy: 'Choose one of the two.',
    };
  // counted before any list is made, which could be longer than memory
  const count = axes.reduce((product, { steps }) => product * steps, 1);
  if (count <= mostDesigns) return null;
  const [message, remedy] = ['These are too many designs.', 'Take fewer steps.'];
  return issue(first, ['too-many', message, String(count), `at most ${mostDesigns}`, remedy]);
}

/**
 * Lays out a sweep of one or two inputs.
 * @param inputs of searchInputs
 * @returns the plan with the values that are built, or what is wrong with an axis, named by its input
 */
export function sweepPlan(
  project: Project,
  revisionId: string,
  inputs: readonly SearchInput[],
  axes: readonly SweepAxis[],
): Result<SweepPlan> {
  const issues = axes.flatMap((axis) => axisIssue(axis, inputs) ?? []);
  if (issues.length > 0) return fail(...issues);
  const issueOfAll = togetherIssue(project, revisionId, axes);
  if (issueOfAll) return fail(issueOfAll);
  const revision = project.revisions.find(({ id }) => id === revisionId);
  // what is tabled is what is built; two that are built alike are one design
  const built = ({ input }: SweepAxis, value: number) => (revision ? builtValue(revision, input, value) : value);
  const values = axes.map((axis) => [...new Set(axisValues(axis).map((value) => built(axis, value)))]);
  const [first, second] = axes;
  const [columns = [], rows] = values;
  const column = (value: number) => ({ input: first?.input ?? '', value });
  const candidates =
    second && rows
      ? rows.flatMap((row) => columns.map((value) => [column(value), { input: second.input, value: row }]))
      : columns.map((value) => [column(value)]);
  return ok({ axes, values, candidates });
}
