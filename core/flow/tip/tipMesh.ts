/** Triangle mesh of a tip region. */

import { type TriMesh, withEdgeNodes } from '../../math/triMesh.ts';
import { refineTriangles } from '../../math/triRefine.ts';
import type { Outline } from './outline.ts';
import { type Fineness, sizeField } from './sizing.ts';
import { zipOutline } from './zipper.ts';

/** Fineness at which the stated accuracies hold; see the reference tests. */
export const NORMAL_FINENESS: Fineness = { wall: 0.06, corner: 0.02, growth: 0.25, largest: 0.15 };

/** Most corners a mesh may have. */
const CORNER_LIMIT = 40_000;

/** Every share of a fineness multiplied: 0.5 halves all edges. */
export function scaledFineness(base: Fineness, factor: number): Fineness {
  return { ...base, wall: base.wall * factor, corner: base.corner * factor, largest: base.largest * factor };
}

/**
 * Mesh between the walls; x = z (downstream), y = r, both m; edges tagged with `EDGE`.
 * @returns mesh, and whether every triangle reached its wanted size
 */
export function tipMesh(outline: Outline, fineness: Fineness): { mesh: TriMesh; complete: boolean } {
  const refined = refineTriangles(zipOutline(outline), sizeField(outline, fineness), CORNER_LIMIT);
  return { mesh: withEdgeNodes(refined.mesh), complete: refined.complete };
}
