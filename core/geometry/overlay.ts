/**
 * The plane between two stretches of screw whose outlines differ: both outlines are given points on the same rays, met
 * where they agree, and the areas between them are filled. What sticks out of the lower stretch faces +z, what sticks
 * out of the upper one faces -z.
 *
 * Outlines count as linear in angle and radius between points, so arcs of one radius agree exactly whatever their
 * points were.
 */

import { addTrapezoid, addVertex, type Chain, type MeshBuilder } from './meshBuilder.ts';
import type { Ring } from './ring.ts';

/** Angles (rad) and radii (m) nearer than this are one. */
const sameAngle = 1e-7;
const sameRadius = 1e-9;
/** How far opposite steps at one angle are drawn apart, rad. */
const parting = 1e-6;

/** A ring turned so that its angles rise from a common origin. */
interface Turned {
  readonly t: Float64Array;
  readonly r: Float64Array;
  /** the ring's own number of each point */
  readonly own: Int32Array;
}

/** One ray and what each outline has there: radii in order (two or more are a step), and which points these are. */
interface Ray {
  readonly t: number;
  readonly a: readonly number[];
  readonly b: readonly number[];
  readonly aOwn: readonly number[];
  readonly bOwn: readonly number[];
}

const fullTurn = 2 * Math.PI;
const wrap = (angle: number) => ((angle % fullTurn) + fullTurn) % fullTurn;
const first = (list: readonly number[]) => list[0] as number;
const last = (list: readonly number[]) => list[list.length - 1] as number;

/** An angle amid the widest gap between all points, where it is safe to cut both rings open. */
function cutAngle(a: Ring, b: Ring): number {
  const all = [...a.theta, ...b.theta].map(wrap).sort((p, q) => p - q);
  let best = 0;
  let widest = -1;
  all.forEach((angle, i) => {
    const next = i + 1 < all.length ? (all[i + 1] as number) : first(all) + fullTurn;
    if (next - angle <= widest) return;
    widest = next - angle;
    best = (angle + next) / 2;
  });
  return best;
}

/** The ring with angles counted from `origin` (rad), rising. */
function turnRing(ring: Ring, origin: number): Turned {
  const angles = ring.theta.map((angle) => wrap(angle - origin));
  const n = angles.length;
  let start = 0;
  for (let i = 1; i < n; i++) if ((angles[i] as number) < (angles[i - 1] as number)) start = i;
  const own = Int32Array.from({ length: n }, (_, i) => (start + i) % n);
  return {
    own,
    t: Float64Array.from(own, (i) => angles[i] as number),
    r: Float64Array.from(own, (i) => ring.r[i] as number),
  };
}

/** Radius of a turned ring between its points `next - 1` and `next` at angle `t`, m. */
function between(ring: Turned, next: number, t: number): number {
  const n = ring.t.length;
  const before = (next + n - 1) % n;
  const after = next % n;
  const from = (ring.t[before] as number) - (next === 0 ? fullTurn : 0);
  const to = (ring.t[after] as number) + (next === n ? fullTurn : 0);
  const [r0, r1] = [ring.r[before] as number, ring.r[after] as number];
  return to > from ? r0 + ((r1 - r0) * (t - from)) / (to - from) : r1;
}

/** The points of a turned ring from `from` that lie on the ray at `t`. */
function onRay(ring: Turned, from: number, t: number): { radii: number[]; own: number[] } {
  const radii: number[] = [];
  const own: number[] = [];
  for (let i = from; i < ring.t.length && (ring.t[i] as number) <= t + sameAngle; i++) {
    radii.push(ring.r[i] as number);
    own.push(ring.own[i] as number);
  }
  if (radii.length === 0) radii.push(between(ring, from, t));
  return { radii, own };
}

/** Rays through every point of either ring, in order. */
function mergedRays(a: Turned, b: Turned): Ray[] {
  const rays: Ray[] = [];
  let i = 0;
  let j = 0;
  while (i < a.t.length || j < b.t.length) {
    const t = Math.min(a.t[i] ?? fullTurn, b.t[j] ?? fullTurn);
    const onA = onRay(a, i, t);
    const onB = onRay(b, j, t);
    rays.push({ t, a: onA.radii, b: onB.radii, aOwn: onA.own, bOwn: onB.own });
    i += onA.own.length;
    j += onB.own.length;
  }
  return rays;
}

/** Draws apart steps of opposite direction on one ray, which would touch along an edge that four faces share. */
function partedRays(ray: Ray): Ray[] {
  const opposite = (last(ray.a) - first(ray.a)) * (last(ray.b) - first(ray.b)) < 0;
  if (!opposite) return [ray];
  return [
    { ...ray, t: ray.t - parting, b: [first(ray.b)], bOwn: [] },
    { ...ray, t: ray.t + parting, a: [last(ray.a)], aOwn: [] },
  ];
}

/** The ray where the outlines cross after `ray` and before `next`, if they do. */
function crossing(ray: Ray, next: Ray, turn: number): Ray[] {
  const before = last(ray.a) - last(ray.b);
  const after = first(next.a) - first(next.b);
  if (Math.abs(before) <= sameRadius || Math.abs(after) <= sameRadius || before * after > 0) return [];
  const share = before / (before - after);
  const r = last(ray.a) + share * (first(next.a) - last(ray.a));
  return [{ t: ray.t + share * (next.t + turn - ray.t), a: [r], b: [r], aOwn: [], bOwn: [] }];
}

/** The distinct radii on a ray, rising, with their vertices. */
interface Levels {
  readonly radii: readonly number[];
  readonly ids: readonly number[];
}

function addLevels(mesh: MeshBuilder, ray: Ray, origin: number, z: number): Levels {
  const sorted = [...ray.a, ...ray.b].sort((p, q) => p - q);
  const radii = sorted.filter((r, i) => i === 0 || r - (sorted[i - 1] as number) > sameRadius);
  const [x, y] = [Math.cos(ray.t + origin), Math.sin(ray.t + origin)];
  return { radii, ids: radii.map((r) => addVertex(mesh, r * x, r * y, z)) };
}

/** Number of the level at radius `r`. */
function levelOf(levels: Levels, r: number): number {
  let best = 0;
  levels.radii.forEach((radius, i) => {
    if (Math.abs(radius - r) < Math.abs((levels.radii[best] as number) - r)) best = i;
  });
  return best;
}

/** The vertices on a ray from radius `from` to radius `to`, in that direction. */
function path(levels: Levels, from: number, to: number): number[] {
  const [start, end] = [levelOf(levels, from), levelOf(levels, to)];
  if (start <= end) return levels.ids.slice(start, end + 1);
  return levels.ids.slice(end, start + 1).reverse();
}

/** Appends what an outline has on one ray to its chain and notes where its own points stand. */
function extendChain(
  ids: number[],
  at: number[],
  levels: Levels,
  radii: readonly number[],
  own: readonly number[],
): void {
  const start = ids.length;
  const along = path(levels, first(radii), last(radii));
  ids.push(...along);
  own.forEach((point, i) => {
    const found = along.indexOf(levels.ids[levelOf(levels, radii[i] as number)] as number);
    at[point] = start + Math.max(found, 0);
  });
}

/**
 * Adds the plane between two outlines at one z, `lower` ending there and `upper` beginning, and returns both as chains
 * of vertices that the stretches on either side are joined to. Outlines may cross any number of times.
 */
export function addJunction(mesh: MeshBuilder, lower: Ring, upper: Ring): { lower: Chain; upper: Chain } {
  const origin = cutAngle(lower, upper);
  const plain = mergedRays(turnRing(lower, origin), turnRing(upper, origin)).flatMap(partedRays);
  const rays = plain.flatMap((ray, i) => {
    const next = plain[(i + 1) % plain.length] as Ray;
    return [ray, ...crossing(ray, next, i + 1 === plain.length ? fullTurn : 0)];
  });
  const levels = rays.map((ray) => addLevels(mesh, ray, origin, lower.z));
  const chains = { a: { ids: [] as number[], at: [] as number[] }, b: { ids: [] as number[], at: [] as number[] } };
  rays.forEach((ray, k) => {
    const here = levels[k] as Levels;
    extendChain(chains.a.ids, chains.a.at, here, ray.a, ray.aOwn);
    extendChain(chains.b.ids, chains.b.at, here, ray.b, ray.bOwn);
    const nextRay = rays[(k + 1) % rays.length] as Ray;
    const next = levels[(k + 1) % rays.length] as Levels;
    addTrapezoid(mesh, path(here, last(ray.b), last(ray.a)), path(next, first(nextRay.b), first(nextRay.a)));
  });
  return { lower: { ...chains.a, ring: lower }, upper: { ...chains.b, ring: upper } };
}
