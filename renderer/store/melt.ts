/** What is shown of the melt's age: whether, and which quantity. Never saved with the project. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { SpotPlace } from '../../core/index.ts';
import { flyTo, setView, viewStore } from './view.ts';

/** Painted on the opened machine. */
export type Painted = 'age' | 'dwell';

/** Painted on the cross-section. */
export type AcrossPainted = 'age' | 'speed';

/** What is chosen about the melt. */
export interface MeltState {
  readonly shown: boolean;
  readonly painted: Painted;
  readonly across: AcrossPainted;
}

/** Outside React: read with getState. */
export const meltStore = createStore<MeltState>(() => ({ shown: false, painted: 'age', across: 'age' }));

/** Picks a part of the state inside a view. */
export const useMelt = <T>(pick: (state: MeltState) => T): T => useStore(meltStore, pick);

/** Changes some of it. */
export const setMelt = (change: Partial<MeltState>): void => meltStore.setState(change);

/** Shows the painted melt: the machine is cut open along its axis and the screw stands still. */
function showMelt(): void {
  setMelt({ shown: true });
  setView({ section: 0, turning: false });
}

/** Shows or hides the painted melt. */
export function toggleMelt(): void {
  if (!meltStore.getState().shown) {
    showMelt();
    return;
  }
  setMelt({ shown: false });
  if (viewStore.getState().section === 0) setView({ section: null });
}

/** Picks an axial position (m) for the cross-section and marks it in every linked view; the camera stays. */
export const pickStation = (z: number): void => setView({ mark: { z, label: '' } });

/** Surroundings of a dead spot that are shown, m: a spot is under a millimetre, its channel a few. */
const around = 0.009;

/** Chooses a dead spot: paints the melt, marks its place everywhere and sends the camera there. `z` and `r` in the painted half-plane, m. */
export function showSpot(number: number, where: string, { z, r }: SpotPlace): void {
  if (!meltStore.getState().shown) showMelt();
  setView({ mark: { z, label: where, spot: number } });
  flyTo({ z, near: { r, around } });
}
