/** What change of shape removes a dead spot of the head, told from the shape at hand. */

import type { Design } from '../design/types.ts';
import { boreOutline, gapToNarrowing, narrowings } from '../geometry/bore.ts';
import { coneAngle } from '../geometry/cone.ts';
import { tipShape } from '../geometry/tip.ts';
import { formatQuantity } from '../units.ts';
import type { FoundSpot } from './spotTypes.ts';

/** Included angle up to which an entry sweeps its wall well (common practice), degrees. */
const sweptEntry = 70;
/** Included angle from which the corner before an entry holds an eddy of note (common practice), degrees. */
const sharpCorner = 100;

/**
 * Narrowing of the bore nearest to a place.
 * @param z m
 * @returns where it begins (m) and its included angle in degrees, 180 for a flat shoulder; null where nothing narrows
 */
export function entryNear(design: Design, z: number): { readonly start: number; readonly angle: number } | null {
  const points = boreOutline(design);
  let best: { start: number; angle: number; distance: number } | null = null;
  for (let i = 1; i < points.length; i++) {
    const [from, to] = [points[i - 1], points[i]];
    if (!(to.r < from.r)) continue;
    const distance = Math.max(from.z - z, z - to.z, 0);
    const angle = (180 / Math.PI) * coneAngle(to.z - from.z, from.r, to.r);
    if (!best || distance < best.distance) best = { start: from.z, angle, distance };
  }
  return best && { start: best.start, angle: best.angle };
}

const degrees = (angle: number): string => `${Math.round(angle)} degrees`;

function cornerRemedy(design: Design, z: number): string {
  const entry = entryNear(design, z);
  if (!entry || entry.angle <= sharpCorner) return 'Round the corner where the bore meets the entry.';
  const shoulder = entry.angle > 179 ? 'flat shoulder' : `shoulder of ${degrees(entry.angle)}`;
  return `Replace the ${shoulder} by a cone of 90 degrees or less, or round its corner.`;
}

function shoulderRemedy(design: Design, z: number): string {
  const entry = entryNear(design, z);
  if (entry && entry.angle > sweptEntry) return `Narrow the entry from ${degrees(entry.angle)} to 60 or less.`;
  const tip = tipShape(design);
  const first = narrowings(design)[0]?.start === entry?.start;
  if (entry && first && (tip.kind !== 'cone' || tip.end < entry.start))
    return 'Let a conical tip reach into the entry.';
  return 'The entry is slender already: what is left is the slow layer on its wall. Polish it and keep it short.';
}

function tipRemedy(design: Design): string {
  const tip = tipShape(design);
  if (tip.kind !== 'cone') return 'Give the screw a conical tip that follows the entry.';
  const entry = entryNear(design, tip.end);
  const angle = (design.screw.tip.includedAngle * 180) / Math.PI;
  if (entry && angle > entry.angle + 20) {
    return `Sharpen the tip from ${degrees(angle)} towards the ${degrees(entry.angle)} of the entry.`;
  }
  const gap = gapToNarrowing(design, tip.end);
  if (gap > 0.1 * design.barrel.boreDiameter) {
    return `Bring the tip nearer to the entry: the gap is ${formatQuantity(gap, 'mm', 2)}.`;
  }
  return 'The tip follows the entry already; the wake on its point is as small as it gets.';
}

/**
 * Remedy for a spot.
 * @param z place of the spot, m
 */
export function headRemedy(design: Design, cause: FoundSpot['cause'], z: number): string {
  switch (cause) {
    case 'corner':
      return cornerRemedy(design, z);
    case 'shoulder':
      return shoulderRemedy(design, z);
    case 'ledge':
      return 'Match the diameters at the joint, or lead them into each other with a cone.';
    default:
      return tipRemedy(design);
  }
}
