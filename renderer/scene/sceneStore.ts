/** How the 3D view is looked at and what is shown in it besides the parts. Never saved with the project. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import { evaluationStore } from '../store/evaluation.ts';
import { setView, viewStore } from '../store/view.ts';
import { prefersStill } from './still.ts';

/** Planes of the slice: upright or level through the axis, or across it. */
export type SliceKind = 'upright' | 'level' | 'across';

/** Single moves of the camera. */
export type CameraMove =
  | 'left'
  | 'right'
  | 'up'
  | 'down'
  | 'pan-left'
  | 'pan-right'
  | 'pan-up'
  | 'pan-down'
  | 'in'
  | 'out'
  | 'side'
  | 'above'
  | 'end';

/** A measured place: world, mm; axis along x, up y. */
export interface MeasuredPoint {
  readonly at: readonly [number, number, number];
  /** whether it was drawn to an edge or corner, or chosen by numbers */
  readonly on: 'surface' | 'edge' | 'corner' | 'chosen';
}

/** What is chosen about the view. */
export interface SceneState {
  readonly slice: SliceKind;
  /** opacity of a clear barrel, 0 to 1 */
  readonly opacity: number;
  readonly grains: boolean;
  readonly front: boolean;
  /** turns of the screw by hand, in steps of `turnStep` */
  readonly steps: number;
  readonly measuring: boolean;
  /** at most two */
  readonly points: readonly MeasuredPoint[];
  /** the view moves, and is drawn with less effort meanwhile */
  readonly moving: boolean;
  readonly move: { readonly by: CameraMove; readonly count: number };
}

/** One step of turning by hand, rad. */
export const turnStep = Math.PI / 6;

/** Outside React: read with getState. */
export const sceneStore = createStore<SceneState>(() => ({
  slice: 'upright',
  opacity: 0.2,
  grains: false,
  front: false,
  steps: 0,
  measuring: false,
  points: [],
  moving: false,
  move: { by: 'side', count: 0 },
}));

/** Picks a part of the state inside a view. */
export const useScene = <T>(pick: (state: SceneState) => T): T => useStore(sceneStore, pick);

/** Changes some of it. */
export const setScene = (change: Partial<SceneState>): void => sceneStore.setState(change);

/** Moves the camera once. */
export const moveCamera = (by: CameraMove): void =>
  sceneStore.setState(({ move }) => ({ move: { by, count: move.count + 1 } }));

/** Turns the screw on by one step. */
export function stepScrew(): void {
  setView({ turning: false });
  sceneStore.setState(({ steps }) => ({ steps: steps + 1 }));
}

/** Turns the screw or stops it; where less motion is wanted, one step. */
export function turnScrew(): void {
  if (prefersStill()) stepScrew();
  else setView({ turning: !viewStore.getState().turning });
}

/** Shows or hides the granules; they are seen where the machine is open. */
export function toggleGrains(): void {
  const grains = !sceneStore.getState().grains;
  setScene({ grains });
  if (grains) setView({ turning: false });
}

/** Shows or hides where the granulate softens and melts. */
export const toggleFront = (): void => sceneStore.setState(({ front }) => ({ front: !front }));

/** Begins measuring, or ends it and forgets the points. */
export function toggleMeasuring(): void {
  const measuring = !sceneStore.getState().measuring;
  setScene({ measuring, points: [] });
  if (measuring) setView({ turning: false });
}

/** Takes a measured place in; a third begins anew. */
export const addPoint = (point: MeasuredPoint): void =>
  sceneStore.setState(({ points }) => ({ points: points.length === 2 ? [point] : [...points, point] }));

// Places are measured on one design: on the next one they would hang in the air, with a length that is no longer there.
evaluationStore.subscribe(({ shape }, before) => {
  if (shape?.designHash !== before.shape?.designHash) setScene({ points: [] });
});

const kinds: readonly SliceKind[] = ['upright', 'level', 'across'];

/** Opens the slice, or turns its plane to the next kind. */
export function nextSlice(): void {
  if (viewStore.getState().section === null) setView({ section: 0 });
  else sceneStore.setState(({ slice }) => ({ slice: kinds[(kinds.indexOf(slice) + 1) % kinds.length] ?? 'upright' }));
}
