/** Two-dimensional outlines for views, drawings and the flow solvers. */

import type { Design } from '../design/types.ts';
import { boreOutline } from './bore.ts';
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
