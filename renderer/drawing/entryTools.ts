/** What can be done with a piece of the nozzle, a zone or a section, as panels and the drawing offer it. */

import type { Project, Revision } from '../../core/index.ts';
import { applyListEdit } from '../panels/desk.ts';
import type { EntryTool } from '../panels/EntryTools.tsx';
import { copyEntry, dropEntry, splitSection, swapEntry } from '../store/edits.ts';
import type { Path } from '../store/path.ts';
import { mergeFault, mergeSections } from '../store/sectionEdits.ts';
import { drawingText } from '../strings/drawing.ts';
import { editText } from '../strings/editing.ts';
import { text } from '../strings.ts';
import {
  addPiece,
  mergePieces,
  mergeZones,
  type PieceKind,
  splitPiece,
  splitZone,
  zoneMergeFault,
} from './entryEdits.ts';

const words = drawingText.entry;

/** A list of entries and which of them is meant. */
export interface EntryPlace {
  readonly list: Path;
  readonly index: number;
  readonly count: number;
  readonly locked: boolean;
}

type Change = (project: Project) => Project;

const tool = ({ list, locked }: EntryPlace, label: string, change: Change, disabled = false): EntryTool => ({
  label,
  disabled: locked || disabled,
  act: () => applyListEdit(list, label, change),
});

const order = (place: EntryPlace): readonly EntryTool[] => [
  tool(place, text.actions.earlier, swapEntry(place.list, place.index, -1), place.index === 0),
  tool(place, text.actions.later, swapEntry(place.list, place.index, 1), place.index === place.count - 1),
];

const removal = (place: EntryPlace): EntryTool =>
  tool(place, text.actions.remove, dropEntry(place.list, place.index), place.count < 2);

const kinds: readonly PieceKind[] = ['land', 'cone', 'ledge', 'gap'];

/** For a piece of the nozzle. */
export const pieceTools = (place: EntryPlace): readonly EntryTool[] => [
  tool(place, text.actions.split, splitPiece(place.list, place.index)),
  {
    ...tool(place, words.merge, mergePieces(place.list, place.index), place.index === place.count - 1),
    ...(place.index === place.count - 1 ? { note: words.lastPiece } : {}),
  },
  ...kinds.map((kind) => tool(place, words[kind], addPiece(place.list, place.index, kind))),
  ...order(place),
  tool(place, text.actions.duplicate, copyEntry(place.list, place.index)),
  removal(place),
];

/** For a zone of the barrel; where it lies its numbers say, and its place in the list only where it is listed. */
export function zoneTools({ barrel }: Revision, place: EntryPlace): readonly EntryTool[] {
  const fault = zoneMergeFault(barrel.zones, place.index);
  return [
    tool(place, text.actions.split, splitZone(place.list, place.index)),
    {
      ...tool(place, words.merge, mergeZones(place.list, place.index), fault !== null),
      note: fault ? words.zoneReasons[fault] : words.zoneKeeps,
    },
    ...order(place),
    removal(place),
  ];
}

/** For a section of the screw of a revision. */
export function sectionTools({ id, screw }: Revision, place: EntryPlace): readonly EntryTool[] {
  const fault = mergeFault(screw.sections, place.index);
  return [
    tool(place, text.actions.split, splitSection(id, place.index)),
    {
      ...tool(place, words.merge, mergeSections(id, place.index), fault !== null),
      note: fault ? editText.sections.mergeReasons[fault] : editText.sections.mergeKeeps,
    },
    ...order(place),
    removal(place),
  ];
}
