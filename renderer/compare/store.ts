/** What is compared with what, and how it is looked at; kept while the window is open, never saved. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Alignment, Project } from '../../core/index.ts';
import { setView } from '../store/view.ts';

/** Parts of the dialog, in their order. */
export const compareTabs = ['numbers', 'described', 'drawings', 'curves', 'machines'] as const;
/** One of them. */
export type CompareTab = (typeof compareTabs)[number];

/** As many at a time; own choice: more lines than these cannot be told apart. */
export const mostCompared = 6;

/** The choices. */
export interface CompareState {
  /** ids in no order; null until something was chosen */
  readonly chosen: readonly string[] | null;
  readonly base: string | null;
  readonly tab: CompareTab;
  readonly alignment: Alignment;
}

/** Outside React: read with getState. */
export const compareStore = createStore<CompareState>(() => ({
  chosen: null,
  base: null,
  tab: 'numbers',
  alignment: 'feed',
}));

/** Picks a part of the choices inside a view. */
export const useCompare = <T>(pick: (state: CompareState) => T): T => useStore(compareStore, pick);

/** Changes some of the choices. */
export const setCompare = (change: Partial<CompareState>): void => compareStore.setState(change);

/** Opens the dialog, with these revisions where some are named; the first is the base. */
export function openCompare(ids?: readonly string[]): void {
  if (ids) setCompare({ chosen: ids, base: ids[0] ?? null });
  setView({ dialog: 'compare' });
}

/** The ids chosen in the project's order: those that still exist; before anything was chosen the latest ones and the shown one. */
export function chosenIds(project: Project, chosen: readonly string[] | null): readonly string[] {
  const all = project.revisions.map(({ id }) => id);
  const kept = all.filter((id) => chosen?.includes(id)).slice(0, mostCompared);
  if (kept.length > 0 || chosen?.length === 0) return kept;
  const latest = new Set(all.slice(-3));
  if (!latest.has(project.activeRevision)) latest.delete(all.slice(-3)[0] ?? '');
  return all.filter((id) => latest.has(id) || id === project.activeRevision);
}

/** The base among the chosen: the one asked for, or else the first. */
export const baseOf = (ids: readonly string[], base: string | null): string | null =>
  base !== null && ids.includes(base) ? base : (ids[0] ?? null);
