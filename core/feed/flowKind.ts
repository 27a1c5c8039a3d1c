/** How a granulate runs out of its hopper: all of it at once or through a funnel, freely or badly, mixed or sifted. */

import type { Design } from '../design/types.ts';
import { type InternalFriction, internalFriction } from './bin.ts';

/** Kept off the limit of mass flow, rad; 3 degrees (course tutorial). */
const massFlowMargin = (3 * Math.PI) / 180;

/**
 * Flattest wall of a cone at which the grains slide along it, as half-angle from the vertical, rad.
 * @param internal effective internal friction angle, rad, 0 to pi/2; @param wall wall friction angle, rad, >= 0
 * @returns 0 where the wall holds the grains at any angle. No margin taken off.
 * Source: Jenike's limit as used after Leung et al. 2019, eqs 5 and 6:
 * 90° - acos((1 - sin e)/(2 sin e))/2 - (w + asin(sin w/sin e))/2.
 */
export function massFlowLimit(internal: number, wall: number): number {
  const sine = Math.sin(internal);
  if (!(sine > 0) || Math.sin(wall) > sine) return 0;
  const active = Math.acos(Math.min(1, (1 - sine) / (2 * sine)));
  const sliding = wall + Math.asin(Math.sin(wall) / sine);
  return Math.max(0, Math.PI / 2 - active / 2 - sliding / 2);
}

/** Mass or funnel flow of a hopper. */
export interface HopperFlow {
  /** funnel: grains at the wall stand still until the hopper runs empty */
  readonly kind: 'mass' | 'funnel';
  /** half-angle up to which mass flow is expected, margin taken off, rad */
  readonly limit: number;
  readonly friction: InternalFriction;
}

/** Kind of flow in a design's hopper. Stirring and shaking are not counted. */
export function hopperFlow({ hopper, material }: Design): HopperFlow {
  const friction = internalFriction(material);
  const limit = Math.max(0, massFlowLimit(friction.angle, Math.atan(hopper.wallFriction)) - massFlowMargin);
  return { kind: hopper.wallHalfAngle <= limit ? 'mass' : 'funnel', limit, friction };
}

/** How freely a granulate runs. */
export type Flowability = 'very free' | 'free' | 'fair' | 'cohesive' | 'very cohesive';

/** Upper ends of the bands, degrees. */
const reposeBands: readonly (readonly [degrees: number, band: Flowability])[] = [
  [30, 'very free'],
  [38, 'free'],
  [45, 'fair'],
  [55, 'cohesive'],
];

/**
 * Band of a granulate by its angle of repose.
 * @param angle rad; null where unknown, and null is the answer
 * Source: Carr (from memory). The angle depends on how it was measured (Al-Hashemi & Al-Amoudi 2018).
 */
export function flowability(angle: number | null): Flowability | null {
  if (angle === null) return null;
  const degrees = (angle * 180) / Math.PI;
  return reposeBands.find(([upTo]) => degrees <= upTo + 1e-9)?.[1] ?? 'very cohesive';
}

/** Coarse over fine at which fines fall through a bed of coarse spheres: the throat of three that touch; exact, 6.464. */
export const siftingRatio = 1 / (2 / Math.sqrt(3) - 1);

/** Coarse over fine of a granulate, d90 over d10; above siftingRatio fines gather at the bottom and arrive first. */
export const sizeSpread = ({ material }: Design): number => material.grain.d90 / material.grain.d10;

/** Finest tenth below which, m, and angle of repose above which, rad, shaking packs; common practice. */
export const packing = { grain: 0.5e-3, repose: (45 * Math.PI) / 180 } as const;

/**
 * Shaking packs rather than loosens: granulate that is fine, cohesive or runs badly.
 * Below 0.5 mm, or cohesive, or an angle of repose above 45 degrees; common practice.
 */
export const packsWhenShaken = ({ material }: Design): boolean =>
  material.grain.d10 < packing.grain ||
  (material.unconfinedStrength ?? 0) > 0 ||
  (material.angleOfRepose ?? 0) > packing.repose;
