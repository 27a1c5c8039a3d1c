/** Lettering: widths, boxes, and text cut to a room. Heights are those of capitals, ISO 3098. */

import { basicWidths, latinWidths } from './helveticaWidths.ts';
import type { Box, LayerName, Point, TextEntity } from './model.ts';

/** Height of a capital over the type size, of the font whose widths are used. */
export const capShare = 0.718;
/** Height of field names, mm. */
export const tiny = 1.8;
/** Height of notes and of dimensions on small sheets, mm. */
export const small = 2.5;
/** Height of titles and of dimensions on large sheets, mm. */
export const large = 3.5;
/** Reach of letters under the base line and over a capital, as shares of its height. */
const descent = 0.3;
const ascent = 1.08;

/** Widths of signs outside Latin-1, thousandths of the type size; those of `drawnSigns` are our own strokes. */
const signWidths: Readonly<Record<string, number>> = {
  '–': 556,
  '—': 1000,
  '…': 1000,
  '’': 222,
  '⌀': 760,
  '−': 584,
  '≤': 584,
  '≥': 584,
};

/** What an unknown character takes: a full square, as scripts without our widths mostly do. */
const unknownWidth = 1000;

function characterWidth(character: string): number {
  const code = character.codePointAt(0) ?? 0;
  if (code >= 32 && code < 127) return basicWidths[code - 32] as number;
  if (code >= 160 && code < 256) return latinWidths[code - 160] as number;
  return signWidths[character] ?? unknownWidth;
}

/** Width of a text at a height of capitals, mm. */
export function textWidth(text: string, height: number): number {
  let sum = 0;
  for (const character of text) sum += characterWidth(character);
  return (sum / 1000) * (height / capShare);
}

/** Text on one line, without what no format can carry: control characters and halves of surrogate pairs. */
function lineOf(text: string): string {
  const clean = Array.from(text, (c) => (/[\p{Cc}\p{Cs}\p{Cn}\p{Zl}\p{Zp}]/u.test(c) ? ' ' : c)).join('');
  return clean.replace(/\s+/g, ' ').trim();
}

/** The text, or as much of it as fits in `room` (mm) with an ellipsis. */
export function cutText(text: string, height: number, room: number): string {
  const line = lineOf(text);
  // a room made for the text itself must not cut it for its last digit
  if (textWidth(line, height) <= room + 1e-6) return line;
  const characters = Array.from(line);
  while (characters.length > 0 && textWidth(`${characters.join('')}…`, height) > room) characters.pop();
  return `${characters.join('').trimEnd()}…`;
}

/** Text broken at spaces into lines no wider than `room` (mm); longer words are cut. */
export function wrapText(text: string, height: number, room: number): readonly string[] {
  const lines: string[] = [];
  let current = '';
  for (const word of lineOf(text).split(' ')) {
    const longer = current === '' ? word : `${current} ${word}`;
    if (textWidth(longer, height) <= room) current = longer;
    else {
      if (current !== '') lines.push(current);
      current = cutText(word, height, room);
    }
  }
  return current === '' ? lines : [...lines, current];
}

/** How a text hangs on its point. */
export interface TextPlace {
  readonly align?: 'left' | 'middle' | 'right';
  readonly turn?: 0 | 90;
  readonly layer?: LayerName;
}

/** Room that a text takes from the start of its base line. */
function textBox(at: Point, width: number, height: number, turn: 0 | 90): Box {
  if (turn === 0) {
    return { left: at.x, right: at.x + width, bottom: at.y - descent * height, top: at.y + ascent * height };
  }
  return { left: at.x - ascent * height, right: at.x + descent * height, bottom: at.y, top: at.y + width };
}

/** A text on a point of its base line: its start, middle or end. */
export function lettering(text: string, point: Point, height: number, place: TextPlace = {}): TextEntity {
  const { align = 'left', turn = 0, layer = 'TEXT' } = place;
  const line = lineOf(text);
  const width = textWidth(line, height);
  const back = { left: 0, middle: width / 2, right: width }[align];
  const at = turn === 0 ? { x: point.x - back, y: point.y } : { x: point.x, y: point.y - back };
  return { kind: 'text', layer, text: line, at, height, turn, width, box: textBox(at, width, height, turn) };
}
