/**
 * Which revision is shown, as a choice and not as a change. It is written with the file, but looking at another revision
 * is no unsaved change and no step to undo, and undoing something does not lose it.
 */

import type { Project, Revision } from '../../core/index.ts';

/** Whether two projects hold the same things, whichever of their revisions is shown. Compared by identity of the parts. */
export function sameButShown(a: Project | null, b: Project | null): boolean {
  if (a === b) return true;
  if (!a || !b) return false;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  keys.delete('activeRevision');
  return [...keys].every((key) => Reflect.get(a, key) === Reflect.get(b, key));
}

/** The project showing another of its revisions; the same one where there is no such revision or it is shown already. */
export const withShown = (project: Project, id: string): Project =>
  project.activeRevision === id || !project.revisions.some((revision) => revision.id === id)
    ? project
    : { ...project, activeRevision: id };

const has = (project: Project, id: string): boolean => project.revisions.some((revision) => revision.id === id);

/** What a revision describes, without what is only said about it. */
const described = ({ name: _n, note: _o, date: _d, locked: _l, parent: _p, ...parts }: Revision) =>
  Object.values(parts);

function differs(a: Revision, b: Revision): boolean {
  if (a === b) return false;
  const [left, right] = [described(a), described(b)];
  return left.length !== right.length || left.some((part, i) => part !== right[i]);
}

/** The one revision whose description a step changed; null where it changed none or several. */
function changedOne(before: Project, after: Project): string | null {
  const changed = after.revisions.filter((revision) => {
    const old = before.revisions.find(({ id }) => id === revision.id);
    return old !== undefined && differs(old, revision);
  });
  return changed.length === 1 ? (changed[0]?.id ?? null) : null;
}

/**
 * What is shown after undoing or redoing: a revision that came back with the step, else the one whose description the
 * step changed, so that nothing changes unseen, else the one that was shown.
 */
export function shownAfterStep(before: Project, after: Project): Project {
  if (after === before || !has(before, after.activeRevision)) return after;
  return withShown(after, changedOne(before, after) ?? before.activeRevision);
}
