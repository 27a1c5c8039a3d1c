/** Which stretch of the machine is seen, how large, and where millimetres lie on the screen. */

import type { Revision } from '../../core/index.ts';
import type { BoxSize } from '../plots/useBox.ts';
import { stretchOf } from '../scene/frame.ts';
import type { Place, Position } from '../store/view.ts';

/** Zoom, px per mm, and the place in the middle, mm. */
export interface Viewport {
  readonly zoom: number;
  readonly z: number;
  readonly r: number;
}

/** Smallest and largest zoom, px per mm. */
const zoomRange = { min: 0.2, max: 400 } as const;
/** Room at the sides, and above and below for the lanes of dimensions, px. */
const margin = { side: 26, lanes: 84 } as const;

const held = (zoom: number): number => Math.min(zoomRange.max, Math.max(zoomRange.min, zoom));

/** px of a place of the axis, and of a radius (up is positive). */
export interface ToPixels {
  x(z: number): number;
  y(r: number): number;
}

/** Maps mm to px in a box. */
export const toPixels = ({ zoom, z, r }: Viewport, { width, height }: BoxSize): ToPixels => ({
  x: (at) => width / 2 + (at - z) * zoom,
  y: (at) => height / 2 - (at - r) * zoom,
});

/** Extents of a machine, m, as the 3D view's camera knows them. */
export function boundsOf({ screw, barrel, nozzle }: Revision) {
  const { feedOpening } = barrel;
  const end = nozzle.segments.reduce((sum, { lengthMm }) => sum + lengthMm, barrel.lengthMm);
  return {
    start: -screw.shank.lengthMm / 1000,
    feedStart: feedOpening.startMm / 1000,
    feedEnd: (feedOpening.startMm + feedOpening.lengthMm) / 1000,
    barrelEnd: barrel.lengthMm / 1000,
    end: end / 1000,
    radius: barrel.outerDiameterMm / 2000,
  };
}

/** The view that shows a place of the machine; the whole of it for `whole`. */
export function viewOf(place: Place | Position, revision: Revision, { width, height }: BoxSize): Viewport {
  const { from, to, radius, up = 0 } = stretchOf(place, boundsOf(revision));
  const whole = place === 'whole';
  const high = 2 * (place === 'outlet' ? Math.max(revision.nozzle.outerDiameterMm / 2, 1) : radius);
  const room = { width: width - 2 * margin.side, height: height - (whole ? 2 : 1.6) * margin.lanes };
  const zoom = Math.min(Math.max(10, room.width) / (to - from), Math.max(40, room.height) / high);
  return { zoom: held(zoom), z: (from + to) / 2, r: up };
}

/** Zooms by a factor, keeping the place under a point of the box (px) where it is. */
export function zoomedAt(view: Viewport, factor: number, at: { x: number; y: number }, size: BoxSize): Viewport {
  const zoom = held(view.zoom * factor);
  const [dx, dy] = [at.x - size.width / 2, at.y - size.height / 2];
  return { zoom, z: view.z + dx / view.zoom - dx / zoom, r: view.r - dy / view.zoom + dy / zoom };
}

/** Moves the picture by px. */
export const moved = (view: Viewport, dx: number, dy: number): Viewport => ({
  ...view,
  z: view.z - dx / view.zoom,
  r: view.r + dy / view.zoom,
});

/** Moves the picture as little as brings a place (mm) inside, clear of the edges. */
export function showing(view: Viewport, place: { readonly z: number; readonly r: number }, size: BoxSize): Viewport {
  const { x, y } = toPixels(view, size);
  const by = (at: number, length: number) => {
    const edge = Math.min(40, length / 3);
    return at < edge ? edge - at : at > length - edge ? length - edge - at : 0;
  };
  const [dx, dy] = [by(x(place.z), size.width), by(y(place.r), size.height)];
  return dx === 0 && dy === 0 ? view : moved(view, dx, dy);
}
