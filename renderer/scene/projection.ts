/** Where world points stand in the view, so that labels and lines over the canvas follow the camera. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';

/** The camera's matrix, column by column, and the size of the view, px. */
export interface Projection {
  readonly matrix: readonly number[];
  readonly width: number;
  readonly height: number;
}

/** A place in the view, px from its upper left. */
export type Pixel = readonly [number, number];

/** A place in the world, mm: x along the axis, y up, z towards the viewer. */
export type World = readonly [number, number, number];

/** Follows the camera; width 0 before the first frame. */
export const projectionStore = createStore<Projection>(() => ({ matrix: [], width: 0, height: 0 }));

/** The projection now. */
export const useProjection = (): Projection => useStore(projectionStore);

/** Pixel of a world point under a parallel projection. */
export function pixelOf({ matrix: m, width, height }: Projection, [x, y, z]: World): Pixel {
  const row = (k: 0 | 1) => (m[k] ?? 0) * x + (m[4 + k] ?? 0) * y + (m[8 + k] ?? 0) * z + (m[12 + k] ?? 0);
  return [((row(0) + 1) / 2) * width, ((1 - row(1)) / 2) * height];
}

/** World point of the machine's frame (m; axis z, +y up). */
export const worldOf = (x: number, y: number, z: number): World => [1000 * z, 1000 * y, -1000 * x];

/**
 * Distance along the axis (world x, mm) of the point on the axis' own plane that stands under a pixel: the plane holds
 * the axis and the view's sideways direction. Null where one looks along the axis.
 */
export function axialUnder(
  projection: Projection,
  [px, py]: Pixel,
): { readonly x: number; readonly off: number } | null {
  const [ox, oy] = pixelOf(projection, [0, 0, 0]);
  const [ax, ay] = pixelOf(projection, [1, 0, 0]);
  const [dx, dy] = [ax - ox, ay - oy];
  const square = dx * dx + dy * dy;
  if (square < 1e-9) return null;
  const [rx, ry] = [px - ox, py - oy];
  return { x: (rx * dx + ry * dy) / square, off: Math.abs(rx * dy - ry * dx) / Math.sqrt(square) };
}
