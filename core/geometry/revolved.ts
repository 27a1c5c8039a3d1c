/** Volumes of bodies of revolution given as pieces along z. */

import { integrate } from '../math/quadrature.ts';

/** A stretch whose squared radius is a polynomial of z: cylinder, cone or sphere. m. */
export interface RevolvedPiece {
  readonly from: number;
  readonly to: number;
  /** radius at z, m */
  readonly radius: (z: number) => number;
}

/** A frustum between two planes; a cylinder where the radii agree. m. */
export function frustum(from: number, to: number, startRadius: number, endRadius: number): RevolvedPiece {
  const slope = to > from ? (endRadius - startRadius) / (to - from) : 0;
  return { from, to, radius: (z) => startRadius + slope * (z - from) };
}

/** Volume of the pieces between two planes, m³; exact, since pi r² is quadratic in z. */
export function revolvedVolume(pieces: readonly RevolvedPiece[], from: number, to: number): number {
  let sum = 0;
  for (const piece of pieces) {
    const start = Math.max(piece.from, from);
    const end = Math.min(piece.to, to);
    if (end > start) sum += integrate((z) => Math.PI * piece.radius(z) ** 2, start, end);
  }
  return sum;
}
