/** Surface of a mesh, for checks. */

import { areaVector, lengthOf } from '../geometry/meshMeasure.ts';
import type { SolidMesh } from '../geometry/types.ts';

/** Surface area, m². */
export function meshArea(mesh: SolidMesh): number {
  const n = new Float64Array(3);
  let sum = 0;
  for (let t = 0; t < mesh.indices.length; t += 3) {
    areaVector(mesh.positions, mesh.indices, t, n);
    sum += lengthOf(n);
  }
  return sum / 2;
}
