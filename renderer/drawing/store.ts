/** What the drawing remembers while it is looked at: what is shown, how pulls behave, and the pull under way. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Project } from '../../core/index.ts';
import type { Limits } from './limits.ts';
import { type Dimension, type Entry, type Group, groups, type Magnet, type Manners } from './types.ts';
import type { Viewport } from './viewport.ts';

/** A pull under way; the project is not touched until it ends. */
export interface Pull {
  readonly dimension: Dimension;
  /** the project it started from */
  readonly project: Project;
  readonly manners: Manners;
  readonly limits: Limits;
  readonly value: number;
  /** the neighbour it sticks to */
  readonly magnet: Magnet | null;
  /** what holds it back */
  readonly why: string | null;
}

/** All of it. */
export interface DrawingState {
  readonly shown: readonly Group[];
  readonly manners: Manners;
  /** null fits the whole machine */
  readonly view: Viewport | null;
  readonly chosen: Entry | null;
  readonly pull: Pull | null;
  /** id of the dimension whose number is being typed */
  readonly typing: string | null;
  /** number of the latest request to look at a place that was followed */
  readonly flight: number;
  /** said near the drawing's foot: why something cannot be done */
  readonly notice: string | null;
}

const start: DrawingState = {
  shown: groups,
  manners: { keepLength: true, joined: true },
  view: null,
  chosen: null,
  pull: null,
  typing: null,
  flight: 0,
  notice: null,
};

/** Outside React: read with getState. */
export const drawingStore = createStore<DrawingState>(() => start);

/** Picks a part of the state inside a view. */
export const useDrawing = <T>(pick: (state: DrawingState) => T): T => useStore(drawingStore, pick);

/** Changes some of it. */
export const setDrawing = (change: Partial<DrawingState>): void => drawingStore.setState(change);

/** Back to the beginning, as a window just opened; for tests. */
export const resetDrawing = (): void => drawingStore.setState(start, true);

/** The opposite of how pulls behave, while Shift is held. */
export const opposite = ({ keepLength, joined }: Manners): Manners => ({ keepLength: !keepLength, joined: !joined });
