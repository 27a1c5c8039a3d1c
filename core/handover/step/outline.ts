/**
 * Transverse outlines of the screw in polar coordinates, as rows of exact pieces: arcs about the axis, radial lines, and
 * curves (slanted flanks and fillets). The same pieces bound the faces along the screw and the flat faces across it.
 */

import type { FlightProfile } from '../../geometry/flightProfile.ts';
import { cubicFit } from './splines.ts';

/** A place in the transverse plane: angle, rad, and radius, in the unit of the outline. */
export interface Polar {
  readonly theta: number;
  readonly r: number;
}

/** What a piece is; its ends follow from its neighbours. */
type PieceKind = 'arc' | 'line' | 'curve';

/** One piece, at angles that do not fall from its start to its end. */
export interface OutlinePiece {
  readonly kind: PieceKind;
  readonly from: Polar;
  readonly to: Polar;
  /** poles of a curve in the plane, x and y; of other pieces empty */
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** A closed outline in one plane, pieces in order, one full turn; null where the body ends in a point or not at all. */
export type Outline = readonly OutlinePiece[];

/** Intervals of a slanted flank and of a fillet: a quarter circle in steps of 11 degrees is met to a few millionths of its radius. */
const flankIntervals = 4;
const filletIntervals = 8;

const none = new Float64Array(0);
const polar = (theta: number, r: number): Polar => ({ theta, r });

/** An arc about the axis. */
const arcPiece = (from: number, to: number, r: number): OutlinePiece => ({
  kind: 'arc',
  from: polar(from, r),
  to: polar(to, r),
  x: none,
  y: none,
});

/** A circle in two halves, so that no edge closes on itself. */
export const circleOutline = (r: number): Outline => [arcPiece(0, Math.PI, r), arcPiece(Math.PI, 2 * Math.PI, r)];

/** A piece through points of the plane: a radial line where they are two, else a cubic. */
function through(points: readonly Polar[]): OutlinePiece {
  const from = points[0] as Polar;
  const to = points[points.length - 1] as Polar;
  if (points.length === 2) return { kind: 'line', from, to, x: none, y: none };
  const { poles } = cubicFit(points.length - 1);
  const x = poles(Float64Array.from(points, ({ theta, r }) => r * Math.cos(theta)));
  const y = poles(Float64Array.from(points, ({ theta, r }) => r * Math.sin(theta)));
  return { kind: 'curve', from, to, x, y };
}

const steps = (count: number): number[] => Array.from({ length: count + 1 }, (_, i) => i / count);

/** Half widths and radii of one side's fillet from the floor up, m; empty without one. */
function filletPoints(profile: FlightProfile): { x: number; r: number }[] {
  const { fillet, flank, halfBase, floorRadius } = profile;
  if (fillet === 0) return [];
  return steps(filletIntervals).map((share) => {
    const phi = Math.PI / 2 - (Math.PI / 2 - flank) * share;
    return { x: halfBase - fillet * Math.cos(phi), r: floorRadius + fillet * (1 - Math.sin(phi)) };
  });
}

/** Half widths and radii of one side's flank from the fillet to the crest, m; two points where square. */
function flankPoints(profile: FlightProfile): { x: number; r: number }[] {
  const { flank, halfLand, floorRadius, filletHeight, flightRadius } = profile;
  const foot = floorRadius + filletHeight;
  return steps(flank === 0 ? 1 : flankIntervals).map((share) => {
    const r = share === 1 ? flightRadius : foot + (flightRadius - foot) * share;
    return { x: halfLand + (flightRadius - r) * Math.tan(flank), r };
  });
}

/** The pieces of one flight and the floor after it, its centre at `centre` (rad). */
function pitchPieces(profile: FlightProfile, centre: number, scale: number): OutlinePiece[] {
  const turn = (2 * Math.PI) / profile.lead;
  const rising = [filletPoints(profile), flankPoints(profile)].filter((points) => points.length > 0);
  const side = (sign: 1 | -1) =>
    rising.map((points) => {
      const placed = points.map(({ x, r }) => polar(centre + sign * turn * x, r * scale));
      return through(sign < 0 ? placed : placed.reverse());
    });
  const { halfLand, halfBase, flightRadius, floorRadius, starts } = profile;
  const next = centre + (2 * Math.PI) / starts;
  return [
    ...side(-1),
    arcPiece(centre - turn * halfLand, centre + turn * halfLand, flightRadius * scale),
    ...side(1).reverse(),
    arcPiece(centre + turn * halfBase, next - turn * halfBase, floorRadius * scale),
  ];
}

/**
 * Outline of a flighted section with the first flight's centre at `phase` (rad), lengths of the profile times `scale`.
 * Every profile of one stretch gives the same number and kinds of pieces.
 */
export function flightOutline(profile: FlightProfile, phase: number, scale: number): Outline {
  return Array.from({ length: profile.starts }, (_, flight) =>
    pitchPieces(profile, phase + (2 * Math.PI * flight) / profile.starts, scale),
  ).flat();
}
