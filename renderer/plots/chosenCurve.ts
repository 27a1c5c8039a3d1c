/** Which of the further curves is shown, so that other panels can ask for one. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';

/** The wanted curve; the counter goes up where it is to be brought into sight. */
interface ChosenCurve {
  readonly id: string;
  readonly asked: number;
}

const chosenStore = createStore<ChosenCurve>(() => ({ id: 'residence', asked: 0 }));

/** The wanted curve. */
export const useChosenCurve = (): ChosenCurve => useStore(chosenStore);

/** Chooses a curve. */
export const chooseCurve = (id: string): void => chosenStore.setState({ id });

/** Chooses a curve and brings it into sight. */
export const showCurve = (id: string): void => chosenStore.setState(({ asked }) => ({ id, asked: asked + 1 }));
