/** The material of the open revision and where it stands. */

import type { Material } from '../../../core/index.ts';
import type { Path } from '../../store/path.ts';
import { useDesk } from '../desk.ts';

/** A material and its place in the project. */
export interface PlacedMaterial {
  readonly material: Material;
  readonly root: Path;
}

/** The material that the open revision runs; null where its id names none. */
export function useMaterial(): PlacedMaterial | null {
  const { project, revision } = useDesk();
  const index = project.materials.findIndex(({ id }) => id === revision.materialId);
  const material = project.materials[index];
  return material ? { material, root: ['materials', index] } : null;
}
