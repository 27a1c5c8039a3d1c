/** Volumes of turned triangles. */

import { doubleArea, type TriMesh } from '../../math/triMesh.ts';

/** Volume of every triangle turned about the axis, m3 (Pappus). */
export function triangleVolumes(mesh: TriMesh): Float64Array {
  const { x, y, nodes } = mesh;
  return Float64Array.from({ length: mesh.triangleCount }, (_, t) => {
    const [a, b, c] = [nodes[6 * t], nodes[6 * t + 1], nodes[6 * t + 2]];
    return (Math.PI * doubleArea(x[a], y[a], x[b], y[b], x[c], y[c]) * (y[a] + y[b] + y[c])) / 3;
  });
}
