/** Every number of a revision that a range can be stated for. */

import { fieldLabel, fieldUnit, type Project } from '../../core/index.ts';

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

/** Numbers that are counts or names of parts, which no range describes. */
const counts = new Set(['starts', 'microsteps', 'fullStepsPerTurn', 'order', 'version', 'low', 'high']);

const isObject = (node: unknown): node is Readonly<Record<string, unknown>> =>
  typeof node === 'object' && node !== null && !Array.isArray(node);

function numbersOf(node: unknown, path: string, keys: readonly (string | number)[]): DoubtableField[] {
  if (typeof node === 'number') return [{ path, label: fieldLabel(path), unit: fieldUnit(keys), value: node }];
  if (Array.isArray(node)) return node.flatMap((item, i) => numbersOf(item, `${path}[${i}]`, [...keys, i]));
  if (!isObject(node)) return [];
  if (typeof node.value === 'number') return numbersOf(node.value, path, keys);
  return Object.entries(node).flatMap(([key, item]) =>
    counts.has(key) ? [] : numbersOf(item, path === '' ? key : `${path}.${key}`, [...keys, key]),
  );
}

/** All of them: the revision's own, then running, print and material. */
export function doubtableFields(project: Project, revisionId: string): DoubtableField[] {
  const revision = project.revisions.find(({ id }) => id === revisionId);
  const material = project.materials.find(({ id }) => id === revision?.materialId);
  return [
    ...numbersOf(revision, '', []),
    ...numbersOf(project.process, 'process', ['process']),
    ...numbersOf(project.print, 'print', ['print']),
    ...numbersOf(material, 'material', ['material']),
  ];
}
