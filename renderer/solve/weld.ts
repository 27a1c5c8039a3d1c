/** Gathers shaded triangles' corners that are alike, so that each is lit once instead of once per triangle. */

import type { ShadedTriangles, SolidMesh } from '../../core/index.ts';
import type { DrawnMesh } from './protocol.ts';

/** Normals whose components differ by less than this share a corner. */
const alike = 1e-3;

/** Whether corner `a` of the triangles has the normal that output vertex `b` was given. */
function sameNormal(normals: Float32Array, a: number, kept: Float32Array, b: number): boolean {
  for (let k = 0; k < 3; k++) if (Math.abs(normals[3 * a + k] - kept[3 * b + k]) >= alike) return false;
  return true;
}

/**
 * The triangles of `shaded` as an indexed mesh.
 * @param mesh the mesh they were made of: corner c of `shaded` is vertex `mesh.indices[c]`
 */
export function welded(mesh: SolidMesh, shaded: ShadedTriangles): DrawnMesh {
  const corners = mesh.indices.length;
  const [positions, normals] = [new Float32Array(3 * corners), new Float32Array(3 * corners)];
  const indices = new Uint32Array(corners);
  // Output vertices of one mesh vertex form a chain: the newest one, and from each the one before.
  const newest = new Int32Array(mesh.positions.length / 3).fill(-1);
  const before = new Int32Array(corners).fill(-1);
  let count = 0;
  for (let corner = 0; corner < corners; corner++) {
    const vertex = mesh.indices[corner];
    let found = newest[vertex];
    while (found >= 0 && !sameNormal(shaded.normals, corner, normals, found)) found = before[found];
    if (found < 0) {
      found = count++;
      positions.set(shaded.positions.subarray(3 * corner, 3 * corner + 3), 3 * found);
      normals.set(shaded.normals.subarray(3 * corner, 3 * corner + 3), 3 * found);
      before[found] = newest[vertex];
      newest[vertex] = found;
    }
    indices[corner] = found;
  }
  return { positions: positions.slice(0, 3 * count), normals: normals.slice(0, 3 * count), indices };
}
