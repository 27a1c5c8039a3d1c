/** Measures of finished triangle meshes. */

import type { SolidMesh } from './types.ts';

/** Corner coordinates of triangle `t` (first index number): x y z of a, b, c, m. */
function corners(mesh: SolidMesh, t: number): number[] {
  const out: number[] = [];
  for (let k = 0; k < 3; k++) {
    const at = 3 * (mesh.indices[t + k] as number);
    out.push(mesh.positions[at] as number, mesh.positions[at + 1] as number, mesh.positions[at + 2] as number);
  }
  return out;
}

/** Twice the area vector of a triangle, m²: cross product of its sides, along its outward normal. */
function areaVector(c: readonly number[]): [number, number, number] {
  const [ax, ay, az, bx, by, bz, cx, cy, cz] = c as number[] & { length: 9 };
  const [ux, uy, uz] = [
    (bx as number) - (ax as number),
    (by as number) - (ay as number),
    (bz as number) - (az as number),
  ];
  const [vx, vy, vz] = [
    (cx as number) - (ax as number),
    (cy as number) - (ay as number),
    (cz as number) - (az as number),
  ];
  return [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
}

/** Enclosed volume, m³, positive with outward normals (divergence theorem). Only for closed meshes. */
export function meshVolume(mesh: SolidMesh): number {
  let sum = 0;
  for (let t = 0; t < mesh.indices.length; t += 3) {
    const c = corners(mesh, t);
    const [nx, ny, nz] = areaVector(c);
    sum += (c[0] as number) * nx + (c[1] as number) * ny + (c[2] as number) * nz;
  }
  return sum / 6;
}

/** Surface area, m². */
export function meshArea(mesh: SolidMesh): number {
  let sum = 0;
  for (let t = 0; t < mesh.indices.length; t += 3) sum += Math.hypot(...areaVector(corners(mesh, t)));
  return sum / 2;
}

/**
 * True when every edge is shared by exactly two triangles that run along it in opposite directions, which makes the
 * mesh closed, edge-manifold and consistently oriented.
 */
export function meshIsClosed(mesh: SolidMesh): boolean {
  const { indices } = mesh;
  const vertices = mesh.positions.length / 3;
  const forward = new Float64Array(indices.length);
  const backward = new Float64Array(indices.length);
  for (let t = 0; t < indices.length; t++) {
    const from = indices[t] as number;
    const to = indices[t % 3 === 2 ? t - 2 : t + 1] as number;
    if (from === to) return false;
    forward[t] = from * vertices + to;
    backward[t] = to * vertices + from;
  }
  forward.sort();
  backward.sort();
  return forward.every((edge, i) => edge === backward[i] && edge !== forward[i - 1]);
}

/** Vertices less edges plus triangles, counting only vertices in use: 2 for a ball, 0 for a ring, of one closed shell. */
export function eulerNumber(mesh: SolidMesh): number {
  const triangles = mesh.indices.length / 3;
  return new Set(mesh.indices).size - (3 * triangles) / 2 + triangles;
}
