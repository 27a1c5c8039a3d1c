/** Ruled tables and blocks of notes. */

import { cutText, lettering, small, textWidth, wrapText } from './lettering.ts';
import type { Block, Entity } from './model.ts';
import { blockOf, line, pt, rectangle } from './shapes.ts';

/** A column. */
export interface Column {
  readonly head: string;
  /** words start at the left, figures stand in the middle */
  readonly words?: boolean;
}

/** Height of a row and room beside the text of a cell, mm. */
const rowHeight = 4.6;
const cellPadding = 1.4;
/** Widest column, mm. */
const widestColumn = 42;

function columnWidths(columns: readonly Column[], rows: readonly (readonly string[])[]): number[] {
  return columns.map(({ head }, i) => {
    const texts = [head, ...rows.map((row) => row[i] ?? '')];
    return Math.min(widestColumn, Math.max(...texts.map((text) => textWidth(text, small)))) + 2 * cellPadding;
  });
}

/** Text of a row between the edges of its columns. */
function rowTexts(columns: readonly Column[], cells: readonly string[], edges: readonly number[], y: number): Entity[] {
  return cells.flatMap((cell, i) => {
    const [left, right] = [edges[i] as number, edges[i + 1] as number];
    const text = cutText(cell, small, right - left - 2 * cellPadding);
    const words = columns[i]?.words ?? false;
    const x = words ? left + cellPadding : (left + right) / 2;
    if (text === '') return [];
    return [lettering(text, pt(x, y + (rowHeight - small) / 2), small, { align: words ? 'left' : 'middle' })];
  });
}

/** A table with its caption above; origin at its lower left corner. */
export function tableBlock(
  caption: string,
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  aside = false,
): Block {
  const edges = [0];
  for (const width of columnWidths(columns, rows)) edges.push((edges[edges.length - 1] as number) + width);
  const right = edges[edges.length - 1] as number;
  const count = rows.length + 1;
  const top = count * rowHeight;
  const rules = Array.from({ length: count - 1 }, (_, i) =>
    line(i === count - 2 ? 'OUTLINE' : 'THIN', pt(0, (i + 1) * rowHeight), pt(right, (i + 1) * rowHeight)),
  );
  const bars = edges.slice(1, -1).map((x) => line('THIN', pt(x, 0), pt(x, top)));
  const heads = columns.map(({ head }) => head);
  const texts = [heads, ...rows].flatMap((cells, i) => rowTexts(columns, cells, edges, top - (i + 1) * rowHeight));
  const outline = rectangle('OUTLINE', { left: 0, right, bottom: 0, top });
  return blockOf(caption, [outline, ...rules, ...bars, ...texts, lettering(caption, pt(0, top + 1.4), small)], aside);
}

/** A long table in parts of at most `most` rows. */
export function tableBlocks(
  caption: string,
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  most: number,
): Block[] {
  const count = Math.max(1, Math.ceil(rows.length / most));
  const size = Math.ceil(rows.length / count);
  return Array.from({ length: count }, (_, i) => {
    const name = count === 1 ? caption : `${caption}, part ${i + 1} of ${count}`;
    return tableBlock(name, columns, rows.slice(i * size, (i + 1) * size));
  });
}

/** Rows that a table may have in a room of this height, mm. */
export const rowsIn = (room: number): number => Math.max(1, Math.floor((room - 8) / rowHeight) - 1);

/** Distance of lines of notes, mm. */
const notePitch = 1.56 * small;

/** Numbered notes, wrapped to `width` (mm). */
export function notesBlock(caption: string, notes: readonly string[], width: number): Block {
  const indent = 5;
  const lines = notes.flatMap((note, i) =>
    wrapText(note, small, width - indent).map((text, part) => ({ text, number: part === 0 ? `${i + 1}` : '' })),
  );
  const entities = lines.flatMap(({ text, number }, i) => {
    const y = -(i + 1) * notePitch;
    const body = lettering(text, pt(indent, y), small);
    return number === '' ? [body] : [lettering(number, pt(0, y), small), body];
  });
  return blockOf(caption, [lettering(caption, pt(0, 0), small), ...entities], true);
}
