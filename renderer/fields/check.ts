/** Whether an edit would leave a project that can be saved and opened again. */

import { checkProject, type Issue, type Project } from '../../core/index.ts';
import { type Path, pathKey, valueAt, withValue } from '../store/path.ts';

/** One value to be put at one place. */
export interface Change {
  readonly path: Path;
  readonly value: unknown;
}

/** The project with all changes made. */
export const withChanges = (project: Project, changes: readonly Change[]): Project =>
  changes.reduce((changed, { path, value }) => withValue(changed, path, value), project);

/** What a doubt range allows of the value, low or high at `path`: its own faults speak of the other end. */
function doubtAround(project: Project, path: Path): { allowed?: string } {
  const { value, low, high } = Object(valueAt(project, path.slice(0, -1))) as Record<string, unknown>;
  const end = path.at(-1);
  const least = end === 'value' ? low : end === 'high' ? value : undefined;
  const most = end === 'value' ? high : end === 'low' ? value : undefined;
  const words = [least === undefined ? '' : `at least ${least}`, most === undefined ? '' : `at most ${most}`];
  return { allowed: words.filter((word) => word !== '').join(', ') };
}

/** Why the changes are refused, told at the place of the first of them; null where they are fine. */
export function checkChanges(project: Project, changes: readonly Change[]): Issue | null {
  const checked = checkProject(withChanges(project, changes));
  const path = changes[0]?.path ?? [];
  if (checked.ok) return null;
  if (checked.issues[0]?.code === 'range-order') return { ...checked.issues[0], path, ...doubtAround(project, path) };
  const here = checked.issues.find((issue) => pathKey(issue.path) === pathKey(path));
  return { ...(here ?? (checked.issues[0] as Issue)), path };
}
