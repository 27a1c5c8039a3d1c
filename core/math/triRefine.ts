/** Refines a triangulated outline until its triangles match a size field and are well shaped. */

import { TriDelaunay } from './triDelaunay.ts';
import type { CornerMesh } from './triMesh.ts';

/** Wanted edge length at a point. */
export type SizeField = (x: number, y: number) => number;

/** A refined mesh, and whether every triangle reached its size before the point limit. */
export interface RefinedMesh {
  readonly mesh: CornerMesh;
  readonly complete: boolean;
}

const LARGEST_RADIUS = 0.72; // circumradius over wanted edge; an equilateral triangle of that edge has 0.577
const SHORTEST_EDGE = 0.45; // never refine for shape below this share of the wanted edge
const WORST_SHAPE = 1.15; // circumradius over shortest edge; 25.8 degrees

interface Circle {
  x: number;
  y: number;
  radius: number;
  shortest: number;
}

function circumcircle(mesh: TriDelaunay, t: number, out: Circle): void {
  const { x, y, corners } = mesh;
  const a = corners[3 * t];
  const bx = x[corners[3 * t + 1]] - x[a];
  const by = y[corners[3 * t + 1]] - y[a];
  const cx = x[corners[3 * t + 2]] - x[a];
  const cy = y[corners[3 * t + 2]] - y[a];
  const d = 2 * (bx * cy - by * cx);
  const b2 = bx * bx + by * by;
  const c2 = cx * cx + cy * cy;
  const ux = (cy * b2 - by * c2) / d;
  const uy = (bx * c2 - cx * b2) / d;
  out.x = x[a] + ux;
  out.y = y[a] + uy;
  out.radius = Math.hypot(ux, uy);
  out.shortest = Math.sqrt(Math.min(b2, c2, (bx - cx) ** 2 + (by - cy) ** 2));
}

/** Ends of the edge opposite corner k. */
function edgeEnds(mesh: TriDelaunay, t: number, k: number): [number, number, number, number] {
  const a = mesh.corners[3 * t + ((k + 1) % 3)];
  const b = mesh.corners[3 * t + ((k + 2) % 3)];
  return [mesh.x[a], mesh.y[a], mesh.x[b], mesh.y[b]];
}

/** Splits a boundary edge in the middle if it is longer than `share` of the wanted size; says whether it did. */
function splitLong(mesh: TriDelaunay, t: number, k: number, size: SizeField, share: number): boolean {
  const [ax, ay, bx, by] = edgeEnds(mesh, t, k);
  const mx = (ax + bx) / 2;
  const my = (ay + by) / 2;
  if (Math.hypot(bx - ax, by - ay) <= share * size(mx, my)) return false;
  mesh.splitEdge(t, k, mx, my);
  return true;
}

function splitBoundary(mesh: TriDelaunay, size: SizeField): void {
  for (let t = 0; t < mesh.triangleCount; t++)
    for (let k = 0; k < 3; k++) if (mesh.neighbours[3 * t + k] < 0 && splitLong(mesh, t, k, size, 1.25)) k = -1;
}

/** Boundary edge of triangle t whose diametral circle holds the point, or -1. */
function encroached(mesh: TriDelaunay, t: number, px: number, py: number): number {
  for (let k = 0; k < 3; k++) {
    if (mesh.neighbours[3 * t + k] >= 0) continue;
    const [ax, ay, bx, by] = edgeEnds(mesh, t, k);
    if ((ax - px) * (bx - px) + (ay - py) * (by - py) < 0) return k;
  }
  return -1;
}

/** Improves one triangle if it is too large or too thin; says whether the mesh changed. */
function improve(mesh: TriDelaunay, t: number, size: SizeField, circle: Circle): boolean {
  circumcircle(mesh, t, circle);
  const a = mesh.corners[3 * t];
  const b = mesh.corners[3 * t + 1];
  const c = mesh.corners[3 * t + 2];
  const wanted = size((mesh.x[a] + mesh.x[b] + mesh.x[c]) / 3, (mesh.y[a] + mesh.y[b] + mesh.y[c]) / 3);
  const large = circle.radius > LARGEST_RADIUS * wanted;
  const thin = circle.radius > WORST_SHAPE * circle.shortest && circle.shortest > SHORTEST_EDGE * wanted;
  if (!large && !thin) return false;
  const end = mesh.walk(t, circle.x, circle.y);
  if (end.edge >= 0) return splitLong(mesh, end.triangle, end.edge, size, SHORTEST_EDGE);
  const edge = encroached(mesh, end.triangle, circle.x, circle.y);
  if (edge >= 0) return splitLong(mesh, end.triangle, edge, size, SHORTEST_EDGE);
  mesh.insert(end.triangle, circle.x, circle.y);
  return true;
}

/**
 * Delaunay refinement by circumcentres (after Ruppert 1995) driven by a size field.
 * @param start valid triangulation of the outline; its boundary edges and tags are kept
 * @param size wanted edge length, same unit as the coordinates
 * @param pointLimit refinement stops there
 */
export function refineTriangles(start: CornerMesh, size: SizeField, pointLimit: number): RefinedMesh {
  const mesh = new TriDelaunay(start);
  splitBoundary(mesh, size);
  const queue = Array.from({ length: mesh.triangleCount }, (_, t) => t);
  const circle: Circle = { x: 0, y: 0, radius: 0, shortest: 0 };
  let head = 0;
  for (; head < queue.length && mesh.x.length < pointLimit; head++) {
    const t = queue[head];
    if (!improve(mesh, t, size, circle)) continue;
    for (const touched of mesh.touched) queue.push(touched);
  }
  return { mesh, complete: head >= queue.length };
}
