/** Ranges that the user states: kept in the project, each change one named step. */

import type { Project } from '../../core/index.ts';
import { applyEdit } from '../store/project.ts';
import { doubtText } from '../strings/doubt.ts';

/** The project with a range on one place; an earlier one there is replaced. */
const withRange =
  (path: string, low: number, high: number) =>
  (project: Project): Project => ({
    ...project,
    doubts: [...(project.doubts ?? []).filter((one) => one.path !== path), { path, low, high }],
  });

/** The project without the range of a place. */
const withoutRange =
  (path: string) =>
  (project: Project): Project => {
    const kept = (project.doubts ?? []).filter((one) => one.path !== path);
    if (kept.length > 0) return { ...project, doubts: kept };
    const { doubts: _, ...rest } = project;
    return rest;
  };

/** States a range, in the unit of the file. */
export const addRange = (path: string, label: string, low: number, high: number): void =>
  applyEdit(withRange(path, low, high), { label: doubtText.add.step(label) });

/** Takes a range away. */
export const removeRange = (path: string, label: string): void =>
  applyEdit(withoutRange(path), { label: doubtText.removed(label) });
