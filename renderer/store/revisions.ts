/** Edits of the list of revisions: choose, branch, rename, note, lock, delete. Pure. */

import { produce } from 'immer';
import type { Project } from '../../core/index.ts';

/** Makes a revision the one being worked on. */
export const chooseRevision = (id: string) =>
  produce<Project>((draft) => {
    if (draft.revisions.some((revision) => revision.id === id)) draft.activeRevision = id;
  });

/** The next free id: A, B … Z, then R27, R28 … */
export function freeId(project: Project): string {
  const taken = new Set(project.revisions.map((revision) => revision.id));
  for (let n = project.revisions.length; ; n++) {
    const id = n < 26 ? String.fromCharCode(65 + n) : `R${n + 1}`;
    if (!taken.has(id)) return id;
  }
}

/** Copies a revision under a new id and name, unlocked, and makes it active. */
export const branchRevision = (fromId: string, name: string, date: string) =>
  produce<Project>((draft) => {
    const from = draft.revisions.find((revision) => revision.id === fromId);
    if (!from) return;
    const id = freeId(draft);
    const copy = structuredClone(JSON.parse(JSON.stringify(from))) as typeof from;
    draft.revisions.push({ ...copy, id, name, date, locked: false, parent: fromId, note: '' });
    draft.activeRevision = id;
  });

/** Renames a revision. */
export const renameRevision = (id: string, name: string) =>
  produce<Project>((draft) => {
    const revision = draft.revisions.find((candidate) => candidate.id === id);
    if (revision) revision.name = name;
  });

/** Replaces the note of a revision. */
export const noteRevision = (id: string, note: string) =>
  produce<Project>((draft) => {
    const revision = draft.revisions.find((candidate) => candidate.id === id);
    if (revision) revision.note = note;
  });

/** Locks a revision against edits, or opens it again. */
export const lockRevision = (id: string, locked: boolean) =>
  produce<Project>((draft) => {
    const revision = draft.revisions.find((candidate) => candidate.id === id);
    if (revision) revision.locked = locked;
  });

/** Why a revision cannot be deleted: it is the last one, locked, or bench trials refer to it; null where it can. */
export function keptBecause(project: Project, id: string): 'last' | 'locked' | 'trials' | null {
  if (project.revisions.length < 2) return 'last';
  if (project.revisions.some((revision) => revision.id === id && revision.locked)) return 'locked';
  return project.benchLog.some((trial) => trial.revisionId === id) ? 'trials' : null;
}

/** Deletes a revision unless it must be kept. Its branches then hang from its parent. */
export const deleteRevision = (id: string) =>
  produce<Project>((draft) => {
    const index = draft.revisions.findIndex((revision) => revision.id === id);
    const gone = draft.revisions[index];
    if (!gone || keptBecause(draft, id)) return;
    draft.revisions.splice(index, 1);
    for (const revision of draft.revisions) if (revision.parent === id) revision.parent = gone.parent ?? null;
    if (draft.activeRevision === id) {
      draft.activeRevision = (draft.revisions[index - 1] ?? draft.revisions[0])?.id ?? '';
    }
  });
