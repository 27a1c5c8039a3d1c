/** Whether an edit would leave a project that can be saved and opened again. */

import { checkProject, type Issue, type Project } from '../../core/index.ts';
import { type Path, pathKey, withValue } from '../store/path.ts';

/** One value to be put at one place. */
export interface Change {
  readonly path: Path;
  readonly value: unknown;
}

/** The project with all changes made. */
export const withChanges = (project: Project, changes: readonly Change[]): Project =>
  changes.reduce((changed, { path, value }) => withValue(changed, path, value), project);

/** Why the changes are refused, told at the place of the first of them; null where they are fine. */
export function checkChanges(project: Project, changes: readonly Change[]): Issue | null {
  const checked = checkProject(withChanges(project, changes));
  const path = changes[0]?.path ?? [];
  if (checked.ok) return null;
  const here = checked.issues.find((issue) => pathKey(issue.path) === pathKey(path));
  return { ...(here ?? (checked.issues[0] as Issue)), path };
}
