/** Which groups of figures are open; kept while the window is, so that a new prediction closes nothing. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';

/** Groups that begin open; the rest is there for who looks for it. */
export const openAtFirst: readonly string[] = ['output', 'residence', 'colour'];

const openStore = createStore<Readonly<Record<string, boolean>>>(() => ({}));

/** Whether a group is open. */
export const useGroupOpen = (id: string): boolean =>
  useStore(openStore, (open) => open[id] ?? openAtFirst.includes(id));

/** Opens or closes groups. */
export const setGroupsOpen = (ids: readonly string[], open: boolean): void =>
  openStore.setState(Object.fromEntries(ids.map((id) => [id, open])));

/** Forgets what was opened and closed; for tests. */
export const forgetOpen = (): void => openStore.setState({}, true);
