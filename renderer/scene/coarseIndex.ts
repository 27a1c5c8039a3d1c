/** Fewer triangles over the same vertices, for as long as the view moves. Pure. */

import type { DrawnMesh } from '../solve/protocol.ts';

/** Cells along the longest side at first, and how much larger they become while there are too many triangles. */
const first = 700;
const growth = 1.5;

/** Number of a vertex' cell: its place, and the side its normal points to, so that sharp edges stay sharp. */
function cellOf({ positions: p, normals: n }: DrawnMesh, i: number, size: number): number {
  const at = 3 * i;
  const place = (k: number) => Math.floor((p[at + k] ?? 0) / size) + 1024;
  const side = (k: number) => Math.round(1.4 * (n[at + k] ?? 0)) + 1;
  const sides = (side(0) * 3 + side(1)) * 3 + side(2);
  return ((place(0) * 2048 + place(1)) * 2048 + place(2)) * 27 + sides;
}

/** Triangles whose corners were gathered, one vertex a cell, those that shrank to a line left out. */
function gathered(mesh: DrawnMesh, size: number): Uint32Array {
  const count = mesh.positions.length / 3;
  const stands = new Map<number, number>();
  const to = new Uint32Array(count);
  for (let i = 0; i < count; i++) {
    const cell = cellOf(mesh, i, size);
    const found = stands.get(cell);
    if (found === undefined) stands.set(cell, i);
    to[i] = found ?? i;
  }
  const { indices } = mesh;
  const kept = new Uint32Array(indices.length);
  let n = 0;
  for (let t = 0; t < indices.length; t += 3) {
    const [a, b, c] = [to[indices[t] ?? 0] ?? 0, to[indices[t + 1] ?? 0] ?? 0, to[indices[t + 2] ?? 0] ?? 0];
    if (a === b || b === c || a === c) continue;
    kept[n++] = a;
    kept[n++] = b;
    kept[n++] = c;
  }
  return kept.slice(0, n);
}

/**
 * Corners of at most about `most` triangles over the mesh's own vertices; its own corners where it has no more.
 * Flat stretches lose nothing, rounds become somewhat angular.
 */
export function coarseIndex(mesh: DrawnMesh, most: number): Uint32Array {
  let longest = 0;
  for (const value of mesh.positions) longest = Math.max(longest, Math.abs(value));
  let indices = mesh.indices;
  for (let size = longest / first; indices.length / 3 > most && size < longest / 20; size *= growth)
    indices = gathered(mesh, size);
  return indices;
}
