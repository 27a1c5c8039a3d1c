/** The axial scale that the plot and the side drawing share. */

import type { Shape } from '../solve/protocol.ts';

/** Room left of and right of the plotting area for axes, px. */
export const sideRoom = 54;

/** Axial range shown, m: from just before the bore to just after the orifice. */
export function axialRange(bounds: Shape['bounds']): readonly [number, number] {
  const margin = 0.02 * bounds.end;
  return [-margin, bounds.end + margin];
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
