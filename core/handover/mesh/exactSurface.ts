/** How far a point lies from a part's exact surface, to first order in that distance. */

import type { Design } from '../../design/types.ts';
import { outerStretches } from '../../geometry/barrelWall.ts';
import { placeSegments } from '../../geometry/bore.ts';
import { type FlightProfile, flightProfileAt } from '../../geometry/flightProfile.ts';
import { flightAngle, flightRadius, type PlacedSection, placeSections, rootRadiusAt } from '../../geometry/profile.ts';
import type { RevolvedPiece } from '../../geometry/revolved.ts';
import { frustum } from '../../geometry/revolved.ts';
import { tipPieces, tipShape } from '../../geometry/tip.ts';
import type { PartId } from './part.ts';

/** Distance of a point (m, m, m) from the exact surface, m; flat end faces and shoulders are left out. */
export type SurfaceDistance = (x: number, y: number, z: number) => number;

/** Two planes nearer than this are one, m: vertices are single precision. */
const samePlane = 1e-7;

/**
 * From land, flank, fillet and floor of one side of the flight: `x` from its centre along the axis, m. Distances in the
 * plane of the axis are turned into those across the helicoid by the steepness of its normal, cos n against the axis.
 */
function profileDistance(profile: FlightProfile, x: number, r: number): number {
  const { halfLand, flightRadius: crest, floorRadius, fillet, flank, filletHeight, halfBase } = profile;
  const side = Math.abs(x);
  const land = Math.hypot(Math.max(side - halfLand, 0), r - crest);
  const floor = Math.hypot(Math.max(halfBase - side, 0), r - floorRadius);
  // along the flank: s from the land's edge inwards, n across it
  const [dx, dr] = [side - halfLand, crest - r];
  const along = dx * Math.sin(flank) + dr * Math.cos(flank);
  const length = (crest - floorRadius - filletHeight) / Math.cos(flank);
  const off = Math.max(-along, along - length, 0);
  const climb = profile.lead / (2 * Math.PI * r);
  const wall = Math.hypot(dx * Math.cos(flank) - dr * Math.sin(flank), off) / Math.hypot(1, climb * Math.cos(flank));
  const [ex, er] = [halfBase - side, floorRadius + fillet - r];
  const inArc = fillet > 0 && ex >= -samePlane && er >= -samePlane;
  const reach = Math.hypot(ex, er);
  const steep = Math.hypot(1, (climb * ex) / Math.max(reach, samePlane));
  const arc = inArc ? Math.abs(reach - fillet) / steep : Number.POSITIVE_INFINITY;
  return Math.min(land, floor, wall, arc);
}

/** Distance from one section of the screw; the profile at one z is kept, because neighbouring points share it. */
function sectionDistance(design: Design, placed: PlacedSection) {
  const { section, start } = placed;
  const crest = flightRadius(design);
  let at = Number.NaN;
  let profile: FlightProfile | null = null;
  let phase = 0;
  return (theta: number, r: number, z: number): number => {
    if (section.kind === 'plain') return Math.abs(r - rootRadiusAt(section, z - start));
    if (z !== at || profile === null) {
      at = z;
      profile = flightProfileAt(section, z - start, crest);
      phase = flightAngle(placed, z);
    }
    const pitch = (2 * Math.PI) / section.starts;
    const turned = theta - phase;
    const offset = turned - pitch * Math.round(turned / pitch);
    return profileDistance(profile, (offset * profile.lead) / (2 * Math.PI), r);
  };
}

/** Bodies of revolution: nearest of the pieces that reach to this plane. */
const revolvedDistance =
  (pieces: readonly RevolvedPiece[]) =>
  (r: number, z: number): number =>
    pieces.reduce((least, { from, to, radius }) => {
      if (z < from - samePlane || z > to + samePlane) return least;
      return Math.min(least, Math.abs(r - radius(Math.min(Math.max(z, from), to))));
    }, Number.POSITIVE_INFINITY);

function screwDistance(design: Design): SurfaceDistance {
  const mirror = design.screw.hand === 'left' ? -1 : 1;
  const placed = placeSections(design.screw).map((each) => ({ ...each, distance: sectionDistance(design, each) }));
  const { shankDiameter, shankLength } = design.screw;
  const shank = shankLength > 0 ? [frustum(-shankLength, 0, shankDiameter / 2, shankDiameter / 2)] : [];
  const ends = revolvedDistance([...shank, ...tipPieces(tipShape(design))]);
  return (x, y, z) => {
    const r = Math.hypot(x, y);
    const theta = Math.atan2(mirror * y, x);
    let least = ends(r, z);
    for (const { start, end, distance } of placed) {
      if (z < start - samePlane || z > end + samePlane) continue;
      least = Math.min(least, distance(theta, r, Math.min(Math.max(z, start), end)));
    }
    return least;
  };
}

/** Pieces of revolution of a part that is hollow, by its outside and its bore. */
function wallPieces(design: Design, part: 'barrel' | 'nozzle'): RevolvedPiece[] {
  const { barrel, nozzle } = design;
  const tube = (from: number, to: number, diameter: number) => frustum(from, to, diameter / 2, diameter / 2);
  if (part === 'barrel') {
    const skin = outerStretches(barrel).map(({ from, to, radius }) => tube(from, to, 2 * radius));
    return [...skin, tube(0, barrel.length, barrel.boreDiameter)];
  }
  const segments = placeSegments(design).filter(({ start, end }) => end > start);
  const end = segments[segments.length - 1]?.end ?? barrel.length;
  const bore = segments.map((each) => frustum(each.start, each.end, each.startRadius, each.endRadius));
  return [tube(barrel.length, end, nozzle.outerDiameter), ...bore];
}

/** Distance from a part's exact surface. */
export function surfaceDistance(design: Design, part: PartId): SurfaceDistance {
  if (part === 'screw') return screwDistance(design);
  const distance = revolvedDistance(wallPieces(design, part));
  return (x, y, z) => distance(Math.hypot(x, y), z);
}
