/** What was typed into fields but could not be taken over, kept until it is put right or withdrawn. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Issue } from '../../core/index.ts';
import { isWithin, type Path, pathKey, valueAt } from './path.ts';

/** Typed text and why it is refused; null while it could still be taken over. */
export interface Draft {
  readonly path: Path;
  readonly text: string;
  /** the number in the field's unit, null where the text is none */
  readonly value: number | null;
  readonly issue: Issue | null;
  /** the unit that a bare number was meant in when it was typed */
  readonly unit?: string;
}

/** Drafts by path key. */
export const draftStore = createStore<Readonly<Record<string, Draft>>>(() => ({}));

/** The draft at a path, if any. */
export const useDraft = (path: Path): Draft | undefined => useStore(draftStore, (drafts) => drafts[pathKey(path)]);

/** Picks something of all drafts. */
export const useDrafts = <T>(pick: (drafts: Readonly<Record<string, Draft>>) => T): T => useStore(draftStore, pick);

/** Keeps typed text. */
export const keepDraft = (draft: Draft): void => draftStore.setState({ [pathKey(draft.path)]: draft });

/** Drops the drafts at and below a path; an empty path drops all. */
export function dropDrafts(below: Path): void {
  const kept = Object.entries(draftStore.getState()).filter(([, draft]) => !isWithin(draft.path, below));
  draftStore.setState(Object.fromEntries(kept), true);
}

/** After undo or redo: drops drafts whose place is gone, and those that were fit to be taken over. */
export const dropStrayDrafts = (project: unknown): void => {
  const kept = Object.entries(draftStore.getState()).filter(
    ([, draft]) => draft.issue !== null && typeof valueAt(project, draft.path) === 'number',
  );
  draftStore.setState(Object.fromEntries(kept), true);
};

/** Before fields are shown in other units: bare numbers that wait get the unit they were typed in. */
export function nameDraftUnits(): void {
  const named = Object.entries(draftStore.getState()).map(([key, draft]) => {
    const bare = draft.unit && draft.value !== null && /\d$/.test(draft.text.trim());
    return [key, bare ? { ...draft, text: `${draft.text.trim()} ${draft.unit}` } : draft];
  });
  draftStore.setState(Object.fromEntries(named), true);
}
