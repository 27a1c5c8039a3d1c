/** Old colours that a change-over may start from: anchors of the project's materials. */

import type { Lab, Material, Project } from '../../core/index.ts';
import { activeRevision } from '../store/project.ts';
import { colourText } from '../strings/colour.ts';

/** A colour with its name. */
export interface OldColour {
  readonly id: string;
  readonly label: string;
  readonly lab: Lab;
}

const labOf = ({ lightness, a, b }: Material['colourAnchors'][number]): Lab => [lightness, a, b];

/** The darkest anchor of the material in use, then the fresh colours of all others. */
export function oldColours(project: Project): OldColour[] {
  const { materialId } = activeRevision(project);
  return project.materials.flatMap(({ id, name, colourAnchors }) => {
    const anchors = [...colourAnchors].sort((a, b) => a.extent - b.extent);
    const [first, last] = [anchors[0], anchors[anchors.length - 1]];
    if (!first || !last) return [];
    return id === materialId
      ? [{ id: `darkest-${id}`, label: colourText.change.darkest, lab: labOf(last) }]
      : [{ id: `fresh-${id}`, label: colourText.change.fresh(name), lab: labOf(first) }];
  });
}
