/** Draws the cross-section of the channel on a canvas: steel, melt by colour, axes in mm. */

import type { StationSection } from '../../core/index.ts';
import { meltText } from '../strings/melt.ts';
import type { Ink } from './Chart.tsx';
import { room, roundMarks, type SectionLayout } from './sectionLayout.ts';

const words = meltText.across;

/** Pieces into which each cell of the solved grid is cut along either side, so that colours run smoothly. */
const pieces = 4;

/** Colours that are not the melt's. */
export interface SectionInk {
  readonly chart: Ink;
  readonly steel: string;
  readonly line: string;
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

function paintAxes(pen: CanvasRenderingContext2D, layout: SectionLayout, ink: SectionInk): void {
  pen.fillStyle = ink.chart.text;
  pen.strokeStyle = ink.chart.text;
  pen.font = '12px system-ui, sans-serif';
  pen.lineWidth = 1;
  const bottom = layout.y(layout.depth);
  const half = layout.halfWidth * 1000;
  pen.textAlign = 'center';
  for (const mm of roundMarks(-half, half, 7)) {
    const x = Math.round(layout.x(mm / 1000)) + 0.5;
    pen.fillRect(x, bottom, 1, 4);
    pen.fillText(String(mm), x, bottom + 16);
  }
  pen.fillText(words.width, layout.x(0), bottom + 33);
  pen.textAlign = 'right';
  const left = layout.x(-layout.halfWidth);
  const most = Math.max(2, Math.floor((layout.depth * layout.perMetre) / 22));
  for (const mm of roundMarks(0, layout.depth * 1000, most)) {
    const y = Math.round(layout.y(mm / 1000)) + 0.5;
    pen.fillRect(left - 4, y, 4, 1);
    pen.fillText(String(mm), left - 7, y + 4);
  }
  pen.textAlign = 'left';
  pen.fillText(words.depth, Math.max(2, left - room.left + 4), 11);
}

/** Everything, on a canvas whose pixels are `ratio` times finer than the layout's. */
export function paintSection(
  canvas: HTMLCanvasElement,
  section: StationSection,
  layout: SectionLayout,
  look: { readonly places: ArrayLike<number>; colour(place: number): string; readonly ink: SectionInk },
): void {
  const ratio = Math.max(1, globalThis.devicePixelRatio || 1);
  canvas.width = Math.round(layout.width * ratio);
  canvas.height = Math.round(layout.height * ratio);
  const pen = canvas.getContext('2d');
  if (!pen) return;
  pen.scale(ratio, ratio);
  paintSteel(pen, layout, look.ink);
  paintMelt(pen, section, layout, look.places, look.colour);
  paintOutline(pen, section, layout, look.ink.line);
  paintAxes(pen, layout, look.ink);
}
