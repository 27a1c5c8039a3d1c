/**
 * The screw's end. The body (cone, hemisphere, or none where flat) starts at the last root radius and ends where it has
 * narrowed to the pin's radius, or on the axis without a pin; the pin stands on that circle. A pin of length 0 with a
 * diameter is thus a blunted tip.
 */

import type { Screw } from '../design/types.ts';
import { coneLength } from './cone.ts';
import { sectionsLength } from './profile.ts';
import { frustum, type RevolvedPiece } from './revolved.ts';

/** Places and radii of the tip. m. */
export interface TipShape {
  readonly kind: 'flat' | 'cone' | 'hemisphere';
  /** z where the tip begins */
  readonly start: number;
  readonly bodyRadius: number;
  readonly bodyLength: number;
  readonly pinRadius: number;
  /** z of the foremost point */
  readonly end: number;
}

/** Length of the body from `radius` down to `pinRadius`, m. */
function bodyLength(kind: TipShape['kind'], includedAngle: number, radius: number, pinRadius: number): number {
  if (kind === 'flat' || pinRadius >= radius) return 0;
  if (kind === 'cone') return coneLength(includedAngle, radius, pinRadius);
  return Math.sqrt(radius ** 2 - pinRadius ** 2);
}

/** Shape of the tip of a design, or of anything else with a screw. */
export function tipShape({ screw }: { readonly screw: Screw }): TipShape {
  const { tip, sections } = screw;
  const last = sections[sections.length - 1];
  const radius = last ? last.rootDiameterEnd / 2 : 0;
  const pinRadius = tip.pinDiameter / 2;
  const length = bodyLength(tip.kind, tip.includedAngle, radius, pinRadius);
  const start = sectionsLength(screw);
  const end = start + length + (pinRadius > 0 ? tip.pinLength : 0);
  return { kind: tip.kind, start, bodyRadius: radius, bodyLength: length, pinRadius, end };
}

/** Body and pin as pieces of revolution. */
export function tipPieces(tip: TipShape): RevolvedPiece[] {
  const { start, bodyRadius: radius, pinRadius } = tip;
  const joint = start + tip.bodyLength;
  const body =
    tip.kind === 'hemisphere'
      ? { from: start, to: joint, radius: (z: number) => Math.sqrt(Math.max(radius ** 2 - (z - start) ** 2, 0)) }
      : frustum(start, joint, radius, pinRadius);
  return [body, frustum(joint, tip.end, pinRadius, pinRadius)].filter((piece) => piece.to > piece.from);
}

/**
 * The tip's r-z polyline from its first circle to the foremost point on the axis, m; a hemisphere in `arcs` chords.
 * Points on one plane make a step or the flat end.
 */
export function tipOutline(tip: TipShape, arcs: number): { z: number; r: number }[] {
  const points = [{ z: tip.start, r: tip.bodyRadius }];
  const joint = tip.start + tip.bodyLength;
  const sweep = tip.bodyLength > 0 ? Math.acos(tip.pinRadius / tip.bodyRadius) : 0;
  for (let i = 1; tip.kind === 'hemisphere' && i < arcs && sweep > 0; i++) {
    const angle = (sweep * i) / arcs;
    points.push({ z: tip.start + tip.bodyRadius * Math.sin(angle), r: tip.bodyRadius * Math.cos(angle) });
  }
  if (tip.pinRadius > 0) points.push({ z: joint, r: tip.pinRadius });
  if (tip.pinRadius > 0 && tip.end > joint) points.push({ z: tip.end, r: tip.pinRadius });
  points.push({ z: tip.end, r: 0 });
  return points;
}
