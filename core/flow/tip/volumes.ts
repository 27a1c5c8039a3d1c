/** Volume of a turned triangle. */

import { doubleArea, type TriMesh } from '../../math/triMesh.ts';

/** Volume of triangle `t` turned about the axis, m3 (Pappus). */
export function triangleVolume(mesh: TriMesh, t: number): number {
  const { x, y, nodes } = mesh;
  const [a, b, c] = [nodes[6 * t], nodes[6 * t + 1], nodes[6 * t + 2]];
  return (Math.PI * doubleArea(x[a], y[a], x[b], y[b], x[c], y[c]) * (y[a] + y[b] + y[c])) / 3;
}
