/** Points at which the energy of half a channel is summed: in the fluid, in the solid behind a fillet, on the fillet. */

import { gaussLegendre } from '../../math/gaussLegendre.ts';
import { cellOf, type SplineBasis } from '../../math/splineBasis.ts';
import { halfWidthAt, heightOfWall, type SectionShape, wallAt } from './sectionShape.ts';

/** What a point stands for. */
export const FLUID = 0;
/** Behind the fillet: a token stiffness keeps functions without fluid determined. */
export const SOLID = 1;
/** On the fillet: velocity is held to zero by a stiff spring. */
export const WALL = 2;

/** One point. */
export interface CellPoint {
  readonly kind: number;
  readonly s: number;
  readonly y: number;
  /** Area (fluid, solid) or length (wall) that the point stands for. */
  readonly weight: number;
}

/** Gauss points of a strip s0..s1 by y0..y1, curved lower bound by wallAt when clip is set. */
function stripPoints(
  shape: SectionShape,
  box: readonly [number, number, number, number],
  kind: number,
  clip: boolean,
  count: number,
  out: CellPoint[],
): void {
  const [s0, s1, y0, y1] = box;
  const rule = gaussLegendre(count);
  for (let j = 0; j < count; j++) {
    // squared spacing from the root resolves the square root in the shape of a fillet that leaves it tangentially
    const t = rule.nodes[j];
    const squared = clip && y0 === 0;
    const y = y0 + (y1 - y0) * (squared ? t * t : t);
    const dy = (y1 - y0) * rule.weights[j] * (squared ? 2 * t : 1);
    const left = clip ? Math.min(s1, Math.max(s0, wallAt(shape, y))) : s0;
    if (left >= s1) continue;
    for (let i = 0; i < count; i++) {
      const s = left + (s1 - left) * rule.nodes[i];
      out.push({ kind, s, y, weight: (s1 - left) * rule.weights[i] * dy * halfWidthAt(shape, y) });
    }
  }
}

/** All area points of a cell. */
export function cellPoints(
  shape: SectionShape,
  box: readonly [number, number, number, number],
  count: number,
): CellPoint[] {
  const out: CellPoint[] = [];
  const [s0, s1, y0, y1] = box;
  if (wallAt(shape, y0) <= s0) {
    stripPoints(shape, box, FLUID, false, count, out);
    return out;
  }
  // cut at the heights where the fillet enters and leaves the cell, so that every strip is smooth
  const cuts = [y0, heightOfWall(shape, s1), heightOfWall(shape, s0), shape.filletHeight, y1];
  const levels = [...new Set(cuts.map((y) => Math.min(y1, Math.max(y0, y))))].sort((a, b) => a - b);
  for (let k = 1; k < levels.length; k++) {
    stripPoints(shape, [s0, s1, levels[k - 1], levels[k]], FLUID, true, count + 2, out);
  }
  stripPoints(shape, box, SOLID, false, count, out);
  return out;
}

/** Points along the fillet, grouped by cell index (across * up.cells + up). */
export function filletPoints(shape: SectionShape, across: SplineBasis, up: SplineBasis): Map<number, CellPoint[]> {
  const groups = new Map<number, CellPoint[]>();
  if (shape.fillet === 0) return groups;
  const span = Math.acos(Math.max(-1, 1 - shape.filletHeight / shape.fillet));
  const pieces = 64;
  for (let k = 0; k < pieces; k++) {
    // angle from the root tangent
    const angle = (span * (k + 0.5)) / pieces;
    const y = shape.fillet * (1 - Math.cos(angle));
    const s = wallAt(shape, y);
    const cell = cellOf(across, s) * up.cells + cellOf(up, y);
    const point = { kind: WALL, s, y, weight: (shape.fillet * span) / pieces };
    const group = groups.get(cell);
    if (group) group.push(point);
    else groups.set(cell, [point]);
  }
  return groups;
}
