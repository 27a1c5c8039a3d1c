/** Faults of a file that could not be opened, kept while their list is looked at. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import { faultyFileIssues, type Issue } from '../../core/index.ts';
import { setView } from '../store/view.ts';

/** A file and what is wrong with it. */
export interface RefusedFile {
  readonly name: string;
  readonly issues: readonly Issue[];
}

/** The latest refused file, or null. */
export const faultsStore = createStore<{ readonly refused: RefusedFile | null }>(() => ({ refused: null }));

/** Picks it inside a view. */
export const useRefused = (): RefusedFile | null => useStore(faultsStore, (state) => state.refused);

/** Shows what is wrong with a file that nothing could be done with. */
export function showFaults(name: string, issues: readonly Issue[]): void {
  faultsStore.setState({ refused: { name, issues } });
  setView({ dialog: 'faults' });
}

/** Shows everything that is wrong with a text that is to be a project. `first`: what was found already. */
export function showProjectFaults(name: string, text: string, first: readonly Issue[]): void {
  const all = faultyFileIssues(text);
  showFaults(name, all.length > 0 ? all : first);
}
