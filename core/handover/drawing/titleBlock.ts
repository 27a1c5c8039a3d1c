/** Frame, centring marks and title block: fields of ISO 7200, frame of ISO 5457. */

import { toleranceName } from './generalTolerance.ts';
import { cutText, lettering, small, textWidth, tiny } from './lettering.ts';
import { projectionSign, roughnessSymbol, roughnessText } from './marks.ts';
import type { Box, Entity, Point } from './model.ts';
import type { DrawingSetting, PartId } from './setting.ts';
import { line, path, pt, rectangle } from './shapes.ts';

/** Width of the title block (ISO 7200: 180 mm) and height with the line of the revision, mm. */
export const titleWidth = 180;
const rowHeight = 9;
const revisionHeight = 6;
/** Height of everything, mm. */
export const titleHeight = 4 * rowHeight + revisionHeight;

/** What differs from sheet to sheet. */
export interface SheetFacts {
  readonly part: PartId;
  readonly scaleText: string;
  readonly number: number;
  readonly of: number;
}

interface Cell {
  readonly name: string;
  readonly text: string;
  readonly width: number;
}

const partNames: Readonly<Record<PartId, string>> = { screw: 'Screw', barrel: 'Barrel', nozzle: 'Nozzle' };

/** Title of a part's sheet. */
export const partTitle = (setting: DrawingSetting, part: PartId): string =>
  setting.title === ''
    ? `${partNames[part]}, ${setting.project.name}`
    : `${setting.title}, ${partNames[part].toLowerCase()}`;

/** Identification number of a part: the typed one with the part's letter, or one made of project and revision. */
function partNumber({ number, revision }: DrawingSetting, part: PartId): string {
  const letter = part.slice(0, 1).toUpperCase();
  return number === '' ? `${revision.id}-${letter}` : `${number}-${letter}`;
}

function materialOf(setting: DrawingSetting, part: PartId): string {
  if (part === 'screw') return setting.design.screw.steel.name;
  const typed = part === 'barrel' ? setting.barrelMaterial : setting.nozzleMaterial;
  return typed === '' ? 'not named in the design' : typed;
}

function rowsOf(setting: DrawingSetting, facts: SheetFacts): Cell[][] {
  const { part } = facts;
  const cell = (name: string, text: string, width: number): Cell => ({ name, text, width });
  return [
    [
      cell('Legal owner', setting.owner, 62),
      cell('Creator', setting.creator, 43),
      cell('Approval person', setting.approval, 43),
      cell('Date of issue', setting.date, 32),
    ],
    [
      cell('Title', partTitle(setting, part), 113),
      cell('Identification number', partNumber(setting, part), 47),
      cell('Rev.', setting.revision.id, 20),
    ],
    [
      cell('Document type', 'Component drawing', 45),
      cell('Material', materialOf(setting, part), 80),
      cell('General tolerances', toleranceName(setting.tolerance), 30),
      cell('Texture', '', 25),
    ],
    [
      cell('Scale', facts.scaleText, 22),
      cell('Projection', '', 33),
      cell('Size', setting.format.label, 20),
      cell('Units', 'mm', 15),
      cell('Document status', setting.status, 45),
      cell('Lang.', setting.language, 15),
      cell('Sheet', `${facts.number}/${facts.of}`, 30),
    ],
  ];
}

/** Largest of three heights at which a text fits, and the text cut where none does. */
function fitted(text: string, room: number): { text: string; height: number } {
  const height = [small, 2.1, tiny].find((h) => textWidth(text, h) <= room) ?? tiny;
  return { text: cutText(text, height, room), height };
}

function cellEntities(cell: Cell, at: Point): Entity[] {
  const { text, height } = fitted(cell.text, cell.width - 2.4);
  return [
    lettering(cell.name, pt(at.x + 1.2, at.y + rowHeight - 1.2 - tiny), tiny),
    ...(text === '' ? [] : [lettering(text, pt(at.x + 1.2, at.y + 1.7), height)]),
  ];
}

/** The line of the revision: its mark, what it changed, its day. */
function revisionLine({ revision }: DrawingSetting, left: number, bottom: number): Entity[] {
  const y = bottom + (revisionHeight - small) / 2;
  const triangle = [pt(left + 1.5, bottom + 1.2), pt(left + 6.1, bottom + 1.2), pt(left + 3.8, bottom + 5.1)];
  const name = cutText(revision.name, small, 112);
  return [
    rectangle('THIN', { left, right: left + titleWidth, bottom, top: bottom + revisionHeight }),
    path('THIN', triangle, true),
    lettering(cutText(`Revision ${revision.id}`, small, 28), pt(left + 8, y), small),
    lettering(name, pt(left + 38, y), small),
    ...(revision.date ? [lettering(revision.date, pt(left + titleWidth - 1.2, y), small, { align: 'right' })] : []),
  ];
}

/** Title block in the lower right corner of the frame. */
export function titleBlock(setting: DrawingSetting, facts: SheetFacts, frame: Box): Entity[] {
  const left = frame.right - titleWidth;
  const { bottom } = frame;
  const rows = rowsOf(setting, facts);
  const entities: Entity[] = rows.flatMap((cells, i) => {
    const y = bottom + (rows.length - 1 - i) * rowHeight;
    let x = left;
    return cells.flatMap((cell) => {
      const at = pt(x, y);
      x += cell.width;
      const bar = x < frame.right - 0.1 ? [line('THIN', pt(x, y), pt(x, y + rowHeight))] : [];
      return [...cellEntities(cell, at), ...bar, line('THIN', pt(left, y + rowHeight), pt(frame.right, y + rowHeight))];
    });
  });
  const outline = rectangle('OUTLINE', { left, right: frame.right, bottom, top: bottom + titleHeight });
  const sign = projectionSign(pt(left + 22 + 21.5, bottom + 3.4), 4.2, setting.firstAngle);
  const texture = roughnessSymbol(
    pt(left + 165.5, bottom + rowHeight + 0.9),
    roughnessText(setting.roughness.general),
    tiny,
  );
  return [...entities, outline, ...sign, ...texture, ...revisionLine(setting, left, bottom + 4 * rowHeight)];
}

/** Frame with the centring marks that help to copy a sheet. */
export function frameLines(frame: Box, width: number, height: number): Entity[] {
  const [x, y] = [width / 2, height / 2];
  return [
    rectangle('FRAME', frame),
    line('FRAME', pt(x, frame.top + 5), pt(x, frame.top)),
    line('FRAME', pt(x, frame.bottom - 5), pt(x, frame.bottom)),
    line('FRAME', pt(frame.left - 5, y), pt(frame.left, y)),
    line('FRAME', pt(frame.right + 5, y), pt(frame.right, y)),
  ];
}
