/** Which stop of the tour is shown; and that it was offered once on this machine. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import { stops } from './stops.ts';

const seenKey = 'augerwright.tour';

/** Outside React. Null while no tour is under way. */
export const tourStore = createStore<{ readonly at: number | null }>(() => ({ at: null }));

/** The stop shown, or null. */
export const useTour = (): number | null => useStore(tourStore, (state) => state.at);

/** Begins at the first stop. */
export const startTour = (): void => tourStore.setState({ at: 0 });

/** Ends it; it is not offered by itself again. */
export function leaveTour(): void {
  globalThis.localStorage?.setItem(seenKey, 'seen');
  tourStore.setState({ at: null });
}

/** To another stop; past the last one ends the tour. */
export function moveTour(by: 1 | -1): void {
  const { at } = tourStore.getState();
  if (at === null) return;
  if (at + by >= stops.length) leaveTour();
  else tourStore.setState({ at: Math.max(0, at + by) });
}

/** Begins the tour where it was never seen on this machine. */
export function offerTour(): void {
  if (globalThis.localStorage?.getItem(seenKey) !== 'seen') startTour();
}
