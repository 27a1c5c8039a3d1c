/** Meridian outlines of tip and bore: polylines in the z-r plane, as far as validation needs them. Plain geometry. */

import type { Barrel, Nozzle, Screw, ScrewTip } from './types.ts';

/** A point of the meridian plane. m */
export interface MeridianPoint {
  readonly z: number;
  readonly r: number;
}

/** Straight pieces that stand for a quarter circle. */
const arcPieces = 24;

/**
 * Length of the tip's body, from the last section's end to where the pin begins or the body ends.
 * @param tip shape of the tip
 * @param rootDiameter last root diameter, m
 * @returns m; 0 for a flat tip
 */
export function tipBodyLength(tip: ScrewTip, rootDiameter: number): number {
  const root = rootDiameter / 2;
  const pin = Math.min(tip.pinDiameter / 2, root);
  if (tip.kind === 'cone') return (root - pin) / Math.tan(tip.includedAngle / 2);
  return tip.kind === 'hemisphere' ? Math.sqrt(root * root - pin * pin) : 0;
}

/** Root diameter where the tip begins, m. */
export const lastRootDiameter = (screw: Screw): number =>
  screw.sections[screw.sections.length - 1]?.rootDiameterEnd ?? 0;

/** Length of the flighted and plain sections, m. */
export const screwSectionsLength = (screw: Screw): number => screw.sections.reduce((sum, s) => sum + s.length, 0);

/** Tip from the end of the last section to the axis, z from the start of the bore. m */
export function tipOutline(screw: Screw): readonly MeridianPoint[] {
  const start = screwSectionsLength(screw);
  const root = lastRootDiameter(screw) / 2;
  const { tip } = screw;
  const pin = Math.min(tip.pinDiameter / 2, root);
  const bodyEnd = start + tipBodyLength(tip, 2 * root);
  const arc = tip.kind === 'hemisphere' ? arcOf(start, root, pin) : [{ z: start, r: root }];
  const ahead = pin > 0 ? [{ z: bodyEnd + tip.pinLength, r: pin }] : [];
  const end = pin > 0 ? bodyEnd + tip.pinLength : bodyEnd;
  return [...arc, { z: bodyEnd, r: pin }, ...ahead, { z: end, r: 0 }];
}

function arcOf(start: number, root: number, pin: number): readonly MeridianPoint[] {
  const last = Math.acos(pin / root);
  return Array.from({ length: arcPieces }, (_, i) => {
    const angle = (last * i) / arcPieces;
    return { z: start + root * Math.sin(angle), r: root * Math.cos(angle) };
  });
}

/** Wetted outer wall from z = 0 through barrel and nozzle to the orifice; steps are upright pieces. m */
export function boreOutline(barrel: Barrel, nozzle: Nozzle): readonly MeridianPoint[] {
  const points: MeridianPoint[] = [
    { z: 0, r: barrel.boreDiameter / 2 },
    { z: barrel.length, r: barrel.boreDiameter / 2 },
  ];
  let z = barrel.length;
  for (const segment of nozzle.segments) {
    points.push({ z, r: segment.startDiameter / 2 });
    z += segment.length;
    points.push({ z, r: segment.endDiameter / 2 });
  }
  return points;
}

function pointToPiece(p: MeridianPoint, a: MeridianPoint, b: MeridianPoint): number {
  const [dz, dr] = [b.z - a.z, b.r - a.r];
  const square = dz * dz + dr * dr;
  const along = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.z - a.z) * dz + (p.r - a.r) * dr) / square));
  return Math.hypot(p.z - a.z - along * dz, p.r - a.r - along * dr);
}

const pointToLine = (p: MeridianPoint, line: readonly MeridianPoint[]): number =>
  line.slice(1).reduce((least, b, i) => Math.min(least, pointToPiece(p, line[i] ?? b, b)), Number.POSITIVE_INFINITY);

/** Least radius of a line at z, upright pieces included; NaN beyond its ends. */
export function leastRadiusAt(line: readonly MeridianPoint[], z: number): number {
  let least = Number.NaN;
  for (const [i, b] of line.entries()) {
    const a = line[i - 1];
    if (a === undefined || z < a.z || z > b.z) continue;
    const r = a.z === b.z ? Math.min(a.r, b.r) : a.r + ((b.r - a.r) * (z - a.z)) / (b.z - a.z);
    least = Number.isNaN(least) ? r : Math.min(least, r);
  }
  return least;
}

/**
 * Where a bore first becomes narrower than a radius.
 * @param line outer line, z never falling
 * @param radius m
 * @returns z, m; Infinity where it never does
 */
export function firstNarrowing(line: readonly MeridianPoint[], radius: number): number {
  for (const [i, b] of line.entries()) {
    const a = line[i - 1];
    if (a === undefined || b.r >= radius) continue;
    if (a.r <= radius) return a.z;
    return a.z + ((b.z - a.z) * (a.r - radius)) / (a.r - b.r);
  }
  return Number.POSITIVE_INFINITY;
}

/**
 * Least distance between an inner and an outer line, m; 0 or less where they touch or cross.
 * @param inner the tip; must begin inside
 * @param outer the bore
 * @returns distance, or minus the deepest overlap seen at a corner; -Infinity where the tip reaches past the bore's end
 */
export function leastClearance(inner: readonly MeridianPoint[], outer: readonly MeridianPoint[]): number {
  const end = outer[outer.length - 1]?.z ?? 0;
  if (inner.some((p) => p.z >= end)) return Number.NEGATIVE_INFINITY;
  const overlaps = [
    ...inner.map((p) => leastRadiusAt(outer, p.z) - p.r),
    ...outer.map((p) => p.r - leastRadiusAt(inner, p.z)).filter((gap) => !Number.isNaN(gap)),
  ];
  const deepest = Math.min(...overlaps);
  if (deepest <= 0) return deepest;
  return Math.min(...inner.map((p) => pointToLine(p, outer)), ...outer.map((p) => pointToLine(p, inner)));
}
