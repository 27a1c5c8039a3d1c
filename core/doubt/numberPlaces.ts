/** Every number of a revision's description that can be doubted or varied. */

import { isObject } from '../project/looseView.ts';
import type { Project } from '../project/schema.ts';

/** A number and where it stands. */
export interface NumberPlace {
  /** as a stated doubt names it */
  readonly path: string;
  /** the way to it below the revision or, beginning with `process`, `print` or `material`, beside it */
  readonly keys: readonly (string | number)[];
  /** in the unit of the file */
  readonly value: number;
}

/** Keys whose numbers describe how something was stated or wired, not the machine. */
const skipped = new Set(['microsteps', 'fullStepsPerTurn', 'order', 'version', 'low', 'high']);

function numbersOf(node: unknown, path: string, keys: readonly (string | number)[]): NumberPlace[] {
  if (typeof node === 'number') return [{ path, keys, value: node }];
  if (Array.isArray(node)) return node.flatMap((item, i) => numbersOf(item, `${path}[${i}]`, [...keys, i]));
  if (!isObject(node)) return [];
  if (typeof node.value === 'number') return [{ path, keys, value: node.value }];
  return Object.entries(node).flatMap(([key, item]) =>
    skipped.has(key) ? [] : numbersOf(item, path === '' ? key : `${path}.${key}`, [...keys, key]),
  );
}

/** All of them: the revision's own, then running, print and material. */
export function numberPlaces(project: Project, revisionId: string): readonly NumberPlace[] {
  const revision = project.revisions.find(({ id }) => id === revisionId);
  const material = project.materials.find(({ id }) => id === revision?.materialId);
  return [
    ...numbersOf(revision, '', []),
    ...numbersOf(project.process, 'process', ['process']),
    ...numbersOf(project.print, 'print', ['print']),
    ...numbersOf(material, 'material', ['material']),
  ];
}
