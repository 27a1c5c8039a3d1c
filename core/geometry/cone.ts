/** A cone between two radii: its length from its included angle and back. Plain geometry. */

/**
 * Axial length of a cone.
 * @param includedAngle full angle, rad, above 0 and below pi
 * @returns length in the unit of the radii; 0 where the radii agree
 */
export const coneLength = (includedAngle: number, radius: number, otherRadius: number): number =>
  Math.abs(radius - otherRadius) / Math.tan(includedAngle / 2);

/**
 * Included angle of a cone, rad: 0 for a cylinder, pi for a flat shoulder.
 * @param length axial length in the unit of the radii
 */
export const coneAngle = (length: number, radius: number, otherRadius: number): number =>
  2 * Math.atan2(Math.abs(radius - otherRadius), length);
