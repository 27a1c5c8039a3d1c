/** Grains as balls or rods with round ends, pushed apart and let sink: positions only, no forces and no time. */

import type { Point } from './room.ts';

/** Grains under way: two ends each, which coincide in a ball. m. */
export interface Grains {
  readonly count: number;
  /** six numbers a grain: first and second end */
  readonly ends: Float64Array;
  readonly radius: Float64Array;
  /** distance between the ends */
  readonly length: Float64Array;
}

/** Shares along two segments where they are nearest, and the gap vector between these points. */
const nearest = { s: 0, t: 0, x: 0, y: 0, z: 0 };

const unit = (value: number): number => Math.min(1, Math.max(0, value));

/** Writes the nearest points of grains i and j to `nearest`. Source: Ericson 2005, Real-Time Collision Detection, 5.1.9 (from memory). */
function findNearest(e: Float64Array, i: number, j: number): void {
  const [p, q] = [6 * i, 6 * j];
  const [ax, ay, az] = [e[p + 3] - e[p], e[p + 4] - e[p + 1], e[p + 5] - e[p + 2]];
  const [bx, by, bz] = [e[q + 3] - e[q], e[q + 4] - e[q + 1], e[q + 5] - e[q + 2]];
  const [rx, ry, rz] = [e[p] - e[q], e[p + 1] - e[q + 1], e[p + 2] - e[q + 2]];
  const a = ax * ax + ay * ay + az * az;
  const b = bx * bx + by * by + bz * bz;
  const f = bx * rx + by * ry + bz * rz;
  const c = ax * rx + ay * ry + az * rz;
  const mixed = ax * bx + ay * by + az * bz;
  const floor = a * b - mixed * mixed;
  let s = floor > 1e-9 * a * b && a > 0 ? unit((mixed * f - c * b) / floor) : 0.5;
  let t = b > 0 ? (mixed * s + f) / b : 0.5;
  if (b > 0 && (t < 0 || t > 1)) {
    t = unit(t);
    s = a > 0 ? unit((mixed * t - c) / a) : 0.5;
  } else if (a > 0 && b === 0) s = unit(-c / a);
  nearest.s = s;
  nearest.t = t;
  nearest.x = rx + s * ax - t * bx;
  nearest.y = ry + s * ay - t * by;
  nearest.z = rz + s * az - t * bz;
}

/** How far two grains stand in each other, m; negative where they are apart. */
export function overlapOf(grains: Grains, i: number, j: number): number {
  findNearest(grains.ends, i, j);
  return grains.radius[i] + grains.radius[j] - Math.hypot(nearest.x, nearest.y, nearest.z);
}

/** Moves the point at share s of a grain by (x, y, z), the ends by their weight. */
function movePoint(e: Float64Array, at: number, s: number, x: number, y: number, z: number): void {
  const [first, second] = [1 - s, s];
  const weight = first * first + second * second;
  const [a, b] = [first / weight, second / weight];
  e[at] += a * x;
  e[at + 1] += a * y;
  e[at + 2] += a * z;
  e[at + 3] += b * x;
  e[at + 4] += b * y;
  e[at + 5] += b * z;
}

/** Pushes two grains apart by half their overlap each. */
export function pushApart(grains: Grains, i: number, j: number): void {
  const overlap = overlapOf(grains, i, j);
  if (overlap <= 0) return;
  const { s, t } = nearest;
  const gap = Math.hypot(nearest.x, nearest.y, nearest.z);
  // two that coincide part upwards, the one with the greater number on top
  const [x, y, z] = gap > 1e-12 ? [nearest.x / gap, nearest.y / gap, nearest.z / gap] : [0, -1, 0];
  const half = overlap / 2;
  movePoint(grains.ends, 6 * i, s, half * x, half * y, half * z);
  movePoint(grains.ends, 6 * j, t, -half * x, -half * y, -half * z);
}

/** Gives a grain its length back about its middle. */
export function keepLength({ ends: e, length }: Grains, i: number): void {
  const p = 6 * i;
  const [x, y, z] = [e[p + 3] - e[p], e[p + 4] - e[p + 1], e[p + 5] - e[p + 2]];
  const now = Math.hypot(x, y, z);
  const share = now > 1e-12 ? (length[i] / now - 1) / 2 : 0;
  for (const [k, d] of [x, y, z].entries()) {
    e[p + k] -= share * d;
    e[p + 3 + k] += share * d;
  }
}

/** Pairs of grains that may touch, i < j: cells as wide as the longest grain. */
export function closePairs({ count, ends, radius, length }: Grains): Uint32Array {
  let wide = 0;
  for (let i = 0; i < count; i++) wide = Math.max(wide, length[i] + 2 * radius[i]);
  const cells = new Map<number, number[]>();
  const place = (i: number, k: number) => Math.floor((ends[6 * i + k] + ends[6 * i + 3 + k]) / 2 / wide) + 512;
  const key = (x: number, y: number, z: number) => (x * 1024 + y) * 1024 + z;
  const pairs: number[] = [];
  for (let i = 0; i < count; i++) {
    const [x, y, z] = [place(i, 0), place(i, 1), place(i, 2)];
    for (let n = 0; n < 27; n++) {
      const near = cells.get(key(x + (n % 3) - 1, y + (Math.floor(n / 3) % 3) - 1, z + Math.floor(n / 9) - 1));
      if (near) for (const j of near) pairs.push(j, i);
    }
    const own = cells.get(key(x, y, z));
    if (own) own.push(i);
    else cells.set(key(x, y, z), [i]);
  }
  return Uint32Array.from(pairs);
}

/** Applies `push` to both ends of a grain. */
export function pushEnds({ ends: e, radius }: Grains, i: number, push: (p: Point, ball: number) => void): void {
  for (const at of [6 * i, 6 * i + 3]) {
    const p: Point = [e[at], e[at + 1], e[at + 2]];
    push(p, radius[i]);
    e.set(p, at);
  }
}
