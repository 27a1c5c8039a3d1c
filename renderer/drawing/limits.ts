/** How far a dimension can go before the machine can no longer be made, and why. */

import { fieldRange, type Issue, type Project, revisionIssues } from '../../core/index.ts';
import { withChanges } from '../fields/check.ts';
import { pathKey, revisionPath } from '../store/path.ts';
import { activeRevision } from '../store/project.ts';
import { clean, type Dimension, type Manners, type Range } from './types.ts';

/** Least and greatest value, and what stands in the way beyond. */
export interface Limits extends Range {
  readonly below: Issue | null;
  readonly above: Issue | null;
}

const issuesOf = (project: Project): readonly Issue[] => {
  const revision = activeRevision(project);
  return revisionIssues(revision, revisionPath(project, revision.id));
};

const nameOf = (issue: Issue): string => `${issue.code} ${pathKey(issue.path)}`;

/** Says of a value what new fault it would bring; faults that are there already are not blamed on it. */
function judgeOf(project: Project, dimension: Dimension, manners: Manners): (value: number) => Issue | null {
  const known = new Set(issuesOf(project).map(nameOf));
  return (value) => {
    const found = issuesOf(withChanges(project, dimension.changes(value, manners)));
    return found.find((issue) => !known.has(nameOf(issue))) ?? null;
  };
}

/** Closer than this the edge need not be known, in the value's unit. */
const fineness = 1e-4;

/** The farthest value from `good` towards `far` that is fine, rounded to something sayable where that is fine too. */
function edge(
  judge: (value: number) => Issue | null,
  start: number,
  far: number,
): { value: number; why: Issue | null } {
  const first = judge(far);
  // the end of the format's range: what lies beyond says so itself
  if (!first) return { value: far, why: judge(far + Math.sign(far - start)) };
  let [good, bad, why] = [start, far, first];
  while (Math.abs(bad - good) > fineness) {
    const middle = (good + bad) / 2;
    const issue = judge(middle);
    if (issue) [bad, why] = [middle, issue];
    else good = middle;
  }
  const short = far > start ? Math.floor(good * 100) / 100 : Math.ceil(good * 100) / 100;
  const near = [Number(((good + bad) / 2).toFixed(2)), Number(((good + bad) / 2).toFixed(3)), short];
  const said = near.find((value) => Math.abs(value - good) <= 0.01 && !judge(value));
  return { value: said ?? clean(good), why };
}

/** A range of the schema that has no end on one side is searched this far. */
const far = 1e4;

/**
 * Limits of a dimension as the machine stands.
 * @param project the state the pull starts from
 */
export function limitsOf(project: Project, dimension: Dimension, manners: Manners): Limits {
  const range = fieldRange(project, dimension.path);
  const { min, max } = dimension.range ?? { min: range?.least ?? -far, max: range?.most ?? far };
  const judge = judgeOf(project, dimension, manners);
  const low = edge(judge, dimension.value, Math.min(min, dimension.value));
  const high = edge(judge, dimension.value, Math.max(max, dimension.value));
  return { min: low.value, max: high.value, below: low.why, above: high.why };
}

/** A value kept within limits, and what held it back. */
export function within(limits: Limits, value: number): { readonly value: number; readonly why: Issue | null } {
  if (value < limits.min) return { value: limits.min, why: limits.below };
  if (value > limits.max) return { value: limits.max, why: limits.above };
  return { value, why: null };
}
