/** Edits of the list of revisions: branch, rename, note, date, lock, delete; and their descent. Pure. */

import { produce } from 'immer';
import type { Project, Revision } from '../../core/index.ts';

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

/** Sets the date of a revision (year-month-day), or takes it away where the text is empty. */
export const dateRevision = (id: string, date: string) =>
  produce<Project>((draft) => {
    const revision = draft.revisions.find((candidate) => candidate.id === id);
    if (!revision) return;
    if (date === '') delete revision.date;
    else revision.date = date;
  });

/** Whether a text is a day of the calendar, written year-month-day. */
export function isDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const day = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}

/** A revision's place among those it came from. */
export interface Descent {
  readonly id: string;
  /** null where it begins a line */
  readonly parent: string | null;
  /** how many revisions it came through */
  readonly depth: number;
  readonly children: readonly string[];
}

/** The revisions in the order of their descent, branches right after what they came from. */
export function descentOf(revisions: readonly Pick<Revision, 'id' | 'parent'>[]): Descent[] {
  const ids = new Set(revisions.map(({ id }) => id));
  const parentOf = ({ id, parent }: Pick<Revision, 'id' | 'parent'>) =>
    parent && parent !== id && ids.has(parent) ? parent : null;
  const found: Descent[] = [];
  const placed = new Set<string>();
  const place = (revision: Pick<Revision, 'id' | 'parent'>, depth: number): void => {
    if (placed.has(revision.id)) return;
    placed.add(revision.id);
    const children = revisions.filter((other) => parentOf(other) === revision.id);
    found.push({ id: revision.id, parent: parentOf(revision), depth, children: children.map(({ id }) => id) });
    for (const child of children) place(child, depth + 1);
  };
  for (const revision of revisions) if (parentOf(revision) === null) place(revision, 0);
  // a ring of parents, which a file may not hold, still shows every revision
  for (const revision of revisions) place(revision, 0);
  return found;
}

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
