/** From a design and its choices to sheets. */

import { ok, type Result } from '../../result.ts';
import { frameOf, scaleText } from './formats.ts';
import { toleranceName } from './generalTolerance.ts';
import type { SheetRoom } from './longView.ts';
import type { Block, Drawing, Sheet } from './model.ts';
import { partCautions } from './notes.ts';
import { packBlocks } from './pack.ts';
import { type PartBlocks, partBlocks } from './parts.ts';
import type { DrawingSetting } from './setting.ts';
import { mm, numberText } from './size.ts';
import { frameLines, partTitle, titleBlock, titleHeight, titleWidth } from './titleBlock.ts';

/** Room inside the frame, mm from it and from the title block. */
const margin = 4;

/** Where views may stand: over the title block, and beside it. */
export function sheetRoom({ format }: Pick<DrawingSetting, 'format'>): SheetRoom {
  const frame = frameOf(format);
  const split = frame.bottom + titleHeight + margin;
  return {
    main: { left: frame.left + margin, right: frame.right - margin, bottom: split, top: frame.top - margin },
    aside: {
      left: frame.left + margin,
      right: frame.right - titleWidth - margin,
      bottom: frame.bottom + 2,
      top: split - margin,
    },
  };
}

/** A sheet's blocks, and its number among its part's sheets. */
interface Page {
  readonly part: PartBlocks;
  readonly blocks: readonly Block[];
  readonly number: number;
  readonly of: number;
}

function sheetOf(setting: DrawingSetting, { part, blocks, number, of }: Page): Sheet {
  const { width, height } = setting.format;
  const frame = frameOf(setting.format);
  const facts = { part: part.part, scaleText: scaleText(part.scale), number, of };
  return {
    name: of === 1 ? part.part : `${part.part}-${number}`,
    title: partTitle(setting, part.part),
    width,
    height,
    frame,
    scaleText: facts.scaleText,
    views: blocks.map(({ name, box }) => ({ name, box })),
    entities: [
      ...frameLines(frame, width, height),
      ...titleBlock(setting, facts, frame),
      ...blocks.flatMap(({ entities }) => entities),
    ],
  };
}

const viewsText = (parts: readonly PartBlocks[]): string =>
  parts
    .map(
      ({ part, scale, leftOut }) =>
        `${part} ${scaleText(scale)}${leftOut > 0 ? `, ${numberText(mm(leftOut))} mm left out at break lines` : ''}`,
    )
    .join('; ');

/**
 * Sheets of the chosen parts.
 * @returns the drawing; issues where a chosen scale leaves no room
 */
export function buildDrawing(setting: DrawingSetting): Result<Drawing> {
  const room = sheetRoom(setting);
  const parts: PartBlocks[] = [];
  for (const part of setting.parts) {
    const blocks = partBlocks(setting, part, room);
    if (!blocks.ok) return blocks;
    parts.push(blocks.value);
  }
  const pages: Page[] = parts.flatMap((part) =>
    packBlocks(part.blocks, room.main, room.aside).map((blocks, i, all) => ({
      part,
      blocks,
      number: i + 1,
      of: all.length,
    })),
  );
  const sheets = pages.map((page) => sheetOf(setting, page));
  const dimensions = sheets.reduce(
    (sum, { entities }) => sum + entities.filter(({ kind }) => kind === 'dimension').length,
    0,
  );
  return ok({
    title: setting.title === '' ? setting.project.name : setting.title,
    language: setting.language,
    date: setting.date,
    creator: setting.creator,
    description: `${setting.parts.join(', ')} of revision ${setting.revision.id}, ${setting.revision.name}; ${toleranceName(setting.tolerance)}`,
    sheets,
    cautions: setting.parts.flatMap((part) => partCautions(setting, part)),
    facts: [
      { label: 'Sheets', text: `${sheets.length} on ${setting.format.label}` },
      { label: 'Scale of main views', text: viewsText(parts) },
      { label: 'Dimensions', text: String(dimensions) },
      { label: 'General tolerances', text: toleranceName(setting.tolerance) },
    ],
  });
}
