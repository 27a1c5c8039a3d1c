/** Where the camera stands to see a stretch of the machine. World: x along the axis in mm, y up, z towards the viewer. */

import type { Shape } from '../solve/protocol.ts';
import type { Place, Position } from '../store/view.ts';

/** A stretch to be seen whole, mm. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly radius: number;
  /** height above the axis of what is to be in the middle; 0 where left out */
  readonly up?: number;
}

/** World units per metre. */
export const worldPerMetre = 1000;

/** The stretch of a place; a position is shown with two diameters around it, or its own surroundings. */
export function stretchOf(place: Place | Position, bounds: Shape['bounds']): Stretch {
  const mm = (metres: number) => metres * worldPerMetre;
  const radius = mm(bounds.radius);
  if (typeof place === 'object' && place.near) {
    const { r, around } = place.near;
    return { from: mm(place.z - around), to: mm(place.z + around), radius: mm(around), up: mm(r) };
  }
  if (typeof place === 'object') return { from: mm(place.z) - 2 * radius, to: mm(place.z) + 2 * radius, radius };
  switch (place) {
    case 'whole':
      return { from: mm(bounds.start), to: mm(bounds.end), radius };
    case 'feed':
      return { from: mm(bounds.feedStart) - radius, to: mm(bounds.feedEnd) + radius, radius };
    case 'screw':
      return { from: 0, to: mm(bounds.barrelEnd), radius: radius * 0.7 };
    case 'outlet':
      return { from: mm(bounds.barrelEnd) - radius, to: mm(bounds.end) + radius * 0.3, radius };
  }
}

/** Unit vector from the machine to the eye: a little above and ahead of square. */
export const eye = (() => {
  const [x, y, z] = [0.22, 0.42, 1];
  const length = Math.hypot(x, y, z);
  return [x / length, y / length, z / length] as const;
})();

/** Pixels per world unit at which a stretch fills `share` of a view of `width` by `height` pixels. */
export function zoomFor(stretch: Stretch, width: number, height: number, share = 0.9): number {
  const across = (stretch.to - stretch.from) * Math.hypot(eye[1], eye[2]) + 2 * stretch.radius * Math.abs(eye[0]);
  const up = 2 * stretch.radius + (stretch.to - stretch.from) * Math.abs(eye[0] * eye[1]);
  return Math.max(0.05, share * Math.min(width / across, height / up));
}

/** A round length (1, 2 or 5 times a power of ten, mm) that takes at most `mostPixels` at this zoom. */
export function scaleLength(zoom: number, mostPixels: number): number {
  const most = mostPixels / zoom;
  const power = 10 ** Math.floor(Math.log10(most));
  const step = [5, 2, 1].find((factor) => factor * power <= most) ?? 1;
  return step * power;
}
