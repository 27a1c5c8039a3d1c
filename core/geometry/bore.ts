/** The wetted outer wall: the barrel's bore, then the nozzle's segments. */

import type { Barrel, Nozzle } from '../design/types.ts';
import { frustum, type RevolvedPiece } from './revolved.ts';

/** What the bore is made of: a design, or its two parts before they are checked. */
export interface BoreParts {
  readonly barrel: Barrel;
  readonly nozzle: Nozzle;
}

/** A nozzle segment with its place. m. */
export interface PlacedSegment {
  readonly start: number;
  readonly end: number;
  readonly startRadius: number;
  readonly endRadius: number;
}

/** The nozzle's segments with their places, in the direction of flow. */
export function placeSegments(design: BoreParts): PlacedSegment[] {
  let start = design.barrel.length;
  return design.nozzle.segments.map((segment) => {
    const end = start + segment.length;
    const placed = { start, end, startRadius: segment.startDiameter / 2, endRadius: segment.endDiameter / 2 };
    start = end;
    return placed;
  });
}

/** z of the orifice, m. */
export function boreEnd(design: BoreParts): number {
  return design.nozzle.segments.reduce((sum, segment) => sum + segment.length, design.barrel.length);
}

/** Bore of barrel and nozzle as pieces of revolution from z = 0; flat shoulders have no length and are left out. */
export function borePieces(design: BoreParts): RevolvedPiece[] {
  const { length, boreDiameter } = design.barrel;
  const nozzle = placeSegments(design)
    .filter(({ start, end }) => end > start)
    .map(({ start, end, startRadius, endRadius }) => frustum(start, end, startRadius, endRadius));
  return [frustum(0, length, boreDiameter / 2, boreDiameter / 2), ...nozzle];
}

/** The bore's r-z polyline from z = 0 to the orifice, m; steps and flat shoulders are two points on one plane. */
export function boreOutline(design: BoreParts): { z: number; r: number }[] {
  const radius = design.barrel.boreDiameter / 2;
  const points = [
    { z: 0, r: radius },
    { z: design.barrel.length, r: radius },
  ];
  for (const segment of placeSegments(design)) {
    const last = points[points.length - 1];
    if (last?.r !== segment.startRadius) points.push({ z: segment.start, r: segment.startRadius });
    if (segment.end > segment.start || segment.endRadius !== segment.startRadius) {
      points.push({ z: segment.end, r: segment.endRadius });
    }
  }
  return points;
}

/** Where the bore narrows, m: cones from start to end, steps and flat shoulders with both on one plane. */
export function narrowings(design: BoreParts): { start: number; end: number }[] {
  const points = boreOutline(design);
  const found: { start: number; end: number }[] = [];
  points.forEach((point, i) => {
    const before = points[i - 1];
    if (before && point.r < before.r) found.push({ start: before.z, end: point.z });
  });
  return found;
}

/**
 * Axial distance from `z` (m) to the first narrowing after it, m; negative where z lies inside a cone; the distance to
 * the orifice where nothing narrows any more.
 */
export function gapToNarrowing(design: BoreParts, z: number): number {
  const next = narrowings(design).find(({ start, end }) => start >= z || end > z);
  return (next ? next.start : boreEnd(design)) - z;
}
