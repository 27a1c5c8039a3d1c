/** An independent judge of solids: the manifold-3d geometry kernel. */

import type { Manifold, ManifoldToplevel } from 'manifold-3d';
import createModule from 'manifold-3d';
import type { SolidMesh } from '../../../core/geometry/types.ts';

let kernel: Promise<ManifoldToplevel> | null = null;

/** The kernel, loaded once. */
async function loadKernel(): Promise<ManifoldToplevel> {
  const loaded = await createModule();
  loaded.setup();
  return loaded;
}

/** What the kernel makes of a mesh; it throws where the mesh is no oriented manifold. */
export async function judge(mesh: SolidMesh): Promise<Manifold> {
  kernel ??= loadKernel();
  const { Manifold: Solid, Mesh } = await kernel;
  // copies: the kernel may take the arrays over
  const vertProperties = mesh.positions.slice();
  const triVerts = mesh.indices.slice();
  return new Solid(new Mesh({ numProp: 3, vertProperties, triVerts }));
}
