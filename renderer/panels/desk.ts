/** What every part of the description needs: the open revision, its place in the project, whether it is locked. */

import type { Project, Revision } from '../../core/index.ts';
import { dropDrafts } from '../store/drafts.ts';
import { type Path, revisionPath } from '../store/path.ts';
import { activeRevision, applyEdit, useProject } from '../store/project.ts';

/** The open revision and where it stands. */
export interface Desk {
  readonly project: Project;
  readonly revision: Revision;
  readonly root: Path;
  readonly locked: boolean;
}

/** The revision being worked on. */
export function useDesk(): Desk {
  const project = useProject();
  const revision = activeRevision(project);
  return { project, revision, root: revisionPath(project, revision.id), locked: revision.locked === true };
}

/** Path of a dotted key below a root. */
export const pathBelow = (root: Path, key: string): Path => [...root, ...key.split('.')];

/** An edit that moves entries of a list: drafts inside it would point at the wrong entry, so they go. */
export function applyListEdit(list: Path, label: string, change: (project: Project) => Project): void {
  dropDrafts(list);
  applyEdit(change, { label });
}
