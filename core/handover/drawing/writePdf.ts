/** Sheets as pages of a PDF: true size, vectors, searchable text in a standard font; signs it lacks are drawn. */

import { collected } from '../pdfBytes.ts';
import { type FlatEntity, flatLayers } from './flatten.ts';
import { layers } from './layers.ts';
import { capShare } from './lettering.ts';
import type { Drawing, LayerName, Point, Sheet, TextEntity } from './model.ts';
import { arcPoints } from './shapes.ts';
import { runsOf, signStroke } from './signs.ts';

/** The part of a pdfkit document that is used. */
interface PdfDocument {
  on(event: 'data', hear: (chunk: Uint8Array) => void): unknown;
  on(event: 'end', hear: () => void): unknown;
  on(event: 'error', hear: (error: unknown) => void): unknown;
  addPage(options: object): unknown;
  save(): unknown;
  restore(): unknown;
  transform(a: number, b: number, c: number, d: number, e: number, f: number): unknown;
  font(name: string): unknown;
  fontSize(size: number): unknown;
  text(text: string, x: number, y: number, options: object): unknown;
  moveTo(x: number, y: number): unknown;
  lineTo(x: number, y: number): unknown;
  closePath(): unknown;
  circle(x: number, y: number, radius: number): unknown;
  lineWidth(width: number): unknown;
  lineJoin(join: 'round'): unknown;
  dash(first: number | readonly number[], options?: object): unknown;
  undash(): unknown;
  stroke(): unknown;
  fill(): unknown;
  end(): unknown;
}

/** pdfkit's document class. */
export type PdfDocumentClass = new (options: object) => PdfDocument;

/** Points of PDF per mm. */
const perMm = 72 / 25.4;
/** Rise of Helvetica's letters that pdfkit reckons from the top of a line, shares of the type size. */
const fontRise = 0.718;
/** What stands for a character outside the standard font's code page. */
const stranger = '?';

/** Characters of the standard fonts' code page beyond Latin-1 that lettering uses. */
const known = /^[\u0020-\u007e\u00a0-\u00ff–—’…]$/u;

/** Text as the standard font can write it, and whether anything was replaced. */
export function standardText(text: string): { text: string; strange: boolean } {
  const written = Array.from(text, (c) => (known.test(c) ? c : stranger)).join('');
  return { text: written, strange: written !== text && Array.from(text).some((c) => !known.test(c)) };
}

/** Draws in mm from the lower left corner. */
class Pen {
  strange = false;
  readonly #pdf: PdfDocument;
  constructor(pdf: PdfDocument) {
    this.#pdf = pdf;
  }

  page({ width, height }: Sheet): void {
    this.#pdf.addPage({ size: [width * perMm, height * perMm], margin: 0 });
    this.#height = height;
    this.#pdf.font('Helvetica');
    this.#pdf.lineJoin('round');
  }
  #height = 0;

  #x = ({ x }: Point): number => x * perMm;
  #y = ({ y }: Point): number => (this.#height - y) * perMm;

  line(points: readonly Point[], closed: boolean): void {
    points.forEach((p, i) => {
      if (i === 0) this.#pdf.moveTo(this.#x(p), this.#y(p));
      else this.#pdf.lineTo(this.#x(p), this.#y(p));
    });
    if (closed) this.#pdf.closePath();
  }

  circle(centre: Point, radius: number): void {
    this.#pdf.circle(this.#x(centre), this.#y(centre), radius * perMm);
  }

  strokeAs(layer: LayerName): void {
    const { width, dashes } = layers[layer];
    this.#pdf.lineWidth(width * perMm);
    if (dashes.length > 0)
      this.#pdf.dash(
        dashes.map((d) => d * perMm),
        {},
      );
    this.#pdf.stroke();
    if (dashes.length > 0) this.#pdf.undash();
  }

  fill(): void {
    this.#pdf.fill();
  }

  text(entity: TextEntity): void {
    for (const run of runsOf(entity)) {
      if (run.strokes.length > 0) {
        for (const stroke of run.strokes) this.line(stroke, false);
        this.#pdf.lineWidth(signStroke(entity.height) * perMm);
        this.#pdf.stroke();
      } else this.#write(run.text, run.at, entity);
    }
  }

  #write(text: string, at: Point, { height, turn }: TextEntity): void {
    const size = (height / capShare) * perMm;
    const standard = standardText(text);
    this.strange ||= standard.strange;
    this.#pdf.save();
    const [x, y] = [this.#x(at), this.#y(at)];
    if (turn === 90) this.#pdf.transform(0, -1, 1, 0, x, y);
    else this.#pdf.transform(1, 0, 0, 1, x, y);
    this.#pdf.fontSize(size);
    this.#pdf.text(standard.text, 0, -size * fontRise, { lineBreak: false });
    this.#pdf.restore();
  }
}

function drawEntity(pen: Pen, entity: FlatEntity): void {
  if (entity.kind === 'text') {
    pen.text(entity);
    return;
  }
  if (entity.kind === 'circle') pen.circle(entity.centre, entity.radius);
  else if (entity.kind === 'arc') {
    pen.line(arcPoints(entity.centre, entity.radius, entity.from, entity.to, 48), false);
  } else pen.line(entity.points, entity.kind === 'fill' || entity.closed);
  if (entity.kind === 'fill') pen.fill();
  else pen.strokeAs(entity.layer);
}

/** Bytes of a document whose pages are the sheets, and whether characters had to be replaced. */
export async function drawingPdf(
  drawing: Drawing,
  Document: PdfDocumentClass,
): Promise<{ bytes: Uint8Array; strange: boolean }> {
  const day = new Date(`${drawing.date}T00:00:00Z`);
  const pdf = new Document({
    autoFirstPage: false,
    lang: drawing.language,
    displayTitle: true,
    info: {
      Title: standardText(drawing.title).text,
      Author: standardText(drawing.creator).text,
      Subject: standardText(drawing.description).text,
      Creator: 'Augerwright',
      CreationDate: day,
      ModDate: day,
    },
  });
  const done = collected(pdf);
  const pen = new Pen(pdf);
  for (const sheet of drawing.sheets) {
    pen.page(sheet);
    for (const { entities } of flatLayers(sheet)) for (const entity of entities) drawEntity(pen, entity);
  }
  pdf.end();
  return { bytes: await done, strange: pen.strange };
}
