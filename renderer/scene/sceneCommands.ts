/** Commands of the 3D view. */

import type { Command } from '../commands/types.ts';
import { projectStore } from '../store/project.ts';
import { setView, viewStore } from '../store/view.ts';
import { sceneText } from '../strings/scene.ts';
import {
  type CameraMove,
  moveCamera,
  nextSlice,
  stepScrew,
  toggleFront,
  toggleGrains,
  toggleMeasuring,
} from './sceneStore.ts';

const isOpen = () => projectStore.getState().history !== null;

/** Moves the slice by a share of its way; opens it where it is closed. */
function moveSlice(by: number): void {
  const { section } = viewStore.getState();
  setView({ section: section === null ? 0 : Math.min(1, Math.max(-1, section + by)) });
}

const command = (id: string, label: string, perform: () => void, keys?: string): Command => ({
  id,
  label,
  ...(keys === undefined ? {} : { keys }),
  enabled: isOpen,
  perform,
});

const moves = Object.entries(sceneText.moves) as [CameraMove, string][];

/** All of them, in the order of the list. */
export const sceneCommands: readonly Command[] = [
  command('grains', sceneText.grains.command, toggleGrains, 'Alt+8'),
  command('melt-front', sceneText.front.command, toggleFront, 'Alt+9'),
  command('measure', sceneText.measure.command, toggleMeasuring, 'Alt+0'),
  command('turn-step', sceneText.step.command, stepScrew),
  command('slice-next', sceneText.slice.next, nextSlice),
  command('slice-further', sceneText.slice.further, () => moveSlice(0.1)),
  command('slice-back', sceneText.slice.back, () => moveSlice(-0.1)),
  ...moves.map(([by, name]) => command(`camera-${by}`, sceneText.view(name), () => moveCamera(by))),
];
