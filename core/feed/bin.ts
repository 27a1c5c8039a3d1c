/** Stress in the standing granulate of a hopper, down to the screw. */

import type { Design, DesignMaterial } from '../design/types.ts';
import { gravity } from '../math/constants.ts';

/** Friction inside the granulate where nothing is known of it, rad: 35 degrees, the default row of EN 1991-4 (from memory). */
const usualInternalFriction = (35 * Math.PI) / 180;

/** A hopper leaning less than this counts as a tube, rad. */
const tubeBelow = (2 * Math.PI) / 180;

/** Share of the wall friction that filling does not mobilise in a cone: b of EN 1991-4 (from memory). */
const unmobilised = 0.2;

/** Friction inside a granulate. */
export interface InternalFriction {
  /** rad */
  readonly angle: number;
  readonly from: 'given' | 'repose' | 'assumed';
}

/** Angle of internal friction: as given, else the angle of repose (alike without cohesion), else 35 degrees. */
export function internalFriction(material: DesignMaterial): InternalFriction {
  if (material.internalFriction !== null) return { angle: material.internalFriction, from: 'given' };
  if (material.angleOfRepose !== null) return { angle: material.angleOfRepose, from: 'repose' };
  return { angle: usualInternalFriction, from: 'assumed' };
}

/**
 * Horizontal over vertical stress of standing granulate.
 * @param angle internal friction, rad, 0 to pi/2
 * @returns 1.1 (1 - sin), at most 1. Source: EN 1991-4 (from memory).
 */
export const lateralRatio = (angle: number): number => Math.min(1, 1.1 * (1 - Math.sin(angle)));

/** Stress in a bin at one depth, Pa. */
export interface BinStress {
  readonly vertical: number;
  readonly horizontal: number;
  readonly wallShear: number;
}

/**
 * Stress at a depth of a tube.
 * @param weight per volume, N/m³; @param areaOverPerimeter m, a quarter of the diameter where round
 * @param wallFriction coefficient, >= 0; @param lateral horizontal over vertical stress
 * @param depth below the levelled surface, m
 * Source: Janssen 1895, in the form of Tardos 1999. Without wall friction it is the weight of the column.
 */
export function janssenStress(
  weight: number,
  areaOverPerimeter: number,
  wallFriction: number,
  lateral: number,
  depth: number,
): BinStress {
  const rate = (wallFriction * lateral) / areaOverPerimeter;
  const vertical = rate * depth > 1e-9 ? (weight / rate) * -Math.expm1(-rate * depth) : weight * depth;
  return { vertical, horizontal: lateral * vertical, wallShear: wallFriction * lateral * vertical };
}

/**
 * Vertical stress in a filled cone.
 * @param weight per volume, N/m³; @param halfAngle of the wall from the vertical, rad, > 0
 * @param wallFriction, lateral as for the tube
 * @param above height over the apex, m; @param filled height of the surface over the apex, m, >= above
 * Slice balance x ds/dx = n s - weight x with n = 2 (1 - b) mu/tan(halfAngle), filling state of EN 1991-4 (from memory).
 * A wall too flat for the grains to slide mobilises only part of its friction.
 */
export function coneStress(
  weight: number,
  halfAngle: number,
  wallFriction: number,
  lateral: number,
  above: number,
  filled: number,
): number {
  if (!(above > 0) || !(filled > above)) return 0;
  const slope = Math.tan(halfAngle);
  const mobilised = Math.min(wallFriction, (1 - lateral) / (2 * slope));
  const n = (2 * (1 - unmobilised) * mobilised) / slope;
  const share = above / filled;
  if (Math.abs(n - 1) < 1e-6) return -weight * above * Math.log(share);
  return ((weight * filled) / (n - 1)) * (share - share ** n);
}

/**
 * Pressure with which the filled hopper stands on the screw, Pa: vertical stress at its outlet. A running hopper
 * presses less. Never more than a few hundred pascals in a small machine, so it hardly pushes granules in.
 */
export function throatPressure({ hopper, material }: Design): number {
  const weight = material.bulkDensity * gravity;
  const lateral = lateralRatio(internalFriction(material).angle);
  if (hopper.wallHalfAngle < tubeBelow) {
    return janssenStress(weight, hopper.outletDiameter / 4, hopper.wallFriction, lateral, hopper.height).vertical;
  }
  const above = hopper.outletDiameter / (2 * Math.tan(hopper.wallHalfAngle));
  return coneStress(weight, hopper.wallHalfAngle, hopper.wallFriction, lateral, above, above + hopper.height);
}

/** Pressure of granulate under its own weight in a channel, Pa. @param depth m */
export const ownWeight = (material: DesignMaterial, depth: number): number => material.bulkDensity * gravity * depth;
