/** A design with some of its inputs given other values. */

import { replacedAt, resolveField, valueAt } from '../doubt/fieldPath.ts';
import { isObject } from '../project/looseView.ts';
import type { Project, Revision } from '../project/schema.ts';
import { jointInput, jointInputs } from './joint.ts';
import type { SearchChange } from './types.ts';

const orderOf = (id: string): number => {
  const at = jointInputs.findIndex((joint) => joint.id === id);
  return at < 0 ? jointInputs.length : at;
};

/** A sourced value stands for itself: the range that was stated around the old one would be checked against it. */
function withoutRange(project: Project, path: readonly (string | number)[]): Project {
  const place = path.slice(0, -1);
  if (path.at(-1) !== 'value' || !isObject(valueAt(project, place))) return project;
  const { low: _low, high: _high, ...rest } = valueAt(project, place) as Record<string, unknown>;
  return replacedAt(project, place, rest);
}

function withOne(project: Project, base: Revision | undefined, { input, value }: SearchChange): Project {
  if (!base) return project;
  const revisionId = base.id;
  const joint = jointInput(input);
  if (joint) {
    const change = (revision: Revision) => (revision.id === revisionId ? joint.write(revision, value, base) : revision);
    return { ...project, revisions: project.revisions.map(change) };
  }
  const path = resolveField(project, revisionId, input);
  return path === null ? project : replacedAt(withoutRange(project, path), path, value);
}

/**
 * The project with changes made to one revision, or to the running, print or granulate that it uses. Joint inputs come
 * first, in their own order, so that the order of the changes does not matter.
 * @param changes units of the file; a place that does not exist is passed over
 */
export function withChanges(project: Project, revisionId: string, changes: readonly SearchChange[]): Project {
  const ordered = [...changes].sort((a, b) => orderOf(a.input) - orderOf(b.input));
  const base = project.revisions.find(({ id }) => id === revisionId);
  return ordered.reduce((current, change) => withOne(current, base, change), project);
}

/** Places that an input writes, as text. */
function placesOf(project: Project, revisionId: string, input: string): readonly string[] {
  const revision = project.revisions.find(({ id }) => id === revisionId);
  const joint = jointInput(input);
  return joint && revision ? joint.touches(revision) : [input];
}

/** Places that what an input writes depends on; only an input of a single number may not set them beside it. */
function readsOf(project: Project, revisionId: string, input: string): readonly string[] {
  const revision = project.revisions.find(({ id }) => id === revisionId);
  return (revision && jointInput(input)?.reads?.(revision)) ?? [];
}

/**
 * Two inputs that cannot be varied together: both write one number, or one writes by itself what the other rests on.
 * @returns their ids, the earlier first, or null where all are apart
 */
export function overlapOf(
  project: Project,
  revisionId: string,
  inputs: readonly string[],
): readonly [string, string] | null {
  const meet = (a: string, b: string): boolean => {
    const places = placesOf(project, revisionId, b);
    const held = placesOf(project, revisionId, a);
    const rests = (reader: string, writer: string) =>
      jointInput(writer) === undefined && readsOf(project, revisionId, reader).includes(writer);
    return places.some((place) => held.includes(place)) || rests(a, b) || rests(b, a);
  };
  for (const [i, later] of inputs.entries()) {
    const earlier = inputs.slice(0, i).find((one) => meet(one, later));
    if (earlier !== undefined) return [earlier, later];
  }
  return null;
}
