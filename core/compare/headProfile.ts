/** The turned outlines of a head, and where two of them differ. m; no physics. */

import type { Design } from '../design/types.ts';
import { outerStretches } from '../geometry/barrelWall.ts';
import { channelOutline } from '../geometry/outlines.ts';
import type { AxialOutline } from '../geometry/types.ts';

/** Half a head in a plane through its axis. m. */
export interface HeadProfile {
  /** root of the screw from its shank's start to the foremost point */
  readonly screw: AxialOutline;
  /** bore of barrel and nozzle from z = 0 to the orifice */
  readonly bore: AxialOutline;
  /** outside of barrel, with its neck, and nozzle over the same length */
  readonly outside: AxialOutline;
  /** radius of the flights' lands */
  readonly flightRadius: number;
  readonly feedOpening: { readonly start: number; readonly end: number };
  readonly barrelEnd: number;
  /** foremost point of the screw, and the orifice */
  readonly tipEnd: number;
  readonly end: number;
}

const outlineOf = (points: readonly (readonly [number, number])[]): AxialOutline => ({
  z: Float64Array.from(points, ([z]) => z),
  r: Float64Array.from(points, ([, r]) => r),
});

/** The outlines of a design. */
export function headProfile(design: Design): HeadProfile {
  const { barrel, nozzle, screw } = design;
  const { outer, inner } = channelOutline(design);
  const end = outer.z[outer.z.length - 1];
  const shank = screw.shankDiameter / 2;
  const outside = nozzle.outerDiameter / 2;
  return {
    screw: outlineOf([
      [-screw.shankLength, shank],
      [0, shank],
      ...Array.from(inner.z, (z, i) => [z, inner.r[i]] as const),
    ]),
    bore: outer,
    outside: outlineOf([
      ...outerStretches(barrel).flatMap(({ from, to, radius }) => [[from, radius] as const, [to, radius] as const]),
      [barrel.length, outside],
      [end, outside],
    ]),
    flightRadius: barrel.boreDiameter / 2 - screw.radialClearance,
    feedOpening: { start: barrel.feedOpening.start, end: barrel.feedOpening.start + barrel.feedOpening.length },
    barrelEnd: barrel.length,
    tipEnd: inner.z[inner.z.length - 1],
    end,
  };
}

/** What is laid on what: the feed ends of the barrels, the screws' foremost points, or the orifices. */
export type Alignment = 'feed' | 'tip' | 'orifice';

/** What to add to z of a head so that it lies on the base as chosen, m. */
export function alignmentShift(base: HeadProfile, head: HeadProfile, alignment: Alignment): number {
  if (alignment === 'feed') return 0;
  return alignment === 'tip' ? base.tipEnd - head.tipEnd : base.end - head.end;
}

/**
 * Radius of an outline at z, m; 0 where it does not reach.
 * @param side which value to take at a step: that before it or that after it
 */
export function radiusAt({ z, r }: AxialOutline, at: number, side: 'before' | 'after' = 'after'): number {
  const last = z.length - 1;
  if (last < 0 || at < z[0] || at > z[last]) return 0;
  if (side === 'before' && at === z[0]) return 0;
  if (side === 'after' && at === z[last]) return 0;
  if (side === 'before') {
    const i = z.findIndex((value) => value >= at);
    return z[i] === at ? r[i] : between(z, r, i - 1, at);
  }
  const i = z.findLastIndex((value) => value <= at);
  return z[i] === at ? r[i] : between(z, r, i, at);
}

const between = (z: Float64Array, r: Float64Array, i: number, at: number): number =>
  r[i] + ((r[i + 1] - r[i]) * (at - z[i])) / (z[i + 1] - z[i]);

/** A stretch of the base's z over which two outlines differ. m. */
export interface DifferingStretch {
  readonly z: readonly number[];
  /** radii of the base and of the other at these z */
  readonly base: readonly number[];
  readonly other: readonly number[];
  /** greatest difference of radius, m */
  readonly most: number;
}

/** Differences of radius below this are not shown, m: finer than such parts are turned. */
const turnedAlike = 1e-5;

/**
 * Where an outline differs from the base's.
 * @param shift added to z of the other, m
 * @param tolerance difference of radius that counts as none, m
 */
export function differingStretches(
  base: AxialOutline,
  other: AxialOutline,
  shift = 0,
  tolerance = turnedAlike,
): DifferingStretch[] {
  const moved: AxialOutline = { z: other.z.map((z) => z + shift), r: other.r };
  const planes = [...new Set([...base.z, ...moved.z])].sort((a, b) => a - b);
  const stretches: { z: number[]; base: number[]; other: number[]; most: number }[] = [];
  let open: (typeof stretches)[number] | null = null;
  for (let i = 0; i + 1 < planes.length; i++) {
    const [from, to] = [planes[i], planes[i + 1]];
    const a = [radiusAt(base, from, 'after'), radiusAt(base, to, 'before')];
    const b = [radiusAt(moved, from, 'after'), radiusAt(moved, to, 'before')];
    const most = Math.max(Math.abs(a[0] - b[0]), Math.abs(a[1] - b[1]));
    // planes that differ by rounding alone are one
    if (most <= tolerance || to - from < 1e-9) {
      if (to - from >= 1e-9) open = null;
      continue;
    }
    if (open === null) {
      open = { z: [], base: [], other: [], most: 0 };
      stretches.push(open);
    }
    open.z.push(from, to);
    open.base.push(...a);
    open.other.push(...b);
    open.most = Math.max(open.most, most);
  }
  return stretches;
}
