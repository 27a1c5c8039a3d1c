/** Named places on the walls of a tip region, to say where melt dwells and why. */

import { distanceToPiece } from './clearance.ts';
import { innerWall } from './outline.ts';
import type { ProfilePoint, TipRegion } from './region.ts';

/** Why melt dwells at a place. `wall` is the slow layer on a plain wall. */
export type DwellCause = 'corner' | 'shoulder' | 'ledge' | 'tip' | 'wall';

/** A corner that melt cannot sweep, or a piece of wall. */
export interface Feature {
  readonly kind: 'corner' | 'piece';
  readonly wall: 'outer' | 'inner';
  readonly cause: DwellCause;
  /** Corner number (corners) or number of the piece's first corner (pieces), counted along its wall */
  readonly index: number;
  readonly z0: number;
  readonly r0: number;
  /** End of a piece; equal to the start for a corner. m */
  readonly z1: number;
  readonly r1: number;
  /** Distance within which a corner claims the melt, m; 0 for pieces */
  readonly reach: number;
}

/** Corners open by less than this turn cannot hold an eddy: interior angle over 146.3 deg (Moffatt 1964). */
const EDDY_TURN = ((180 - 146.3) * Math.PI) / 180;

const STEEP = Math.PI / 4 - 1e-6; // a wall piece this steep is a shoulder or the face of a ledge
const LEDGE_SHARE = 0.15; // an inward step smaller than this share of the radius is a lip, not the shoulder

const POCKET_LENGTH = 4; // a pocket up to this many step heights long holds its own eddy (common practice)

interface Run {
  readonly slope: number;
  readonly length: number;
}

function run(a: ProfilePoint, b: ProfilePoint): Run {
  return { slope: Math.atan2(b.r - a.r, b.z - a.z), length: Math.hypot(b.z - a.z, b.r - a.r) };
}

/** A cylinder right behind a step outwards, too short for the stream to reach its floor. */
function isPocketFloor(outer: readonly ProfilePoint[], i: number): boolean {
  if (i === 0) return false;
  const step = run(outer[i - 1], outer[i]);
  return step.slope >= STEEP && run(outer[i], outer[i + 1]).length < POCKET_LENGTH * (outer[i].r - outer[i - 1].r);
}

/** Cause that a piece of outer wall stands for. */
function pieceCause(outer: readonly ProfilePoint[], i: number): DwellCause {
  const { slope } = run(outer[i], outer[i + 1]);
  if (Math.abs(slope) < 1e-9) return isPocketFloor(outer, i) ? 'ledge' : 'wall';
  if (slope > 0) return slope >= STEEP ? 'ledge' : 'wall';
  const widenedBefore = outer.slice(0, i).some((point, j) => outer[j + 1].r > point.r * (1 + 1e-9));
  const lip = outer[i].r - outer[i + 1].r < LEDGE_SHARE * outer[i].r && -slope >= STEEP;
  return lip || (widenedBefore && outer[i + 1].r >= outer[0].r * (1 - LEDGE_SHARE)) ? 'ledge' : 'shoulder';
}

function outerCorner(outer: readonly ProfilePoint[], i: number): Feature[] {
  const before = run(outer[i - 1], outer[i]);
  const after = run(outer[i], outer[i + 1]);
  if (before.slope - after.slope < EDDY_TURN) return [];
  const causes = [pieceCause(outer, i - 1), pieceCause(outer, i)];
  const reach = Math.min(0.3 * outer[i].r, before.length, after.length);
  const { z, r } = outer[i];
  const cause = causes.includes('ledge') ? 'ledge' : 'corner';
  return [{ kind: 'corner', wall: 'outer', cause, index: i, z0: z, r0: r, z1: z, r1: r, reach }];
}

function outerFeatures(outer: readonly ProfilePoint[]): Feature[] {
  const corners = outer.slice(1, -1).flatMap((_, i) => outerCorner(outer, i + 1));
  const pieces = outer.slice(1).map((end, i): Feature => {
    const start = outer[i];
    const place = { z0: start.z, r0: start.r, z1: end.z, r1: end.r };
    return { kind: 'piece', wall: 'outer', cause: pieceCause(outer, i), index: i, ...place, reach: 0 };
  });
  return [...corners, ...pieces];
}

function innerFeatures(region: TipRegion): Feature[] {
  const wall = innerWall(region);
  return wall.z.slice(1).map((z1, i): Feature => {
    const place = { z0: wall.z[i], r0: wall.r[i], z1, r1: wall.r[i + 1] };
    const cause = z1 <= region.annulusLength && wall.r[i + 1] === region.screwRadius ? 'wall' : 'tip';
    return { kind: 'piece', wall: 'inner', cause, index: i, ...place, reach: 0 };
  });
}

/** Corners first (they take precedence), then pieces of both walls. */
export function regionFeatures(region: TipRegion): Feature[] {
  return [...outerFeatures(region.outer), ...innerFeatures(region)];
}

/** Distance from a point to a feature, m. */
function featureDistance(feature: Feature, z: number, r: number): number {
  return distanceToPiece(z, r, feature.z0, feature.r0, feature.z1, feature.r1);
}

/** Number of the feature a point belongs to: the nearest corner within its reach, else the nearest piece. */
export function featureAt(features: readonly Feature[], z: number, r: number): number {
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  features.forEach((feature, i) => {
    const distance = featureDistance(feature, z, r);
    const score =
      feature.kind === 'corner' ? (distance <= feature.reach ? distance - 1e3 : Number.POSITIVE_INFINITY) : distance;
    if (score < least) [best, least] = [i, score];
  });
  return best;
}
