/** What can be done with the screw's sections, as named steps. */

import type { Revision } from '../../../core/index.ts';
import { addSection, duplicateSection, removeSection, splitSection } from '../../store/edits.ts';
import type { Path } from '../../store/path.ts';
import { mergeFault, mergeSections, moveSectionTo, shortestMm } from '../../store/sectionEdits.ts';
import { editText } from '../../strings/editing.ts';
import { text } from '../../strings.ts';
import { applyListEdit } from '../desk.ts';
import type { EntryTool } from '../EntryTools.tsx';

const words = editText.sections;

/** What a section is called by its place. */
export const sectionName = (index: number): string => `${text.describe.section} ${index + 1}`;

/** The sections being worked on. */
export interface SectionDesk {
  readonly revision: Revision;
  readonly list: Path;
  readonly locked: boolean;
  /** asks for the place of a cut through this section */
  splitAt(index: number): void;
}

/** Performs an edit of one section under a readable name. */
export function actOn(
  desk: SectionDesk,
  index: number,
  act: string,
  change: Parameters<typeof applyListEdit>[2],
): void {
  applyListEdit(desk.list, words.did(act, sectionName(index)), change);
}

/** Moves a section by one place, if there is one. */
export function shift(desk: SectionDesk, index: number, by: -1 | 1): void {
  const to = index + by;
  if (desk.locked || to < 0 || to >= desk.revision.screw.sections.length) return;
  const { actions } = text;
  actOn(desk, index, by < 0 ? actions.earlier : actions.later, moveSectionTo(desk.revision.id, index, to));
}

/** Puts a dragged section where another stands. */
export function drop(desk: SectionDesk, from: number, to: number): void {
  if (desk.locked || from === to) return;
  actOn(desk, from, from < to ? text.actions.later : text.actions.earlier, moveSectionTo(desk.revision.id, from, to));
}

/** The menu of one section. */
export function sectionTools(desk: SectionDesk, index: number): EntryTool[] {
  const { revision, locked } = desk;
  const { id } = revision;
  const { sections } = revision.screw;
  const { actions } = text;
  const lengthMm = sections[index]?.lengthMm ?? 0;
  const short = lengthMm < 2 * shortestMm;
  const fault = mergeFault(sections, index);
  const act = (label: string, change: Parameters<typeof applyListEdit>[2]) => ({
    label,
    disabled: locked,
    act: () => actOn(desk, index, label, change),
  });
  return [
    { ...act(words.half, splitSection(id, index)), disabled: locked || short },
    {
      label: words.splitAt,
      disabled: locked || short,
      ...(short ? { note: words.splitShort } : {}),
      act: () => desk.splitAt(index),
    },
    {
      ...act(words.merge, mergeSections(id, index)),
      disabled: locked || fault !== null,
      note: fault ? words.mergeReasons[fault] : words.mergeKeeps,
    },
    act(actions.duplicate, duplicateSection(id, index)),
    act(actions.add, addSection(id, index)),
    {
      ...act(actions.remove, removeSection(id, index)),
      disabled: locked || sections.length < 2,
      ...(sections.length < 2 ? { note: words.lastStays } : {}),
    },
  ];
}
