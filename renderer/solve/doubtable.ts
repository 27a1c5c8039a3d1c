/** Every number of a revision that a range can be stated for. */

import { fieldLabel, fieldUnit, numberPlaces, type Project } from '../../core/index.ts';

/** A number of the description. */
export interface DoubtableField {
  /** as a stated doubt names it */
  readonly path: string;
  readonly label: string;
  /** symbol of the file's unit, '' where it has none */
  readonly unit: string;
  /** unit of the file */
  readonly value: number;
}

/** All of them, but for counts, which no range describes. */
export const doubtableFields = (project: Project, revisionId: string): DoubtableField[] =>
  numberPlaces(project, revisionId)
    .filter(({ keys }) => keys.at(-1) !== 'starts')
    .map(({ path, keys, value }) => ({ path, label: fieldLabel(path), unit: fieldUnit(keys), value }));
