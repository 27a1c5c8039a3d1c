/** The space between screw tip and orifice as the head's solver takes it, in units of the bore radius. */

import type { Design } from '../design/types.ts';
import type { ProfilePoint, TipPin, TipRegion, TipShape } from '../flow/tip/region.ts';
import { boreOutline } from '../geometry/bore.ts';
import { tipShape } from '../geometry/tip.ts';
import { keyNumber } from './fieldCache.ts';

/** A region with its place on the machine. */
export interface HeadRegion {
  readonly key: string;
  /** lengths over the bore radius */
  readonly region: TipRegion;
  /** bore radius, m */
  readonly unit: number;
  /** z of the inlet plane, m */
  readonly inlet: number;
  /** plain ring before the tip, m: it belongs to the channel, not to the head */
  readonly ring: number;
  /** length of the cylinder added after a last step, over the bore radius: no part of the machine */
  readonly added: number;
}

/** Length of the ring before the tip, in channel depths: long enough for the given inlet profile to settle somewhat. */
const ringDepths = 0.25;

/** A pin without length stands for a blunted tip; the solver wants it this long, in bore radii. */
const leastPin = 0.02;

/** Cylinder added where a profile ends in a step, in orifice radii. */
const endPiece = 0.3;

/** Bore from the inlet plane on; corners on a straight line are left out. */
function outerProfile(design: Design, inlet: number, unit: number): ProfilePoint[] {
  const bore = boreOutline(design).map(({ z, r }) => ({ z: (z - inlet) / unit, r: r / unit }));
  const after = bore.filter(({ z }) => z > 1e-6);
  const before = bore.filter(({ z }) => z <= 1e-6);
  const points: ProfilePoint[] = [{ z: 0, r: before[before.length - 1].r }];
  for (const point of after) {
    const last = points[points.length - 1];
    if (Math.hypot(point.z - last.z, point.r - last.r) < 1e-6) continue;
    // rounding must not turn a step into a steep cone that runs back
    points.push({ z: Math.abs(point.z - last.z) < 1e-6 ? last.z : point.z, r: point.r });
  }
  return points.filter((point, i) => !isStraight(points[i - 1], point, points[i + 1]));
}

/** Length that a profile needs after its last corner, over the bore radius: none unless it ends in a step. */
function missingEnd(profile: readonly ProfilePoint[]): number {
  const end = profile[profile.length - 1];
  return profile[profile.length - 2]?.z === end.z ? endPiece * end.r : 0;
}

function isStraight(a: ProfilePoint | undefined, b: ProfilePoint, c: ProfilePoint | undefined): boolean {
  if (!a || !c) return false;
  return Math.abs((b.z - a.z) * (c.r - a.r) - (c.z - a.z) * (b.r - a.r)) < 1e-9;
}

/** Region of a design. */
export function headRegion(design: Design): HeadRegion {
  const unit = design.barrel.boreDiameter / 2;
  const tip = tipShape(design);
  const ring = Math.min(ringDepths * (unit - tip.bodyRadius), tip.start / 2);
  const pinRadius = tip.pinRadius / unit;
  const pinLength = Math.max((tip.end - tip.start - tip.bodyLength) / unit, leastPin);
  // a pin as thick as the body only makes the body longer
  const hasPin = pinRadius > 1e-6 && tip.pinRadius < tip.bodyRadius * (1 - 1e-6);
  const thick = pinRadius > 1e-6 && !hasPin;
  const pin: TipPin | null = hasPin ? { radius: pinRadius, length: pinLength } : null;
  const blunt = thick || tip.kind === 'flat';
  const shape: TipShape = blunt
    ? { kind: 'flat' }
    : tip.kind === 'cone'
      ? { kind: 'cone', includedAngle: design.screw.tip.includedAngle }
      : { kind: 'hemisphere' };
  const profile = outerProfile(design, tip.start - ring, unit);
  const added = missingEnd(profile);
  const end = profile[profile.length - 1];
  const region: TipRegion = {
    screwRadius: tip.bodyRadius / unit,
    annulusLength: (ring + (thick ? tip.end - tip.start : 0)) / unit,
    tip: shape,
    ...(pin ? { pin } : {}),
    outer: added > 0 ? [...profile, { z: end.z + added, r: end.r }] : profile,
  };
  return { key: keyOf(region), region, unit, inlet: tip.start - ring, ring, added };
}

function keyOf({ screwRadius, annulusLength, tip, pin, outer }: TipRegion): string {
  const angle = tip.kind === 'cone' ? tip.includedAngle : 0;
  const numbers = [screwRadius, annulusLength, angle, pin?.radius ?? 0, pin?.length ?? 0];
  const wall = outer.flatMap(({ z, r }) => [z, r]);
  return `${tip.kind} ${[...numbers, ...wall].map(keyNumber).join(' ')}`;
}
