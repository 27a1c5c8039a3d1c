/** Lengths between two places on the machine, and drawing a place to an edge that is near. Pure. */

import type { World } from './projection.ts';

/** Lengths in m, angle in rad. */
export interface Measured {
  readonly distance: number;
  /** along the axis */
  readonly axial: number;
  /** difference of the distances from the axis */
  readonly radial: number;
  /** round the axis, 0 to pi */
  readonly around: number;
}

const sub = (a: World, b: World): World => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const size = (a: World): number => Math.hypot(...a);
const dot = (a: World, b: World): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** What lies between two world places (mm; axis x). */
export function measured(from: World, to: World): Measured {
  const radius = (p: World) => Math.hypot(p[1], p[2]);
  const turn = Math.abs(Math.atan2(from[1], from[2]) - Math.atan2(to[1], to[2]));
  const onAxis = Math.min(radius(from), radius(to)) < 1e-9;
  return {
    distance: size(sub(to, from)) / 1000,
    axial: Math.abs(to[0] - from[0]) / 1000,
    radial: Math.abs(radius(to) - radius(from)) / 1000,
    around: onAxis ? 0 : Math.min(turn, 2 * Math.PI - turn),
  };
}

/** Nearest point to `p` on the line from a to b. */
function nearestOn(p: World, a: World, b: World): World {
  const along = sub(b, a);
  const square = dot(along, along);
  const share = square > 0 ? Math.min(1, Math.max(0, dot(sub(p, a), along) / square)) : 0;
  return [a[0] + share * along[0], a[1] + share * along[1], a[2] + share * along[2]];
}

/** A place drawn to what is near. */
export interface Snapped {
  readonly at: World;
  readonly on: 'surface' | 'edge' | 'corner';
}

/**
 * Draws a place on a triangle to a sharp corner or edge of it that is within reach.
 * @param sharp whether each corner lies on a sharp edge; an edge is sharp where both its corners are
 * @param reach same unit as the places; corners count before edges
 */
export function snapped(
  place: World,
  corners: readonly [World, World, World],
  sharp: readonly [boolean, boolean, boolean],
  reach: number,
): Snapped {
  let best: Snapped = { at: place, on: 'surface' };
  let least = reach;
  const offer = (at: World, on: Snapped['on']) => {
    const away = size(sub(at, place));
    if (away >= least) return;
    least = away;
    best = { at, on };
  };
  corners.forEach((corner, k) => {
    if (sharp[k]) offer(corner, 'corner');
  });
  if (best.on === 'corner') return best;
  for (const [a, b] of [
    [0, 1],
    [1, 2],
    [2, 0],
  ] as const)
    if (sharp[a] && sharp[b]) offer(nearestOn(place, corners[a], corners[b]), 'edge');
  return best;
}

/** Vertices that share their place with another whose normal differs: they lie on a sharp edge. 1 per such vertex. */
export function sharpVertices(positions: ArrayLike<number>): Uint8Array {
  const count = positions.length / 3;
  const first = new Map<string, number>();
  const sharp = new Uint8Array(count);
  const key = (i: number) =>
    `${Math.round(1e7 * (positions[3 * i] ?? 0))},${Math.round(1e7 * (positions[3 * i + 1] ?? 0))},${Math.round(1e7 * (positions[3 * i + 2] ?? 0))}`;
  for (let i = 0; i < count; i++) {
    const name = key(i);
    const other = first.get(name);
    if (other === undefined) first.set(name, i);
    else {
      sharp[i] = 1;
      sharp[other] = 1;
    }
  }
  return sharp;
}
