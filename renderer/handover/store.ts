/** What the dialog is set to: kept while the window is open, never saved, never undone. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { HandoverValues } from '../../core/index.ts';
import { setView } from '../store/view.ts';

/** Choices of the dialog. */
export interface HandoverState {
  /** kind of file; empty = the first */
  readonly kindId: string;
  /** changed option values by kind */
  readonly values: Readonly<Record<string, HandoverValues>>;
  /** revisions chosen; empty = the active one */
  readonly revisionIds: readonly string[];
}

/** Outside React: read with getState. */
const handoverStore = createStore<HandoverState>(() => ({ kindId: '', values: {}, revisionIds: [] }));

/** Picks a part of the choices inside a view. */
export const useHandover = <T>(pick: (state: HandoverState) => T): T => useStore(handoverStore, pick);

/** Changes some of the choices. */
export const setHandover = (change: Partial<HandoverState>): void => handoverStore.setState(change);

/** Sets one option of a kind. */
export function setOption(kindId: string, option: string, value: string | number | boolean): void {
  handoverStore.setState(({ values }) => ({
    values: { ...values, [kindId]: { ...values[kindId], [option]: value } },
  }));
}

/** Opens the dialog, at a kind of file where one is named, for these revisions, the leading one first; or the active one. */
export function openHandover(kindId?: string, revisionIds: readonly string[] = []): void {
  setHandover({ revisionIds, ...(kindId === undefined ? {} : { kindId }) });
  setView({ dialog: 'handover' });
}
