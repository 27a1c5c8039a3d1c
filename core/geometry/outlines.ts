/** Two-dimensional outlines for views, drawings and the flow solvers. */

import type { Design } from '../design/types.ts';
import { boreOutline } from './bore.ts';
import { helixAngle } from './crossSection.ts';
import { flightProfileAt } from './flightProfile.ts';
import { flightAngle, flightRadius, type PlacedSection, placeSections, rootRadiusAt, sectionAt } from './profile.ts';
import { circleRing, evenAngles, flightRing, type Ring, ringCounts } from './ring.ts';
import { tipOutline, tipPieces, tipShape } from './tip.ts';
import type { AxialOutline, PlaneOutline } from './types.ts';

/** How finely outlines are drawn: points round a turn and chords of a hemisphere; in a plane rings do not matter. */
const fine = { aroundCount: 180, ringsPerTurn: 12 };
const hemisphereChords = 48;

const axial = (points: readonly { z: number; r: number }[]): AxialOutline => ({
  z: Float64Array.from(points, (point) => point.z),
  r: Float64Array.from(points, (point) => point.r),
});

const plane = (points: readonly { x: number; y: number }[]): PlaneOutline => ({
  x: Float64Array.from(points, (point) => point.x),
  y: Float64Array.from(points, (point) => point.y),
});

/**
 * r-z polylines, m: `outer` is the bore of barrel and nozzle from z = 0 to the orifice, `inner` the screw's root from
 * z = 0 (without the shank) and its tip to the foremost point on the axis. Steps are two points on one plane.
 */
export function channelOutline(design: Pick<Design, 'screw' | 'barrel' | 'nozzle'>): {
  outer: AxialOutline;
  inner: AxialOutline;
} {
  const roots = placeSections(design.screw).flatMap(({ section, start, end }) => [
    { z: start, r: section.rootDiameterStart / 2 },
    { z: end, r: section.rootDiameterEnd / 2 },
  ]);
  const points = [...roots, ...tipOutline(tipShape(design), hemisphereChords)];
  const distinct = points.filter((point, i) => point.z !== points[i - 1]?.z || point.r !== points[i - 1]?.r);
  return { outer: axial(boreOutline(design)), inner: axial(distinct) };
}

/** Radius of shank or tip at `z` (m) outside the sections, m; 0 off the screw. */
function endRadius(design: Design, z: number): number {
  const { shankLength, shankDiameter } = design.screw;
  if (z < 0) return z >= -shankLength ? shankDiameter / 2 : 0;
  const piece = tipPieces(tipShape(design)).find(({ from, to }) => z >= from && z <= to);
  return piece ? piece.radius(z) : 0;
}

/** Ring of the screw at `z` inside a placed section. */
function sectionRing(design: Design, placed: PlacedSection, z: number): Ring {
  const { section, start } = placed;
  if (section.kind === 'plain') return circleRing(evenAngles(fine.aroundCount), rootRadiusAt(section, z - start), z);
  const crest = flightRadius(design);
  const counts = ringCounts(section, [section], crest, fine);
  return flightRing(flightProfileAt(section, z - start, crest), counts, flightAngle(placed, z), z);
}

/**
 * Closed outline of the screw's transverse section at `z` (m), seen against the flow direction's arrow (from +z), m,
 * counter-clockwise, first point not repeated; the earlier section at a boundary; empty off the screw.
 */
export function transverseOutline(design: Design, z: number): PlaneOutline {
  const placed = sectionAt(design.screw, z);
  const radius = placed ? 0 : endRadius(design, z);
  if (!placed && radius === 0) return plane([]);
  const ring = placed ? sectionRing(design, placed, z) : circleRing(evenAngles(fine.aroundCount), radius, z);
  const points = Array.from(ring.theta, (angle, i) => {
    const r = ring.r[i] as number;
    return { x: r * Math.cos(angle), y: r * Math.sin(angle) };
  });
  if (design.screw.hand === 'right') return plane(points);
  return plane(points.reverse().map(({ x, y }) => ({ x, y: -y })));
}

/** Right half of one channel's wall from floor to crest, in the plane normal to the flight: x from mid-channel, y from the floor. */
function channelSide(design: Design, placed: PlacedSection, z: number): { x: number; y: number }[] {
  const { section } = placed;
  if (section.kind === 'plain') return [];
  const crest = flightRadius(design);
  const profile = flightProfileAt(section, z - placed.start, crest);
  const counts = { ...ringCounts(section, [section], crest, fine), floor: 1, land: 1 };
  const ring = flightRing(profile, { ...counts, fillet: 4 * counts.fillet }, 0, z);
  const perSide = 4 * counts.fillet + counts.flank + 1;
  const cosine = Math.cos(helixAngle(profile.lead, (profile.floorRadius + design.barrel.boreDiameter / 2) / 2));
  const side = Array.from({ length: perSide }, (_, i) => {
    const offset = (-(ring.theta[i] as number) * profile.lead) / (2 * Math.PI);
    return { x: (profile.pitch / 2 - offset) * cosine, y: (ring.r[i] as number) - profile.floorRadius };
  });
  return side;
}

/**
 * Cross-section of one channel at `z` (m) in the unrolled plane normal to the flight, m: x across from mid-channel,
 * y from the floor up to the barrel, counter-clockwise. Axial widths are shortened by the cosine of the helix angle at
 * mean radius at every height, so square flanks stay upright; above the crest the gap is closed by walls at the land's
 * edge. Plain: a rectangle as wide as the mean circumference. Empty outside the sections.
 */
export function channelPolygon(design: Design, z: number): PlaneOutline {
  const placed = sectionAt(design.screw, z);
  if (!placed) return plane([]);
  const bore = design.barrel.boreDiameter / 2;
  const side = channelSide(design, placed, z);
  const root = rootRadiusAt(placed.section, z - placed.start);
  if (side.length === 0) side.push({ x: (Math.PI * (root + bore)) / 2, y: 0 });
  const top = side[side.length - 1] as { x: number; y: number };
  const floor = placed.section.kind === 'plain' ? root : flightRadius(design) - top.y;
  if (bore - floor > top.y) side.push({ x: top.x, y: bore - floor });
  return plane([...side, ...[...side].reverse().map(({ x, y }) => ({ x: -x, y }))]);
}
