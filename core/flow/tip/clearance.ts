/** Room between screw tip and wall. */

import type { Issue } from '../../result.ts';
import { issue, mm } from './issueParts.ts';
import { innerWall, outerWall, type Wall } from './outline.ts';
import { type TipRegion, tipLength } from './region.ts';

/** Least clearance between tip and wall over the bore radius that is solved; below it, melt hardly passes. */
const LEAST_CLEARANCE = 0.005;

/** Shortest distance from a point to a straight piece. */
export function distanceToPiece(z: number, r: number, z0: number, r0: number, z1: number, r1: number): number {
  const ez = z1 - z0;
  const er = r1 - r0;
  const share = Math.max(0, Math.min(1, ((z - z0) * ez + (r - r0) * er) / (ez * ez + er * er || 1)));
  return Math.hypot(z - z0 - share * ez, r - r0 - share * er);
}

function cornersToPieces(from: Wall, to: Wall): { distance: number; z: number; r: number } {
  let best = { distance: Number.POSITIVE_INFINITY, z: 0, r: 0 };
  for (let i = 0; i < from.z.length; i++)
    for (let j = 0; j + 1 < to.z.length; j++) {
      const distance = distanceToPiece(from.z[i], from.r[i], to.z[j], to.r[j], to.z[j + 1], to.r[j + 1]);
      if (distance < best.distance) best = { distance, z: from.z[i], r: from.r[i] };
    }
  return best;
}

function crosses(inner: Wall, outer: Wall): boolean {
  const radius = (wall: Wall, z: number, pick: (...r: number[]) => number): number => {
    const found = wall.z.slice(1).flatMap((z1, i) => {
      const z0 = wall.z[i];
      if (z < z0 || z > z1) return [];
      return z1 === z0
        ? [wall.r[i], wall.r[i + 1]]
        : [wall.r[i] + ((wall.r[i + 1] - wall.r[i]) * (z - z0)) / (z1 - z0)];
    });
    return found.length > 0 ? pick(...found) : Number.NaN;
  };
  const planes = [...inner.z, ...outer.z].filter((z) => z <= inner.z[inner.z.length - 1]);
  return planes.some((z) => radius(inner, z, Math.max) >= radius(outer, z, Math.min));
}

const SLIMMER = 'Shorten or slim the tip, or move the screw back.';

/** Issues of a tip that leaves the melt no way; its parts must be valid by themselves. */
export function clearanceIssues(region: TipRegion): Issue[] {
  if (region.screwRadius === 0) return [];
  const inner = innerWall(region);
  const outer = outerWall(region.outer);
  const end = outer.z[outer.z.length - 1];
  const front = region.annulusLength + tipLength(region);
  const limit = LEAST_CLEARANCE * Math.max(...outer.r);
  const refuse = (code: string, message: string, found: string, allowed: string): Issue[] => [
    issue(['tip'], code, message, found, allowed, SLIMMER),
  ];
  if (front > end - limit)
    return refuse('tip-leaves-nozzle', 'The tip reaches the orifice plane.', mm(front), `under ${mm(end - limit)}`);
  const gap = `a gap of ${mm(limit)} or more`;
  if (crosses(inner, outer)) return refuse('tip-touches-wall', 'The screw tip runs into the wall.', 'no gap', gap);
  const first = cornersToPieces(inner, outer);
  const second = cornersToPieces(outer, inner);
  const { distance, z, r } = first.distance <= second.distance ? first : second;
  const place = `${mm(z)} after the inlet, at radius ${mm(r)}`;
  const message = `The gap between screw tip and wall nearly closes ${place}.`;
  return distance >= limit ? [] : refuse('tip-touches-wall', message, mm(distance), gap);
}
