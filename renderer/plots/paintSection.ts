/** Draws the cross-section of the channel on a canvas: steel, melt by colour, axes in the reader's unit. */

import { fromSi, lookNumber, lookUnit, type NumberLook, type StationSection, toSi } from '../../core/index.ts';
import { scaleBarShape } from '../scene/scaleBar.ts';
import { meltText } from '../strings/melt.ts';
import type { Ink } from './Chart.tsx';
import { frameOf, room, roundMarks, type SectionLayout } from './sectionLayout.ts';

const words = meltText.across;

/** Pieces into which each cell of the solved grid is cut along either side, so that colours run smoothly. */
const pieces = 4;

/** Colours that are not the melt's. */
interface SectionInk {
  readonly chart: Ink;
  readonly steel: string;
  readonly line: string;
  readonly page: string;
}

type Corner = readonly [number, number, number];

/** The point at shares (s, t) of a cell whose corners are a, b (across), c, d (the same, one up). */
function inside(a: Corner, b: Corner, c: Corner, d: Corner, s: number, t: number): Corner {
  const mix = (k: 0 | 1 | 2) => (1 - t) * ((1 - s) * a[k] + s * b[k]) + t * ((1 - s) * c[k] + s * d[k]);
  return [mix(0), mix(1), mix(2)];
}

function paintCell(pen: CanvasRenderingContext2D, cell: readonly Corner[], colour: (place: number) => string): void {
  const [a, b, c, d] = cell as [Corner, Corner, Corner, Corner];
  for (let i = 0; i < pieces; i++) {
    for (let j = 0; j < pieces; j++) {
      const at = (di: number, dj: number) => inside(a, b, c, d, (i + di) / pieces, (j + dj) / pieces);
      const ring = [at(0, 0), at(1, 0), at(1, 1), at(0, 1)];
      pen.fillStyle = colour(at(0.5, 0.5)[2]);
      pen.strokeStyle = pen.fillStyle;
      pen.beginPath();
      for (const [x, y] of ring) pen.lineTo(x, y);
      pen.closePath();
      pen.fill();
      pen.stroke();
    }
  }
}

/** The melt; `places` are places on the colour scale, one per node. */
function paintMelt(
  pen: CanvasRenderingContext2D,
  section: StationSection,
  layout: SectionLayout,
  places: ArrayLike<number>,
  colour: (place: number) => string,
): void {
  const { columns, rows } = section;
  const corner = (k: number): Corner => [layout.x(section.x[k] ?? 0), layout.y(section.depth[k] ?? 0), places[k] ?? 0];
  pen.lineWidth = 0.7;
  for (let i = 0; i + 1 < columns; i++) {
    for (let j = 0; j + 1 < rows; j++) {
      const k = i * rows + j;
      paintCell(pen, [corner(k), corner(k + rows), corner(k + 1), corner(k + rows + 1)], colour);
    }
  }
}

function paintSteel(pen: CanvasRenderingContext2D, layout: SectionLayout, ink: SectionInk): void {
  const [left, right] = [layout.x(-layout.halfWidth), layout.x(layout.halfWidth)];
  pen.fillStyle = ink.steel;
  pen.fillRect(left, layout.y(0) - 7, right - left, layout.y(layout.depth) - layout.y(0) + 7);
  pen.strokeStyle = ink.line;
  pen.lineWidth = 1;
  pen.beginPath();
  pen.moveTo(left, layout.y(0));
  pen.lineTo(right, layout.y(0));
  pen.stroke();
}

/** Outline of root and flanks: nodes along the flank upstream, the root, the flank downstream. */
function paintOutline(
  pen: CanvasRenderingContext2D,
  section: StationSection,
  layout: SectionLayout,
  line: string,
): void {
  const { columns, rows } = section;
  const up = Array.from({ length: rows }, (_, j) => rows - 1 - j);
  const across = Array.from({ length: columns }, (_, i) => i * rows);
  const down = Array.from({ length: rows }, (_, j) => (columns - 1) * rows + j);
  pen.strokeStyle = line;
  pen.lineWidth = 1.2;
  pen.beginPath();
  for (const k of [...up, ...across, ...down]) pen.lineTo(layout.x(section.x[k] ?? 0), layout.y(section.depth[k] ?? 0));
  pen.stroke();
}

/** What the axes show, mm, and where they stand. */
interface Shown {
  readonly frame: ReturnType<typeof frameOf>;
  readonly layout: SectionLayout;
}

/** Place of the section (m) under a pixel of its picture. */
const placeAt = ({ layout }: Shown, px: number, py: number) => ({
  x: (px - layout.x(0)) / layout.perMetre,
  depth: (py - layout.y(0)) / layout.perMetre,
});

function paintAxes(pen: CanvasRenderingContext2D, shown: Shown, { ink, numbers }: SectionLook): void {
  const { frame, layout } = shown;
  const unit = lookUnit('mm', numbers);
  const [from, to] = [placeAt(shown, frame.left, frame.top), placeAt(shown, frame.right, frame.bottom)];
  pen.fillStyle = ink.chart.text;
  pen.strokeStyle = ink.chart.text;
  pen.font = '12px system-ui, sans-serif';
  pen.textAlign = 'center';
  for (const mark of roundMarks(fromSi(from.x, unit), fromSi(to.x, unit), 7)) {
    const x = Math.round(layout.x(toSi(mark, unit))) + 0.5;
    pen.fillRect(x, frame.bottom, 1, 4);
    pen.fillText(lookNumber(mark, 6, numbers), x, frame.bottom + 16);
  }
  pen.fillText(`${words.width}, ${unit}`, (frame.left + frame.right) / 2, frame.bottom + 33);
  pen.textAlign = 'right';
  const most = Math.max(2, Math.floor((frame.bottom - frame.top) / 22));
  for (const mark of roundMarks(fromSi(from.depth, unit), fromSi(to.depth, unit), most)) {
    const y = Math.round(layout.y(toSi(mark, unit))) + 0.5;
    pen.fillRect(frame.left - 4, y, 4, 1);
    pen.fillText(lookNumber(mark, 6, numbers), frame.left - 7, y + 4);
  }
  pen.textAlign = 'left';
  pen.fillText(`${words.depth}, ${unit}`, Math.max(2, frame.left - room.left + 4), 11);
}

/** A bar of round length in the lower left corner of the frame; buttons stand on the right. */
function paintScaleBar(pen: CanvasRenderingContext2D, { frame, layout }: Shown, { ink, numbers }: SectionLook): void {
  const { width: wide, label } = scaleBarShape(layout.perMetre, 0.25 * (frame.right - frame.left), numbers);
  const [x, y] = [frame.left + 9, frame.bottom - 7];
  pen.font = '11px system-ui, sans-serif';
  pen.textAlign = 'center';
  const half = Math.max(wide, pen.measureText(label).width) / 2 + 4;
  pen.fillStyle = ink.page;
  pen.globalAlpha = 0.85;
  pen.fillRect(x + wide / 2 - half, y - 17, 2 * half, 22);
  pen.globalAlpha = 1;
  pen.fillStyle = ink.line;
  pen.fillRect(x, y, wide, 2);
  pen.fillRect(x, y - 4, 1, 6);
  pen.fillRect(x + wide - 1, y - 4, 1, 6);
  pen.fillText(label, x + wide / 2, y - 6);
}

/** A cross where the reading is taken. */
function paintReading(
  pen: CanvasRenderingContext2D,
  section: StationSection,
  layout: SectionLayout,
  node: number,
  ink: SectionInk,
): void {
  const [x, y] = [layout.x(section.x[node] ?? 0), layout.y(section.depth[node] ?? 0)];
  for (const [colour, width] of [
    [ink.page, 4],
    [ink.chart.mark, 2],
  ] as const) {
    pen.strokeStyle = colour;
    pen.lineWidth = width;
    pen.beginPath();
    pen.arc(x, y, 5, 0, 2 * Math.PI);
    pen.stroke();
  }
}

/** How the section is to look. */
export interface SectionLook {
  readonly places: ArrayLike<number>;
  colour(place: number): string;
  readonly ink: SectionInk;
  /** node that is read, or null */
  readonly node: number | null;
  /** the reader's unit and decimal sign */
  readonly numbers: NumberLook;
}

/** Everything, on a canvas whose pixels are `ratio` times finer than the layout's; `layout` may be a part of `whole`. */
export function paintSection(
  canvas: HTMLCanvasElement,
  section: StationSection,
  whole: SectionLayout,
  layout: SectionLayout,
  look: SectionLook,
): void {
  const ratio = Math.max(1, globalThis.devicePixelRatio || 1);
  canvas.width = Math.round(whole.width * ratio);
  canvas.height = Math.round(whole.height * ratio);
  // drawn by the processor: tens of thousands of small pieces stall a graphics processor, and one in software for minutes
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  if (!pen) return;
  pen.scale(ratio, ratio);
  const shown = { frame: frameOf(whole), layout };
  const { left, right, top, bottom } = shown.frame;
  pen.save();
  pen.beginPath();
  pen.rect(left, top - 7, right - left, bottom - top + 7);
  pen.clip();
  paintSteel(pen, layout, look.ink);
  paintMelt(pen, section, layout, look.places, look.colour);
  paintOutline(pen, section, layout, look.ink.line);
  if (look.node !== null) paintReading(pen, section, layout, look.node, look.ink);
  paintScaleBar(pen, shown, look);
  pen.restore();
  paintAxes(pen, shown, look);
}
