/**
 * The barrel's wall round the axis: feed opening and viewing cut. The opening is a straight slot through the wall on the
 * +y side with faces parallel to the y axis; the cut removes a wedge centred on the -x side. Angles here run from -x
 * by +y, so that the cut is at 0; the meshes are mirrored to match.
 */

import type { Barrel } from '../design/types.ts';

/** A face through the wall: its angle on the bore and on the outer surface, rad from -x by +y; equal where it is radial. */
export interface WallFace {
  readonly inner: number;
  readonly outer: number;
}

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

const radial = (angle: number): WallFace => ({ inner: angle, outer: angle });

/** The feed opening's two faces, at rising angle. */
function openingFaces(barrel: Barrel): { low: WallFace; high: WallFace } {
  const bore = barrel.boreDiameter / 2;
  const half = Math.min(barrel.feedOpening.width / 2, mostOpening * bore);
  const inner = Math.asin(half / bore);
  const outer = Math.asin(half / (barrel.outerDiameter / 2));
  const up = Math.PI / 2;
  return { low: { inner: up - inner, outer: up - outer }, high: { inner: up + inner, outer: up + outer } };
}

/**
 * The wall left by a cut of `cutAngle` (rad, 0 to below 2 pi; 0 = none, then from -pi/2 round to 3 pi/2), as spans at rising angle.
 * A cut that would end inside the slanted face of the opening ends on that face instead.
 */
export function wallSpans(barrel: Barrel, cutAngle: number): WallSpan[] {
  const { low, high } = openingFaces(barrel);
  const begin = cutAngle > 0 ? cutAngle / 2 : -Math.PI / 2;
  const end = radial(cutAngle > 0 ? 2 * Math.PI - cutAngle / 2 : 1.5 * Math.PI);
  const span = (from: WallFace, to: WallFace, kind: WallSpan['kind']): WallSpan => ({ from, to, kind });
  const rest = span(high, end, 'wall');
  if (begin < low.inner - snap) return [span(radial(begin), low, 'wall'), span(low, high, 'opening'), rest];
  if (begin <= low.outer + snap) return [span(low, high, 'opening'), rest];
  if (begin < high.outer - snap) return [span(radial(begin), high, 'opening'), rest];
  if (begin <= high.inner + snap) return [rest];
  return [span(radial(begin), end, 'wall')];
}

/** Transverse area of a span where it is solid, m²: sectors of both circles and the triangles at its faces. */
function spanArea(barrel: Barrel, { from, to }: WallSpan): number {
  const [bore, outside] = [barrel.boreDiameter / 2, barrel.outerDiameter / 2];
  const sectors = outside ** 2 * (to.outer - from.outer) - bore ** 2 * (to.inner - from.inner);
  const faces = bore * outside * (Math.sin(from.outer - from.inner) + Math.sin(to.inner - to.outer));
  return (sectors + faces) / 2;
}

/** The stretch of z that the opening takes from the barrel, m. */
export function openingRange(barrel: Barrel): { start: number; end: number } {
  const { start, length } = barrel.feedOpening;
  const from = Math.min(Math.max(start, 0), barrel.length);
  return { start: from, end: Math.min(Math.max(start + length, from), barrel.length) };
}

/** Volume of the barrel's body less feed opening and cut, m³; `cutAngle` rad, 0 = the whole barrel. */
export function barrelVolume(barrel: Barrel, cutAngle: number): number {
  const { start, end } = openingRange(barrel);
  return wallSpans(barrel, cutAngle).reduce((sum, span) => {
    const length = barrel.length - (span.kind === 'opening' ? end - start : 0);
    return sum + spanArea(barrel, span) * length;
  }, 0);
}
