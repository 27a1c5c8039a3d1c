/**
 * Flat faces where two transverse outlines meet in one plane: what of the one lies outside the other. All in polar
 * coordinates about the axis, where both are single-valued but for radial lines.
 */

import type { Outline, OutlinePiece, Polar } from './outline.ts';
import { cubicAt } from './splines.ts';

/** A part of a piece, or a radial line of its own. */
export interface FlatEdge {
  readonly piece: OutlinePiece | null;
  readonly from: Polar;
  readonly to: Polar;
  /** parameters of a curve at both ends */
  readonly start: number;
  readonly end: number;
}

/** A flat face: its outer loop, and the inner one of a ring. */
export interface FlatRegion {
  readonly outer: readonly FlatEdge[];
  readonly inner: readonly FlatEdge[] | null;
}

/** Radii that differ by less are one, mm; sewing bridges ten times as much. */
const sameRadius = 1e-6;
/** Angles that differ by less are one, rad. */
const sameAngle = 1e-8;
const full = 2 * Math.PI;

/** One piece at angles from 0 to a full turn, `shift` (rad) from where it is stored. */
interface Laid {
  readonly piece: OutlinePiece;
  readonly shift: number;
  readonly from: number;
  readonly to: number;
}

/** Pieces that cover any angle, laid between 0 and a full turn; those across 0 twice. */
function layOut(outline: Outline): Laid[] {
  return outline
    .filter(({ from, to }) => to.theta - from.theta > sameAngle)
    .flatMap((piece) => {
      const turns = Math.floor((piece.from.theta + sameAngle) / full) * full;
      const laid = { piece, shift: -turns, from: piece.from.theta - turns, to: piece.to.theta - turns };
      if (laid.to <= full + sameAngle) return [laid];
      return [laid, { ...laid, shift: laid.shift - full, from: laid.from - full, to: laid.to - full }];
    });
}

/** Parameter of a curve at angle `theta` (rad), by halving; its angle rises with the parameter. */
function parameterAt(piece: OutlinePiece, theta: number): number {
  const middle = (piece.from.theta + piece.to.theta) / 2;
  const angle = (t: number) => {
    const [x, y] = [cubicAt(piece.x, t), cubicAt(piece.y, t)];
    return (
      middle + Math.atan2(y * Math.cos(middle) - x * Math.sin(middle), x * Math.cos(middle) + y * Math.sin(middle))
    );
  };
  let [low, high] = [0, piece.x.length - 1];
  if (theta <= piece.from.theta) return low;
  if (theta >= piece.to.theta) return high;
  for (let i = 0; i < 60; i++) {
    const t = (low + high) / 2;
    if (angle(t) < theta) low = t;
    else high = t;
  }
  return (low + high) / 2;
}

/** Radius of a laid piece at `theta` (rad of the plane). */
function radiusAt({ piece, shift }: Laid, theta: number): number {
  if (piece.kind !== 'curve') return piece.from.r;
  const t = parameterAt(piece, theta - shift);
  return Math.hypot(cubicAt(piece.x, t), cubicAt(piece.y, t));
}

const coverOf = (laid: readonly Laid[], theta: number): Laid =>
  laid.find(({ from, to }) => theta >= from && theta <= to) as Laid;

/** A stretch of angles over which the order of the two radii does not change. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly a: Laid;
  readonly b: Laid | null;
}

const lowerOf = ({ b }: Stretch, theta: number): number => (b ? radiusAt(b, theta) : 0);

/** Sorted angles, those that agree merged. */
function distinct(angles: readonly number[]): number[] {
  const sorted = [...angles].filter((angle) => angle > sameAngle && angle < full - sameAngle).sort((a, b) => a - b);
  return [0, ...sorted.filter((angle, i) => i === 0 || angle - (sorted[i - 1] as number) > sameAngle), full];
}

/** Angles inside a stretch where the radii cross. */
function crossings(stretch: Stretch): number[] {
  const { from, to, a, b } = stretch;
  if (!b || (a.piece.kind === 'arc' && b.piece.kind === 'arc')) return [];
  const gap = (theta: number) => radiusAt(a, theta) - radiusAt(b, theta);
  const found: number[] = [];
  const samples = 8;
  for (let i = 0; i < samples; i++) {
    let low = from + ((to - from) * i) / samples;
    let high = from + ((to - from) * (i + 1)) / samples;
    const [atLow, atHigh] = [gap(low), gap(high)];
    if (Math.abs(atLow) < sameRadius || Math.abs(atHigh) < sameRadius || atLow * atHigh > 0) continue;
    for (let k = 0; k < 60; k++) {
      const middle = (low + high) / 2;
      if (gap(middle) * atLow > 0) low = middle;
      else high = middle;
    }
    found.push((low + high) / 2);
  }
  return found;
}

/** Stretches of two outlines without crossings inside. */
function stretchesOf(a: Outline, b: Outline | null): Stretch[] {
  const [laidA, laidB] = [layOut(a), b ? layOut(b) : []];
  const cut = (angles: readonly number[]) =>
    angles.slice(1).map((to, i): Stretch => {
      const from = angles[i] as number;
      const middle = (from + to) / 2;
      return { from, to, a: coverOf(laidA, middle), b: b ? coverOf(laidB, middle) : null };
    });
  const ends = distinct([...laidA, ...laidB].flatMap(({ from, to }) => [from, to]));
  const more = cut(ends).flatMap(crossings);
  return more.length === 0 ? cut(ends) : cut(distinct([...ends, ...more]));
}

const isAbove = (stretch: Stretch): boolean => {
  const middle = (stretch.from + stretch.to) / 2;
  return radiusAt(stretch.a, middle) - lowerOf(stretch, middle) > sameRadius;
};

/** The part of a laid piece over a stretch. */
function partOf(laid: Laid, { from, to }: Stretch): FlatEdge {
  const { piece, shift } = laid;
  const isCurve = piece.kind === 'curve';
  return {
    piece,
    from: { theta: from, r: radiusAt(laid, from) },
    to: { theta: to, r: radiusAt(laid, to) },
    start: isCurve ? parameterAt(piece, from - shift) : 0,
    end: isCurve ? parameterAt(piece, to - shift) : 1,
  };
}

const reversed = (edge: FlatEdge): FlatEdge => ({
  ...edge,
  from: edge.to,
  to: edge.from,
  start: edge.end,
  end: edge.start,
});

const riser = (theta: number, from: number, to: number): FlatEdge[] =>
  Math.abs(to - from) < sameRadius
    ? []
    : [{ piece: null, from: { theta, r: from }, to: { theta, r: to }, start: 0, end: 1 }];

/** Whether the area between the radii goes on from one stretch to the next. */
function goesOn(before: Stretch, after: Stretch): boolean {
  const low = Math.max(lowerOf(before, before.to), lowerOf(after, after.from));
  const high = Math.min(radiusAt(before.a, before.to), radiusAt(after.a, after.from));
  return high - low > sameRadius;
}

/** Upper and lower paths along a run of stretches, at rising angle. */
function pathsOf(run: readonly Stretch[]): { upper: FlatEdge[]; lower: FlatEdge[] } {
  const upper: FlatEdge[] = [];
  const lower: FlatEdge[] = [];
  run.forEach((stretch, i) => {
    const before = run[i - 1];
    if (before) {
      upper.push(...riser(stretch.from, radiusAt(before.a, before.to), radiusAt(stretch.a, stretch.from)));
      lower.push(...riser(stretch.from, lowerOf(before, before.to), lowerOf(stretch, stretch.from)));
    }
    upper.push(partOf(stretch.a, stretch));
    if (stretch.b) lower.push(partOf(stretch.b, stretch));
  });
  return { upper, lower };
}

/** The face of one run of stretches that does not close round the axis. */
function regionOf(run: readonly Stretch[]): FlatRegion {
  const first = run[0] as Stretch;
  const last = run[run.length - 1] as Stretch;
  const { upper, lower } = pathsOf(run);
  const outer = [
    ...lower,
    ...riser(last.to, lowerOf(last, last.to), radiusAt(last.a, last.to)),
    ...[...upper].reverse().map(reversed),
    ...riser(first.from, radiusAt(first.a, first.from), lowerOf(first, first.from)),
  ];
  return { outer, inner: null };
}

/** The face that closes round the axis: all stretches, from any on. */
function ringOf(run: readonly Stretch[]): FlatRegion {
  const first = run[0] as Stretch;
  const last = run[run.length - 1] as Stretch;
  const { upper, lower } = pathsOf(run);
  upper.push(...riser(first.from, radiusAt(last.a, last.to), radiusAt(first.a, first.from)));
  lower.push(...riser(first.from, lowerOf(last, last.to), lowerOf(first, first.from)));
  return { outer: upper, inner: first.b ? lower : null };
}

/**
 * The flat faces of the area inside `a` and outside `b` (null: nothing), both outlines in one plane, mm. Areas that
 * touch in a point only are parted.
 */
export function flatRegions(a: Outline, b: Outline | null): FlatRegion[] {
  const stretches = stretchesOf(a, b);
  const count = stretches.length;
  const at = (i: number) => stretches[(i + count) % count] as Stretch;
  const joined = stretches.map((stretch, i) => isAbove(stretch) && isAbove(at(i - 1)) && goesOn(at(i - 1), stretch));
  const begin = joined.indexOf(false);
  if (begin < 0) return [ringOf(stretches)];
  const runs: Stretch[][] = [];
  for (let i = begin; i < begin + count; i++) {
    if (!isAbove(at(i))) continue;
    if (joined[i % count]) (runs[runs.length - 1] as Stretch[]).push(at(i));
    else runs.push([at(i)]);
  }
  return runs.map(regionOf);
}
