/** Which place of the method handbook is open. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import { setView, type ViewState, viewStore } from '../store/view.ts';

/** A page, and a heading of it; the count makes repeats count. */
export interface HandbookPlace {
  readonly page: string;
  readonly heading: string | null;
  readonly count: number;
  /** dialog it was opened from, to go back to */
  readonly from: ViewState['dialog'];
}

/** Outside React. */
const handbookStore = createStore<HandbookPlace>(() => ({
  page: 'index',
  heading: null,
  count: 0,
  from: 'none',
}));

/** The place, followed by a view. */
export const useHandbook = (): HandbookPlace => useStore(handbookStore);

/** Turns to a place, written `page` or `page#heading`. */
export function turnTo(place: string): void {
  const [page = 'index', heading = null] = place.split('#');
  handbookStore.setState(({ count }) => ({
    page: page === '' ? handbookStore.getState().page : page,
    heading,
    count: count + 1,
  }));
}

/** Opens the handbook at a place; where it lies over another dialog, that one is gone back to. */
export function openHandbook(place = 'index'): void {
  const { dialog } = viewStore.getState();
  turnTo(place);
  handbookStore.setState({ from: dialog === 'handbook' || dialog === 'commands' ? 'none' : dialog });
  setView({ dialog: 'handbook' });
}
