/** The axial scale that the plot and the side drawing share. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Shape } from '../solve/protocol.ts';
import { keptRange, type Range } from './plotZoom.ts';

/** Room left of and right of the plotting area for axes, px. */
export const sideRoom = 54;

/** The range that the views along the axis are zoomed to, m; null: the whole. */
const zoomStore = createStore<{ readonly range: Range | null }>(() => ({ range: null }));

/** The zoom now. Views whose scale it changes are made anew by the panel that holds them. */
export const useAxialZoom = (): Range | null => useStore(zoomStore, (state) => state.range);

/** Zooms all views along the axis, m; null shows the whole. */
export const zoomAxial = (range: Range | null): void => zoomStore.setState({ range });

/** The whole axial range, m: from just before the bore to just after the orifice. */
export function wholeAxialRange(bounds: Shape['bounds']): Range {
  const margin = 0.02 * bounds.end;
  return [-margin, bounds.end + margin];
}

/** Axial range shown, m: the whole, or what of it is zoomed to. */
function axialRange(bounds: Shape['bounds']): Range {
  const whole = wholeAxialRange(bounds);
  const { range } = zoomStore.getState();
  return (range && keptRange(range, whole)) ?? whole;
}

/** Maps px in a box of `width` px back to z, m. */
export function pixelsToAxial(bounds: Shape['bounds'], width: number): (x: number) => number {
  const [from, to] = axialRange(bounds);
  return (x) => from + ((x - sideRoom) * (to - from)) / (width - 2 * sideRoom);
}

/** Maps z (m) to px in a box of `width` px. */
export function axialToPixels(bounds: Shape['bounds'], width: number): (z: number) => number {
  const [from, to] = axialRange(bounds);
  const scale = (width - 2 * sideRoom) / (to - from);
  return (z) => sideRoom + (z - from) * scale;
}
