/** How far a finished mesh really lies from the exact shape, sampled on the mesh itself. */

import type { Design } from '../../design/types.ts';
import type { SolidMesh } from '../../geometry/types.ts';
import { surfaceDistance } from './exactSurface.ts';
import type { PartId } from './part.ts';

/** Coordinates nearer than this are equal, m: vertices are single precision. */
const same = 1e-7;

/** Corners of one triangle, m. */
type Corners = Float64Array;

function loadCorners({ positions, indices }: SolidMesh, t: number, out: Corners): void {
  for (let corner = 0; corner < 3; corner++) {
    const at = 3 * (indices[t + corner] as number);
    for (let axis = 0; axis < 3; axis++) out[3 * corner + axis] = positions[at + axis] as number;
  }
}

/** True where the three corners lie in one plane normal to the axis: end faces and shoulders, which are exact. */
const isAcross = (c: Corners): boolean => c[2] === c[5] && c[5] === c[8];

/** True on the faces of the barrel's feed opening, which are flat and parallel to the y axis. */
const isOpening = (c: Corners, part: PartId): boolean =>
  part === 'barrel' && Math.abs(c[0] - c[3]) < same && Math.abs(c[3] - c[6]) < same;

/**
 * Largest distance of the mesh's vertices, edge middles and triangle middles from the exact surface, m, to
 * first order in that distance (along the radius on cones, which is more). Flat faces are left out: they are exact.
 */
export function meshDeviation(design: Design, part: PartId, mesh: SolidMesh): number {
  const distance = surfaceDistance(design, part);
  const c = new Float64Array(9);
  let most = 0;
  const look = (x: number, y: number, z: number): void => {
    const found = distance(x, y, z);
    if (found > most && found !== Number.POSITIVE_INFINITY) most = found;
  };
  for (let t = 0; t < mesh.indices.length; t += 3) {
    loadCorners(mesh, t, c);
    if (isAcross(c) || isOpening(c, part)) continue;
    for (let i = 0; i < 9; i += 3) {
      const j = (i + 3) % 9;
      look(c[i], c[i + 1], c[i + 2]);
      look((c[i] + c[j]) / 2, (c[i + 1] + c[j + 1]) / 2, (c[i + 2] + c[j + 2]) / 2);
    }
    look((c[0] + c[3] + c[6]) / 3, (c[1] + c[4] + c[7]) / 3, (c[2] + c[5] + c[8]) / 3);
  }
  return most;
}
