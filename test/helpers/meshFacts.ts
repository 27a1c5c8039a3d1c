import { enclosedVolume } from '../../core/geometry/meshMeasure.ts';
import type { SolidMesh } from '../../core/geometry/types.ts';

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

/** Enclosed volume, m³, positive with outward normals. Only for closed meshes. */
export function meshVolume(mesh: SolidMesh): number {
  return enclosedVolume(mesh.positions, mesh.indices, mesh.indices.length);
}
