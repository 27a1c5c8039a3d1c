/** What the fit shows and what is typed into it: kept while the window is open, never saved, never undone. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { FitModel, FitOptions } from '../../core/index.ts';
import { setView } from '../store/view.ts';

/** Choices of a fit as typed. */
export interface FitDraft {
  /** the project's material that the law is for */
  readonly materialId: string;
  readonly text: string;
  /** °C of all readings where the table has no column for it, as typed */
  readonly temperature: string;
  /** where the readings come from, in words */
  readonly from: string;
  readonly model: FitModel;
  readonly shift: NonNullable<FitOptions['shift']>;
  /** whether the transition of Carreau and Yasuda is held at 2 */
  readonly holdTransition: boolean;
  /** whether a filled material was measured with its filler */
  readonly filled: boolean;
}

/** Outside React: read with getState. */
export const fitStore = createStore<FitDraft>(() => ({
  materialId: '',
  text: '',
  temperature: '',
  from: '',
  model: 'crossWlf',
  shift: 'arrhenius',
  holdTransition: false,
  filled: true,
}));

/** Picks a part of the draft inside a view. */
export const useFit = <T>(pick: (state: FitDraft) => T): T => useStore(fitStore, pick);

/** Changes some of the draft. */
export const setFit = (change: Partial<FitDraft>): void => fitStore.setState(change);

/** Opens the fit for a material of the project; what was pasted before stays. */
export function openFit(materialId: string): void {
  setFit({ materialId });
  setView({ dialog: 'fit' });
}
