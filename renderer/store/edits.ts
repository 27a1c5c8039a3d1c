/** Edits of a project as pure functions: project in, changed project out. Stores and tests call the same ones. */

import { produce } from 'immer';
import type { Project, Revision, SectionInput } from '../../core/index.ts';
import { type Path, valueAt, withoutValue, withValue } from './path.ts';
import { splitSectionAt } from './sectionEdits.ts';

/** Puts `value` at `path`. */
export const setValue =
  (path: Path, value: unknown) =>
  (project: Project): Project =>
    withValue(project, path, value);

/** Takes the value at `path` away; the same project where nothing stands there. */
export const removeValue =
  (path: Path) =>
  (project: Project): Project =>
    valueAt(project, path) === undefined ? project : withoutValue(project, path);

const inRevision = (id: string, change: (revision: Revision) => void) =>
  produce<Project>((draft) => {
    const revision = draft.revisions.find((candidate) => candidate.id === id);
    if (revision) change(revision);
  });

/** Adds a section after `index`, shaped to continue from it. */
export const addSection = (id: string, index: number) =>
  inRevision(id, ({ screw }) => {
    const before = screw.sections[index];
    if (before) screw.sections.splice(index + 1, 0, continuing(before));
  });

/** A short constant section that goes on where `before` ends. */
function continuing(before: SectionInput): SectionInput {
  const root = before.rootDiameterEndMm;
  const lengthMm = Math.max(1, Math.round(before.lengthMm / 2));
  if (before.kind === 'plain') return { kind: 'plain', lengthMm, rootDiameterStartMm: root, rootDiameterEndMm: root };
  const { name: _, ...same } = before;
  const lead = before.leadEndMm;
  return { ...same, lengthMm, leadStartMm: lead, leadEndMm: lead, rootDiameterStartMm: root, rootDiameterEndMm: root };
}

/** Cuts a section into two halves, values at the cut interpolated. */
export const splitSection =
  (id: string, index: number) =>
  (project: Project): Project => {
    const whole = project.revisions.find((revision) => revision.id === id)?.screw.sections[index];
    return whole ? splitSectionAt(id, index, whole.lengthMm / 2)(project) : project;
  };

/** Puts a copy of a section after it. */
export const duplicateSection = (id: string, index: number) =>
  inRevision(id, ({ screw }) => {
    const section = screw.sections[index];
    if (section) screw.sections.splice(index + 1, 0, { ...section });
  });

/** Takes a section away; the last one stays. */
export const removeSection = (id: string, index: number) =>
  inRevision(id, ({ screw }) => {
    if (screw.sections.length > 1) screw.sections.splice(index, 1);
  });

/** Turns a section into a flighted or a plain one, keeping length and roots. */
export const setSectionKind = (id: string, index: number, kind: SectionInput['kind']) =>
  inRevision(id, ({ screw }) => {
    const section = screw.sections[index];
    if (!section || section.kind === kind) return;
    const { name, lengthMm, rootDiameterStartMm, rootDiameterEndMm } = section;
    const shared = { ...(name === undefined ? {} : { name }), lengthMm, rootDiameterStartMm, rootDiameterEndMm };
    screw.sections[index] = kind === 'plain' ? { kind, ...shared } : { kind, ...shared, ...flightLike(screw.sections) };
  });

/** Flight values of the first flighted section, or plain defaults sized to the root. */
function flightLike(sections: readonly SectionInput[]) {
  const model = sections.find((section) => section.kind === 'flighted');
  const root = sections[0]?.rootDiameterStartMm ?? 10;
  return {
    leadStartMm: model?.leadEndMm ?? root * 1.4,
    leadEndMm: model?.leadEndMm ?? root * 1.4,
    starts: model?.starts ?? 1,
    flightWidthMm: model?.flightWidthMm ?? root * 0.15,
    flankAngleDeg: model?.flankAngleDeg ?? 0,
    rootFilletMm: model?.rootFilletMm ?? 0,
  };
}

/** Inserts a copy of list entry `index` after it (zones, nozzle pieces, motor points). */
export const copyEntry = (list: Path, index: number) =>
  changeList(list, (items) => items.splice(index + 1, 0, items[index]));

/** Puts `entry` at the end of a list. */
export const addEntry = (list: Path, entry: unknown) => changeList(list, (items) => items.push(entry));

/** Removes list entry `index`. */
export const dropEntry = (list: Path, index: number) => changeList(list, (items) => items.splice(index, 1));

/** Swaps list entry `index` with its neighbour. */
export const swapEntry = (list: Path, index: number, by: -1 | 1) =>
  changeList(list, (items) => {
    const other = index + by;
    if (other >= 0 && other < items.length) [items[index], items[other]] = [items[other], items[index]];
  });

function changeList(list: Path, change: (items: unknown[]) => void) {
  return (project: Project): Project => {
    const items = list.reduce<unknown>((value, key) => Reflect.get(Object(value), key), project);
    if (!Array.isArray(items)) return project;
    const copy = [...items];
    change(copy);
    return withValue(project, list, copy);
  };
}
