/** A short name for a shape, so that a change of it can be told. */

import type { SolidMesh } from '../../core/index.ts';

/** FNV-1a hash of the coordinates to the micrometre, eight hex digits. */
export function meshHash(mesh: SolidMesh): string {
  let hash = 0x811c9dc5;
  for (const coordinate of mesh.positions) {
    hash = Math.imul(hash ^ Math.round(coordinate * 1e6), 0x01000193);
  }
  return (hash >>> 0).toString(16).padStart(8, '0');
}
