/** All dimensions of a machine as drawn. */

import { type Project, type Revision, type SideShape, sideShape } from '../../core/index.ts';
import { revisionPath } from '../store/path.ts';
import { activeRevision } from '../store/project.ts';
import { barrelDimensions } from './barrelDimensions.ts';
import { endDimensions } from './endDimensions.ts';
import { nozzleDimensions } from './nozzleDimensions.ts';
import { screwDimensions, teethOf } from './screwDimensions.ts';
import type { Dimension, Group, Manners } from './types.ts';

/** A machine as drawn. */
export interface Drawn {
  readonly revision: Revision;
  readonly shape: SideShape;
  readonly dimensions: readonly Dimension[];
}

/** Shape and dimensions of the open revision of a project. */
export function drawnOf(project: Project, manners: Manners): Drawn {
  const revision = activeRevision(project);
  const shape = sideShape(revision);
  const scene = { revision, root: revisionPath(project, revision.id), manners };
  const tipEnd = 1000 * (shape.root.z.at(-1) ?? 0);
  const dimensions = [
    ...screwDimensions(scene, teethOf(shape)),
    ...endDimensions(scene, tipEnd),
    ...barrelDimensions(scene),
    ...nozzleDimensions(scene),
  ];
  return { revision, shape, dimensions };
}

/** The dimensions of some groups. */
export const ofGroups = (dimensions: readonly Dimension[], shown: readonly Group[]): readonly Dimension[] =>
  dimensions.filter(({ group }) => shown.includes(group));
