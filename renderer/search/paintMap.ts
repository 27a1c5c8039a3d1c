/** Draws the map of a sweep over two inputs onto a canvas. */

import { type Ground, hatch } from './hatching.ts';
import { type MapSteps, stepColour } from './mapScale.ts';

/** One axis as drawn. */
export interface MapAxis {
  readonly title: string;
  readonly values: readonly number[];
  /** text of a value */
  text(value: number): string;
  /** the present design's, unit of the values */
  readonly present: number;
}

/** All that is drawn. Cells row by row from the second axis' first value, the first axis fastest. */
export interface MapPicture {
  readonly x: MapAxis;
  readonly y: MapAxis;
  readonly cells: readonly (number | null)[];
  readonly grounds: readonly Ground[];
  readonly steps: MapSteps | null;
  readonly cursor: number | null;
  readonly ink: { readonly text: string; readonly line: string; readonly mark: string; readonly hatch: string };
}

/** Room for the labels, px. */
const margins = { left: 74, right: 12, top: 8, bottom: 44 } as const;

/** Labels along an axis at most. */
const labels = { x: 8, y: 7 } as const;

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The area of the cells. */
export const mapArea = (width: number, height: number): Box => ({
  x: margins.left,
  y: margins.top,
  width: width - margins.left - margins.right,
  height: height - margins.top - margins.bottom,
});

/** The rectangle of a cell; the second axis rises upwards. */
export function cellBox(area: Box, columns: number, rows: number, index: number): Box {
  const column = index % columns;
  const row = Math.floor(index / columns);
  const [width, height] = [area.width / columns, area.height / rows];
  return { x: area.x + column * width, y: area.y + area.height - (row + 1) * height, width, height };
}

/** The cell at a point of the canvas, or null. */
export function cellAt(area: Box, columns: number, rows: number, px: number, py: number): number | null {
  const column = Math.floor(((px - area.x) / area.width) * columns);
  const row = Math.floor(((area.y + area.height - py) / area.height) * rows);
  return column >= 0 && column < columns && row >= 0 && row < rows ? row * columns + column : null;
}

/** Place of a value along an axis in cells, middle of the first = 0.5; null outside. */
function placeOf({ values, present }: MapAxis): number | null {
  for (let i = 0; i + 1 < values.length; i++) {
    const [a, b] = [values[i] ?? 0, values[i + 1] ?? 0];
    const share = (present - a) / (b - a);
    if (share >= 0 && share <= 1) return i + 0.5 + share;
  }
  return null;
}

function drawLabels(ctx: CanvasRenderingContext2D, { x, y, ink }: MapPicture, area: Box): void {
  ctx.fillStyle = ink.text;
  ctx.font = '12px system-ui, sans-serif';
  const every = (count: number, most: number) => Math.max(1, Math.ceil((count - 1) / (most - 1)));
  ctx.textAlign = 'center';
  ctx.textBaseline = 'top';
  const [nx, ny] = [x.values.length, y.values.length];
  x.values.forEach((value, i) => {
    if (i % every(nx, labels.x) === 0)
      ctx.fillText(x.text(value), area.x + ((i + 0.5) * area.width) / nx, area.y + area.height + 5);
  });
  ctx.fillText(x.title, area.x + area.width / 2, area.y + area.height + 24);
  ctx.textAlign = 'right';
  ctx.textBaseline = 'middle';
  y.values.forEach((value, i) => {
    if (i % every(ny, labels.y) === 0)
      ctx.fillText(y.text(value), area.x - 6, area.y + area.height - ((i + 0.5) * area.height) / ny);
  });
  ctx.save();
  ctx.translate(12, area.y + area.height / 2);
  ctx.rotate(-Math.PI / 2);
  ctx.textAlign = 'center';
  ctx.fillText(y.title, 0, 0, area.height);
  ctx.restore();
}

function drawCells(ctx: CanvasRenderingContext2D, picture: MapPicture, area: Box): void {
  const { cells, grounds, steps, ink } = picture;
  const [columns, rows] = [picture.x.values.length, picture.y.values.length];
  cells.forEach((value, i) => {
    const box = cellBox(area, columns, rows, i);
    if (value !== null && steps) {
      ctx.fillStyle = stepColour(steps, value);
      // half a pixel more closes the seams that rounding leaves
      ctx.fillRect(box.x, box.y, box.width + 0.5, box.height + 0.5);
    }
    const ground = grounds[i];
    if (ground === 'hole') hatch(ctx, box, 'hole', ink.text);
    // light strokes in dark ones are seen on every colour
    else if (ground === 'missed') {
      hatch(ctx, box, 'missed', '#000', 1, 3.4);
      hatch(ctx, box, 'missed', ink.hatch, 1, 1.4);
    }
  });
}

function drawMarks(ctx: CanvasRenderingContext2D, picture: MapPicture, area: Box): void {
  const { x, y, cursor, ink } = picture;
  const [columns, rows] = [x.values.length, y.values.length];
  const [px, py] = [placeOf(x), placeOf(y)];
  if (px !== null && py !== null) {
    const at = [area.x + (px * area.width) / columns, area.y + area.height - (py * area.height) / rows] as const;
    for (const [colour, width] of [
      ['#000', 5],
      ['#fff', 2],
    ] as const) {
      ctx.strokeStyle = colour;
      ctx.lineWidth = width;
      ctx.beginPath();
      ctx.moveTo(at[0] - 7, at[1]);
      ctx.lineTo(at[0] + 7, at[1]);
      ctx.moveTo(at[0], at[1] - 7);
      ctx.lineTo(at[0], at[1] + 7);
      ctx.stroke();
    }
  }
  if (cursor === null) return;
  const box = cellBox(area, columns, rows, cursor);
  for (const [colour, width] of [
    ['#fff', 4],
    [ink.mark, 2],
  ] as const) {
    ctx.strokeStyle = colour;
    ctx.lineWidth = width;
    ctx.strokeRect(box.x, box.y, box.width, box.height);
  }
}

/** Draws all of it; sizes in CSS pixels. */
export function paintMap(ctx: CanvasRenderingContext2D, picture: MapPicture, width: number, height: number): void {
  const area = mapArea(width, height);
  ctx.clearRect(0, 0, width, height);
  drawCells(ctx, picture, area);
  ctx.strokeStyle = picture.ink.line;
  ctx.lineWidth = 1;
  ctx.strokeRect(area.x, area.y, area.width, area.height);
  drawLabels(ctx, picture, area);
  drawMarks(ctx, picture, area);
}
