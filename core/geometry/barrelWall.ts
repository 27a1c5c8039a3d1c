/**
 * The barrel's wall round the axis: neck of the heat break, feed opening and viewing cut. The neck is turned into the
 * outer surface and may meet the opening or an end of the barrel. The opening is a straight slot through the wall on the
 * +y side with faces parallel to the y axis; the cut removes a wedge centred on the -x side. Angles here run from -x
 * by +y, so that the cut is at 0; the meshes are mirrored to match.
 */

import type { Barrel } from '../design/types.ts';

/** The neck of the heat break, cut into the outer surface: its stretch and its outer radius, m. */
export interface Neck {
  readonly start: number;
  readonly end: number;
  readonly radius: number;
}

/** Lengths and radii nearer than this are one, m. */
const same = 1e-9;

/** The neck that the heat break cuts, ends held to the barrel's; null where it takes nothing off. */
export function neckOf({ heatBreak, boreDiameter, outerDiameter, length }: Barrel): Neck | null {
  if (!heatBreak) return null;
  const radius = boreDiameter / 2 + heatBreak.wall;
  const near = (z: number) => (z < same ? 0 : z > length - same ? length : z);
  const [start, end] = [near(heatBreak.start), near(heatBreak.start + heatBreak.length)];
  return end - start < same || radius > outerDiameter / 2 - same ? null : { start, end, radius };
}

/** Radius of the barrel's outer surface at z (m), m; within the neck where z lies between its ends. */
export function outsideAt(barrel: Barrel, z: number): number {
  const neck = neckOf(barrel);
  return neck && z > neck.start && z < neck.end ? neck.radius : barrel.outerDiameter / 2;
}

/** Stretches of equal outer radius from z = 0 to the barrel's end, m. */
export function outerStretches(
  barrel: Barrel,
): { readonly from: number; readonly to: number; readonly radius: number }[] {
  const [neck, radius, length] = [neckOf(barrel), barrel.outerDiameter / 2, barrel.length];
  if (!neck) return [{ from: 0, to: length, radius }];
  return [
    { from: 0, to: neck.start, radius },
    { from: neck.start, to: neck.end, radius: neck.radius },
    { from: neck.end, to: length, radius },
  ].filter(({ from, to }) => to > from);
}

/** Radii that bound the wall's rings, rising, m: bore, neck where there is one, outer surface. */
export function wallRadii(barrel: Barrel): number[] {
  const neck = neckOf(barrel);
  return [barrel.boreDiameter / 2, ...(neck ? [neck.radius] : []), barrel.outerDiameter / 2];
}

/** A face through the wall: its angle at each of `wallRadii`, rad from -x by +y; equal where it is radial. */
export type WallFace = readonly number[];

/** The wall between two faces, wholly solid or missing along the feed opening's length. */
export interface WallSpan {
  readonly from: WallFace;
  readonly to: WallFace;
  readonly kind: 'wall' | 'opening';
}

/** An opening is at most this share of the bore wide, so that its faces still meet the bore. */
const mostOpening = 0.99;
/** A cut that would end this near an opening's face, rad, ends on that face. */
const snap = 1e-3;

const innerOf = (face: WallFace): number => face[0] as number;
const outerOf = (face: WallFace): number => face[face.length - 1] as number;

/** The feed opening's two faces, at rising angle. */
function openingFaces(barrel: Barrel): { low: WallFace; high: WallFace } {
  const half = Math.min(barrel.feedOpening.width / 2, mostOpening * (barrel.boreDiameter / 2));
  const halves = wallRadii(barrel).map((r) => Math.asin(half / r));
  const up = Math.PI / 2;
  return { low: halves.map((angle) => up - angle), high: halves.map((angle) => up + angle) };
}

/**
 * The wall left by a cut of `cutAngle` (rad, 0 to below 2 pi; 0 = none, then from -pi/2 round to 3 pi/2), as spans at rising angle.
 * A cut that would end inside the slanted face of the opening ends on that face instead.
 */
export function wallSpans(barrel: Barrel, cutAngle: number): WallSpan[] {
  const { low, high } = openingFaces(barrel);
  const radial = (angle: number): WallFace => low.map(() => angle);
  const begin = cutAngle > 0 ? cutAngle / 2 : -Math.PI / 2;
  const end = radial(cutAngle > 0 ? 2 * Math.PI - cutAngle / 2 : 1.5 * Math.PI);
  const span = (from: WallFace, to: WallFace, kind: WallSpan['kind']): WallSpan => ({ from, to, kind });
  const rest = span(high, end, 'wall');
  if (begin < innerOf(low) - snap) return [span(radial(begin), low, 'wall'), span(low, high, 'opening'), rest];
  if (begin <= outerOf(low) + snap) return [span(low, high, 'opening'), rest];
  if (begin < outerOf(high) - snap) return [span(radial(begin), high, 'opening'), rest];
  if (begin <= innerOf(high) + snap) return [rest];
  return [span(radial(begin), end, 'wall')];
}

/** Transverse area of a span between radii `k` and `k + 1`, m²: sectors of both circles and the triangles at its faces. */
function ringArea(radii: readonly number[], { from, to }: WallSpan, k: number): number {
  const at = (list: readonly number[], i: number) => list[i] as number;
  const [inside, outside] = [at(radii, k), at(radii, k + 1)];
  const sectors = outside ** 2 * (at(to, k + 1) - at(from, k + 1)) - inside ** 2 * (at(to, k) - at(from, k));
  const faces = inside * outside * (Math.sin(at(from, k + 1) - at(from, k)) + Math.sin(at(to, k) - at(to, k + 1)));
  return (sectors + faces) / 2;
}

/** The stretch of z that the opening takes from the barrel, m. */
export function openingRange(barrel: Barrel): { start: number; end: number } {
  const { start, length } = barrel.feedOpening;
  const from = Math.min(Math.max(start, 0), barrel.length);
  return { start: from, end: Math.min(Math.max(start + length, from), barrel.length) };
}

/** Whether a ring of the wall (0 next to the bore) is there between planes `from` and `to` (m), which no end of neck or opening parts. */
export function isSolid(barrel: Barrel, kind: WallSpan['kind'], ring: number, from: number, to: number): boolean {
  const middle = (from + to) / 2;
  const within = (range: { start: number; end: number } | null) =>
    range !== null && middle > range.start && middle < range.end;
  if (kind === 'opening' && within(openingRange(barrel))) return false;
  return ring === 0 || !within(neckOf(barrel));
}

/** Planes at which the wall changes, rising, m: both ends of the barrel, of its opening and of its neck. */
export function wallPlanes(barrel: Barrel): number[] {
  const [opening, neck] = [openingRange(barrel), neckOf(barrel)];
  const all = [0, opening.start, opening.end, ...(neck ? [neck.start, neck.end] : []), barrel.length];
  const rising = all.sort((a, b) => a - b);
  // planes apart by rounding alone would make layers too thin for single precision
  return rising.filter((z, i) => i === 0 || z - (rising[i - 1] as number) > same);
}

/** Volume of the barrel's body less neck, feed opening and cut, m³; `cutAngle` rad, 0 = the whole barrel. */
export function barrelVolume(barrel: Barrel, cutAngle: number): number {
  const [radii, planes] = [wallRadii(barrel), wallPlanes(barrel)];
  const solidLength = (kind: WallSpan['kind'], ring: number) =>
    planes.slice(1).reduce((sum, to, i) => {
      const from = planes[i] as number;
      return sum + (isSolid(barrel, kind, ring, from, to) ? to - from : 0);
    }, 0);
  return wallSpans(barrel, cutAngle).reduce(
    (sum, span) =>
      radii.slice(1).reduce((part, _, ring) => part + ringArea(radii, span, ring) * solidLength(span.kind, ring), sum),
    0,
  );
}
