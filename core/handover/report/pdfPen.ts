/** Pages, a cursor and lines of text over pdfkit: breaks are ours, so that nothing lies outside the margins. */

import { heldTogether } from '../../present/heldTogether.ts';
import type { PdfContent, PdfPaper, PdfStruct } from './pdfTypes.ts';
import { plainText } from './plainSigns.ts';

/** A4 in points, and the margins around what is written. */
export const paper = { width: 595.28, height: 841.89, left: 56, right: 56, top: 76, bottom: 62 } as const;

/** Width of a line. */
export const lineWidth = paper.width - paper.left - paper.right;

/** How a text is set. */
export interface TextStyle {
  readonly font: 'Helvetica' | 'Helvetica-Bold' | 'Helvetica-Oblique';
  readonly size: number;
  /** from line to line */
  readonly lead: number;
  readonly colour: string;
}

/** Sets a report on pages. y is where the next line begins, from the top. */
export class Pen {
  readonly pdf: PdfPaper;
  y: number = paper.top;
  page = -1;
  readonly #widths = new Map<string, number>();
  readonly #lost = new Set<string>();

  constructor(pdf: PdfPaper) {
    this.pdf = pdf;
  }

  /** Signs that could neither be kept nor said. */
  get lost(): readonly string[] {
    return [...this.#lost];
  }

  newPage(): void {
    this.pdf.addPage();
    this.page += 1;
    this.y = paper.top;
  }

  /** Height that is left on the page. */
  get room(): number {
    return paper.height - paper.bottom - this.y;
  }

  /** Begins a page unless so much room is left, or the page is still empty. */
  ensure(height: number): void {
    if (height > this.room && this.y > paper.top) this.newPage();
  }

  /** A text in the font's signs. */
  plain(text: string): string {
    const { text: written, lost } = plainText(text);
    for (const sign of lost) this.#lost.add(sign);
    return written;
  }

  widthOf(text: string, { font, size }: TextStyle): number {
    const key = `${font} ${text}`;
    let width = this.#widths.get(key);
    if (width === undefined) {
      this.pdf.font(font);
      this.pdf.fontSize(100);
      width = this.pdf.widthOfString(text) / 100;
      this.#widths.set(key, width);
    }
    return width * size;
  }

  /** A word cut into pieces that fit: hashes and addresses have no spaces. */
  #pieces(word: string, style: TextStyle, width: number): string[] {
    if (this.widthOf(word, style) <= width) return [word];
    const pieces: string[] = [];
    let piece = '';
    for (const sign of word) {
      if (piece !== '' && this.widthOf(piece + sign, style) > width) {
        pieces.push(piece);
        piece = sign;
      } else piece += sign;
    }
    return [...pieces, piece];
  }

  /** A text in lines that fit. At least one line, which may be empty. */
  wrap(text: string, style: TextStyle, width: number): string[] {
    const space = this.widthOf(' ', style);
    const lines: string[] = [];
    let [line, long] = ['', 0];
    // a no-break space holds words together: only plain ones part them
    for (const word of heldTogether(this.plain(text))
      .split(/ +/)
      .flatMap((each) => this.#pieces(each, style, width))) {
      const wide = this.widthOf(word, style);
      if (line !== '' && long + space + wide > width) {
        lines.push(line);
        [line, long] = [word, wide];
      } else {
        long += (line === '' ? 0 : space) + wide;
        line = line === '' ? word : `${line} ${word}`;
      }
    }
    return [...lines, line];
  }

  /** One line, base line by the style; y is the top of the line. */
  write(line: string, x: number, y: number, style: TextStyle): void {
    if (line === '') return;
    this.pdf.font(style.font);
    this.pdf.fontSize(style.size);
    this.pdf.fillColor(style.colour);
    // a plain space in its place: readers then find the words as typed
    this.pdf.text(line.replaceAll('\u00a0', ' '), x, y + 0.76 * style.size + (style.lead - style.size) / 2, {
      lineBreak: false,
      baseline: 'alphabetic',
    });
  }

  /** Draws as content of a tag. */
  marked(tag: string, draw: () => void): PdfContent {
    const content = this.pdf.markStructureContent(tag);
    draw();
    this.pdf.endMarkedContent();
    return content;
  }

  /** Draws what no reader needs to hear. */
  artifact(type: 'Pagination' | 'Layout', draw: () => void): void {
    this.pdf.markContent('Artifact', { type });
    draw();
    this.pdf.endMarkedContent();
  }

  /** Lines below each other, over as many pages as they take; never one line alone at a page's end. */
  lines(parent: PdfStruct, tag: string, lines: readonly string[], x: number, style: TextStyle): void {
    let at = 0;
    while (at < lines.length) {
      if (this.room < Math.min(2, lines.length - at) * style.lead) this.newPage();
      let fit = Math.min(lines.length - at, Math.max(1, Math.floor(this.room / style.lead)));
      if (at + fit === lines.length - 1 && fit > 2) fit -= 1;
      parent.add(
        this.marked(tag, () => {
          for (const line of lines.slice(at, at + fit)) {
            this.write(line, x, this.y, style);
            this.y += style.lead;
          }
        }),
      );
      at += fit;
    }
  }

  /** Names the place at the cursor. */
  name(id: string): void {
    this.pdf.addNamedDestination(id, 'XYZ', 0, Math.max(0, this.y - 6), null);
  }

  /** Content that leads to a named place; the area is clickable. */
  link(
    content: PdfContent,
    to: string,
    area: readonly [x: number, y: number, width: number, height: number],
  ): PdfStruct {
    const link = this.pdf.struct('Link');
    link.add(content);
    this.pdf.goTo(...area, to, { structParent: link });
    link.end();
    return link;
  }
}
