/** Measures of finished triangle meshes. */

import type { SolidMesh } from './types.ts';

/**
 * Twice the area of the triangle whose corners are numbers `t` to `t + 2` of `indices`, along its outward normal, in the
 * square of the positions' unit: cross product of two sides.
 */
export function triangleAreaVector(
  p: Float32Array | Float64Array,
  indices: Uint32Array,
  t: number,
): [number, number, number] {
  const a = 3 * (indices[t] as number);
  const b = 3 * (indices[t + 1] as number);
  const c = 3 * (indices[t + 2] as number);
  const [ax, ay, az] = [p[a] as number, p[a + 1] as number, p[a + 2] as number];
  const [ux, uy, uz] = [(p[b] as number) - ax, (p[b + 1] as number) - ay, (p[b + 2] as number) - az];
  const [vx, vy, vz] = [(p[c] as number) - ax, (p[c + 1] as number) - ay, (p[c + 2] as number) - az];
  return [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
}

/** Enclosed volume of `count` corners' triangles, positive with outward normals (divergence theorem). */
export function enclosedVolume(p: Float32Array | Float64Array, indices: Uint32Array, count: number): number {
  let sum = 0;
  for (let t = 0; t < count; t += 3) {
    const [x, y, z] = triangleAreaVector(p, indices, t);
    const a = 3 * (indices[t] as number);
    sum += (p[a] as number) * x + (p[a + 1] as number) * y + (p[a + 2] as number) * z;
  }
  return sum / 6;
}

/** Enclosed volume, m³, positive with outward normals. Only for closed meshes. */
export function meshVolume(mesh: SolidMesh): number {
  return enclosedVolume(mesh.positions, mesh.indices, mesh.indices.length);
}

/** Surface area, m². */
export function meshArea(mesh: SolidMesh): number {
  let sum = 0;
  for (let t = 0; t < mesh.indices.length; t += 3) {
    sum += Math.hypot(...triangleAreaVector(mesh.positions, mesh.indices, t));
  }
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
