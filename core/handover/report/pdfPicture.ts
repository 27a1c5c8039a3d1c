/** A picture's shapes on a page. */

import type { Pen } from './pdfPen.ts';
import { type PathShape, type Picture, paperTones, type TextShape, type Tone } from './picture.ts';

const colourOf = (tone: Tone): string => (tone.startsWith('#') ? tone : paperTones[tone as keyof typeof paperTones]);

function drawPath({ pdf }: Pen, { pieces, closed, fill, stroke, width, dash }: PathShape, x: number, y: number): void {
  const drawn = pieces.filter((piece) => piece.length > 1);
  if (drawn.length === 0) return;
  for (const piece of drawn) {
    piece.forEach(([px, py], i) => {
      if (i === 0) pdf.moveTo(x + px, y + py);
      else pdf.lineTo(x + px, y + py);
    });
    if (closed) pdf.closePath();
  }
  pdf.lineWidth(width);
  if (dash.length > 0) pdf.dash(dash, {});
  if (fill && stroke) pdf.fillAndStroke(colourOf(fill), colourOf(stroke));
  else if (fill) pdf.fill(colourOf(fill));
  else pdf.stroke(colourOf(stroke ?? 'ink'));
  if (dash.length > 0) pdf.undash();
}

function drawWord(pen: Pen, { x: px, y: py, text, size, anchor, turned, tone }: TextShape, x: number, y: number): void {
  const { pdf } = pen;
  const style = { font: 'Helvetica', size, lead: size, colour: colourOf(tone) } as const;
  const written = pen.plain(text);
  const width = pen.widthOf(written, style);
  const [left, base] = [x + px, y + py];
  const shift = anchor === 'start' ? 0 : anchor === 'middle' ? width / 2 : width;
  pdf.save();
  if (turned) pdf.rotate(-90, { origin: [left, base] });
  pdf.font(style.font);
  pdf.fontSize(size);
  pdf.fillColor(style.colour);
  pdf.text(written, left - shift, base, { lineBreak: false, baseline: 'alphabetic' });
  pdf.restore();
}

/** Draws a picture with its upper left corner at a place. */
export function drawPicture(pen: Pen, { shapes }: Picture, x: number, y: number): void {
  pen.pdf.save();
  pen.pdf.lineJoin('round');
  for (const shape of shapes) {
    if (shape.kind === 'path') drawPath(pen, shape, x, y);
    else drawWord(pen, shape, x, y);
  }
  pen.pdf.restore();
}
