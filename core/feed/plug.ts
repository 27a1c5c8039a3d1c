/** Conveying of granules as a plug that slides on barrel, root and flanks. */

import type { Stations } from '../geometry/types.ts';

/** A plug in a channel at one place. Lengths m, angles rad. */
export interface PlugShape {
  readonly barrelRadius: number;
  readonly depth: number;
  readonly lead: number;
  readonly starts: number;
  /** normal to the flight */
  readonly widthBarrel: number;
  readonly widthMean: number;
  readonly widthRoot: number;
}

/** The channel of a flighted station as a plug sees it. */
export function plugShapeAt(stations: Stations, station: number): PlugShape {
  const widthBarrel = stations.widthBarrel[station];
  const widthMean = stations.widthMean[station];
  return {
    barrelRadius: stations.barrelRadius[station],
    depth: stations.depth[station],
    lead: stations.lead[station],
    starts: stations.starts[station],
    widthBarrel,
    widthMean,
    widthRoot: Math.max(0.05 * widthMean, 2 * widthMean - widthBarrel),
  };
}

/** Balance of a plug, cos(angle) = k sin(angle) + drag + rise x d(ln P)/dl along the channel. */
export interface PlugBalance {
  readonly k: number;
  /** M without pressure build-up: friction on flanks and root over that on the barrel */
  readonly drag: number;
  /** what M gains per relative pressure rise along the channel, m */
  readonly rise: number;
  readonly tanBarrel: number;
  readonly sinMean: number;
}

/**
 * Balance of forces and torques on a plug.
 * @param onBarrel, onScrew Coulomb friction coefficients, onBarrel > 0
 * Source: Darnell & Mol 1956, in the arrangement of Tadmor & Klein 1970 (from memory).
 */
export function plugBalance(shape: PlugShape, onBarrel: number, onScrew: number): PlugBalance {
  const { barrelRadius, depth, lead } = shape;
  const mean = (barrelRadius - depth / 2) / barrelRadius;
  const root = (barrelRadius - depth) / barrelRadius;
  const tanBarrel = lead / (2 * Math.PI * barrelRadius);
  const sinBarrel = tanBarrel / Math.sqrt(1 + tanBarrel * tanBarrel);
  const tanMean = tanBarrel / mean;
  const sinMean = tanMean / Math.sqrt(1 + tanMean * tanMean);
  // past this slope the pushing flank alone locks the plug against the screw
  const k = (mean * (tanMean + onScrew)) / Math.max(1e-3, 1 - onScrew * tanMean);
  const flank = k + mean / tanMean;
  const grip = (onScrew / onBarrel) * sinBarrel;
  const drag =
    ((2 * depth) / shape.widthBarrel) * grip * flank +
    (shape.widthRoot / shape.widthBarrel) * grip * (k + (root * root) / tanBarrel);
  const rise = ((shape.widthMean / shape.widthBarrel) * depth * sinMean * flank) / onBarrel;
  return { k, drag, rise, tanBarrel, sinMean };
}

/** Angle that balances k and M, rad, 0 to pi/2; 0 where friction conveys nothing. */
export function balanceAngle(k: number, m: number): number {
  const inside = 1 + k * k - m * m;
  const sine = inside > 0 ? (Math.sqrt(inside) - k * m) / (1 + k * k) : 0;
  return sine > 0 ? Math.asin(Math.min(1, sine)) : 0;
}

/** Axial advance per turn over the lead. @param angle rad, 0 to pi/2; @param tanBarrel slope of the helix at the barrel */
export const advanceOfAngle = (angle: number, tanBarrel: number): number =>
  Math.sin(angle) / (Math.sin(angle) + tanBarrel * Math.cos(angle));

/** Angle of a plug that advances by a share of the lead, rad; pi/2, a nut held from turning, from a whole lead on. */
export const angleOfAdvance = (advance: number, tanBarrel: number): number =>
  advance >= 1 ? Math.PI / 2 : Math.atan((Math.max(0, advance) * tanBarrel) / (1 - advance));

/**
 * Relative pressure rise along the axis of a plug that goes at an angle, 1/m; negative where it must be pushed.
 * Exponential growth of pressure: Darnell & Mol 1956, solved for ln(P2/P1).
 */
export const riseAlongAxis = ({ k, drag, rise, sinMean }: PlugBalance, angle: number): number =>
  (Math.cos(angle) - k * Math.sin(angle) - drag) / (rise * sinMean);

/** What the plug does. */
export interface PlugConveying {
  readonly k: number;
  readonly m: number;
  /** angle between the plug's way and the plane across the axis, rad; 0 where friction conveys nothing */
  readonly angle: number;
  /** axial advance per turn over the lead, 0 to 1 */
  readonly efficiency: number;
}

/**
 * Conveying angle at a given pressure rise.
 * @param shape channel at the feed
 * @param onBarrel, onScrew Coulomb friction coefficients, onBarrel > 0
 * @param pressureTerm ln(P2/P1) times depth over channel length; 0 for free feeding
 * Source: as plugBalance. Holds for a packed plug; loose granules in a small screw slip more (they roll).
 */
export function plugConveying(shape: PlugShape, onBarrel: number, onScrew: number, pressureTerm = 0): PlugConveying {
  const { k, drag, rise, tanBarrel } = plugBalance(shape, onBarrel, onScrew);
  const m = drag + (rise / shape.depth) * pressureTerm;
  const angle = balanceAngle(k, m);
  return { k, m, angle, efficiency: angle > 0 ? advanceOfAngle(angle, tanBarrel) : 0 };
}
