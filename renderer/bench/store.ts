/** What the bench log shows and what is typed into it: kept while the window is open, never saved, never undone. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { BenchCsvChoices, FactorName } from '../../core/index.ts';
import { projectStore } from '../store/project.ts';
import { setView } from '../store/view.ts';
import { dropRuns } from './runs.ts';
import type { TrialDraft } from './trialDraft.ts';

/** Parts of the bench log, in the order of use. */
export const benchTabs = ['trials', 'import', 'measured', 'calibrate', 'plan', 'photo'] as const;
/** One part of it. */
export type BenchTab = (typeof benchTabs)[number];

/** A table that is being brought in. */
interface ImportDraft {
  /** file name; null where it was pasted */
  readonly name: string | null;
  readonly text: string;
  readonly choices: BenchCsvChoices;
}

/** What the bench log remembers. */
export interface BenchState {
  readonly tab: BenchTab;
  readonly draft: TrialDraft | null;
  readonly table: ImportDraft | null;
  readonly factors: readonly FactorName[];
  /** trials that a calibration uses */
  readonly scope: 'material' | 'revision';
}

const fresh: BenchState = {
  tab: 'trials',
  draft: null,
  table: null,
  factors: ['viscosity', 'feed'],
  scope: 'material',
};

/** Outside React: read with getState. */
const benchStore = createStore<BenchState>(() => fresh);

/** Picks a part of the state inside a view. */
export const useBench = <T>(pick: (state: BenchState) => T): T => useStore(benchStore, pick);

/** Changes some of the state. */
export const setBench = (change: Partial<BenchState>): void => benchStore.setState(change);

/** Opens the bench log, at a part of it where one is named. */
export function openBench(tab?: BenchTab): void {
  if (tab) setBench({ tab });
  setView({ dialog: 'bench' });
}

// Another project has other trials: nothing of the last one's may stay.
projectStore.subscribe((state, before) => {
  const opened = state.file !== before.file && state.history?.past.length === 0 && state.history !== before.history;
  if (!opened) return;
  dropRuns();
  benchStore.setState(fresh);
});
