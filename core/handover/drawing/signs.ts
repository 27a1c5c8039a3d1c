/** Signs that fonts often lack, drawn by strokes of our own in the room their widths leave in a line of lettering. */

import { capShare, textWidth } from './lettering.ts';
import type { Point, TextEntity } from './model.ts';
import { arcPoints, pt } from './shapes.ts';

/** Strokes in heights of a capital, from the sign's left end on the base line. */
const strokes: Readonly<Record<string, readonly (readonly Point[])[]>> = {
  '⌀': [arcPoints(pt(0.53, 0.5), 0.4, 0, 360, 28), [pt(0.18, -0.06), pt(0.88, 1.06)]],
  '−': [[pt(0.12, 0.42), pt(0.69, 0.42)]],
  '≤': [
    [pt(0.68, 0.86), pt(0.13, 0.56), pt(0.68, 0.26)],
    [pt(0.13, 0.08), pt(0.68, 0.08)],
  ],
  '≥': [
    [pt(0.13, 0.86), pt(0.68, 0.56), pt(0.13, 0.26)],
    [pt(0.13, 0.08), pt(0.68, 0.08)],
  ],
};

/** A piece of a line of lettering: written, or drawn by strokes in paper mm. */
export interface Run {
  readonly text: string;
  readonly at: Point;
  readonly width: number;
  /** empty where it is written */
  readonly strokes: readonly (readonly Point[])[];
}

/** Width of a stroke of a drawn sign for a height of capitals, mm: that of the letters beside it (Helvetica's stem). */
export const signStroke = (height: number): number => (0.085 / capShare) * height;

/** A line of lettering as written and drawn pieces. */
export function runsOf({ text, at, height, turn }: TextEntity): Run[] {
  const place = (along: number, up: number): Point =>
    turn === 0 ? pt(at.x + along, at.y + up) : pt(at.x - up, at.y + along);
  const runs: Run[] = [];
  let along = 0;
  for (const part of text.split(/([⌀−≤≥])/u).filter((each) => each !== '')) {
    const width = textWidth(part, height);
    const shape = strokes[part] ?? [];
    const start = along;
    // outer spaces are kept as room, not as characters, which some readers drop
    const bare = part.trim();
    const before = textWidth(part.slice(0, part.indexOf(bare)), height);
    const drawn = shape.map((stroke) => stroke.map(({ x, y }) => place(start + x * height, y * height)));
    if (bare !== '') {
      runs.push({ text: bare, at: place(along + before, 0), width: textWidth(bare, height), strokes: drawn });
    }
    along += width;
  }
  return runs;
}
