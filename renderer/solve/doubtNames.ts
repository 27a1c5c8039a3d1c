/** Names of doubtful numbers as a reader of the description knows them. */

import type { Project } from '../../core/index.ts';
import { doubtText } from '../strings/doubt.ts';

const words = doubtText.names;

/** A number's name; that of core where it says enough. */
export function doubtName(project: Project, revisionId: string, path: string, label: string): string {
  const law = /^material\.degradation\[(\d+)\]\./.exec(path);
  if (law) {
    const materialId = project.revisions.find(({ id }) => id === revisionId)?.materialId;
    const observed = project.materials.find(({ id }) => id === materialId)?.degradation[Number(law[1])]?.observed;
    const own = label.replace(/^[^,]*, /, '');
    return observed ? words.ofLaw(own, observed) : label;
  }
  if (path === 'material.rheology.d1PaS') return words.viscosityAtRest;
  if (/^material\.rheology\./.test(path)) return label.replace(/^Rheology/, words.flow);
  return /^material\.(melting|softening)C$/.test(path) ? words.temperature(label) : label;
}
