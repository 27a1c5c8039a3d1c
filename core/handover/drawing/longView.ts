/** The scale of a long part's main view: the largest that fits, broken where it would be too thin otherwise. */

import { type Axis, makeAxis } from './axis.ts';
import { textsOf } from './dimensions.ts';
import { preferredScales } from './formats.ts';
import type { Block, Box } from './model.ts';

/** Room on a sheet. */
export interface SheetRoom {
  readonly main: Box;
  readonly aside: Box;
}

/** Width of the room over the title block, mm. */
export const widthOf = ({ main }: SheetRoom): number => main.right - main.left;
/** Height of it, mm. */
export const heightOf = ({ main }: SheetRoom): number => main.top - main.bottom;
/** Whether no two texts of a block lie over each other: at too small a scale they would. */
function isClear({ entities }: Block): boolean {
  const boxes = entities.flatMap(textsOf).map(({ box }) => box);
  return !boxes.some((a, i) =>
    boxes.slice(i + 1).some((b) => a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top),
  );
}

/** Whether a block fits in it and can be read. */
export const fits = (block: Block, room: SheetRoom): boolean =>
  block.box.right - block.box.left <= widthOf(room) &&
  block.box.top - block.box.bottom <= heightOf(room) &&
  isClear(block);

/** Least diameter on paper at which a long part is still drawn whole, mm. */
const leastDiameter = 9;

/** A long part whose axis may be broken. m. */
export interface LongPart {
  readonly from: number;
  readonly to: number;
  readonly diameter: number;
  /** most that the diameter may take of the room's height */
  readonly share: number;
  readonly stretches: readonly { readonly from: number; readonly to: number }[];
  /** mm on paper that the view takes beside the axis, at a scale */
  beside(scale: number): number;
  draw(axis: Axis): Block;
}

function tryAxis(part: LongPart, room: SheetRoom, scale: number, breaks: boolean): { axis: Axis; block: Block } | null {
  const length = widthOf(room) - part.beside(scale);
  if (length < 30) return null;
  const axis = makeAxis(part.from, part.to, scale, length, breaks ? part.stretches : []);
  if (!axis) return null;
  const block = part.draw(axis);
  return fits(block, room) ? { axis, block } : null;
}

/** Main view at the largest preferred scale that leaves room; broken where it would be too thin otherwise. */
export function longView(part: LongPart, room: SheetRoom, chosen: number | null): { axis: Axis; block: Block } | null {
  if (chosen !== null) return tryAxis(part, room, chosen, true);
  const tall = part.share * heightOf(room);
  const sensible = preferredScales.filter((scale) => part.diameter * 1e3 * scale <= tall && scale <= 10);
  const thick = sensible.filter((scale) => part.diameter * 1e3 * scale >= leastDiameter);
  for (const scale of thick) {
    const whole = tryAxis(part, room, scale, false);
    if (whole) return whole;
  }
  for (const scale of [...thick].reverse()) {
    const broken = tryAxis(part, room, scale, true);
    if (broken) return broken;
  }
  for (const scale of preferredScales.filter((each) => each <= (sensible[0] ?? 1))) {
    const any = tryAxis(part, room, scale, true);
    if (any) return any;
  }
  return null;
}
