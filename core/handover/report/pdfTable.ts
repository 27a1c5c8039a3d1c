/** Tables over pages: heads repeated, rows kept whole where a page can hold them. */

import type { Cell, TableBlock, TableColumn } from './model.ts';
import { lineWidth, type Pen, paper, type TextStyle } from './pdfPen.ts';
import type { PdfStruct } from './pdfTypes.ts';
import { paperTones } from './picture.ts';

const pad = 3.5;
/** Tables up to this height are not parted. */
const shortTable = 210;
const swatchRoom = 22;
const body: TextStyle = { font: 'Helvetica', size: 8, lead: 10, colour: paperTones.ink };
const strong: TextStyle = { ...body, font: 'Helvetica-Bold' };
const linked: TextStyle = { ...body, colour: '#0b57a4' };
const captionStyle: TextStyle = { ...strong, size: 9, lead: 12 };

interface SetCell {
  readonly cell: Cell;
  readonly lines: readonly string[];
  readonly style: TextStyle;
  readonly x: number;
  readonly width: number;
  readonly right: boolean;
}

/** A table as set on pages. */
export class SetTable {
  readonly #pen: Pen;
  readonly #block: TableBlock;
  readonly #columns: readonly { readonly column: TableColumn; readonly x: number; readonly width: number }[];

  constructor(pen: Pen, block: TableBlock) {
    this.#pen = pen;
    this.#block = block;
    const total = block.columns.reduce((sum, { share }) => sum + share, 0);
    let x: number = paper.left;
    this.#columns = block.columns.map((column) => {
      const placed = { column, x, width: (lineWidth * column.share) / total };
      x += placed.width;
      return placed;
    });
  }

  #cell(cell: Cell, i: number, style: TextStyle): SetCell {
    const { column, x, width } = this.#columns[i];
    const inner = width - 2 * pad - (cell.swatch ? swatchRoom : 0);
    return { cell, lines: this.#pen.wrap(cell.text, style, inner), style, x, width, right: column.align === 'right' };
  }

  #row(cells: readonly Cell[]): SetCell[] {
    return cells
      .slice(0, this.#columns.length)
      .map((cell, i) => this.#cell(cell, i, cell.strong ? strong : cell.to ? linked : body));
  }

  #head(): SetCell[] {
    return this.#columns.map(({ column }, i) => this.#cell({ text: column.label }, i, strong));
  }

  /** What must stay together at the start: all of a short table, else caption, head and two rows. */
  get leadHeight(): number {
    const caption = this.#pen.wrap(this.#block.caption, captionStyle, lineWidth).length * captionStyle.lead;
    const heights: number[] = [];
    let sum = caption + 4 + rowHeight(this.#head());
    for (const row of this.#block.rows) {
      if (sum > shortTable) break;
      heights.push(rowHeight(this.#row(row)));
      sum += heights[heights.length - 1] ?? 0;
    }
    if (sum <= shortTable) return sum;
    return sum - heights.slice(2).reduce((rest, height) => rest + height, 0);
  }

  draw(parent: PdfStruct): void {
    const pen = this.#pen;
    pen.ensure(this.leadHeight);
    pen.name(this.#block.id);
    const element = pen.pdf.struct('Table');
    const caption = pen.pdf.struct('Caption');
    pen.lines(caption, 'Caption', pen.wrap(this.#block.caption, captionStyle, lineWidth), paper.left, captionStyle);
    element.add(caption);
    pen.y += 3;
    const head = this.#head();
    this.#drawRow(element, head, 'head');
    this.#block.rows.forEach((cells, i) => {
      const row = this.#row(cells);
      const height = rowHeight(row);
      if (height > pen.room) {
        pen.newPage();
        this.#repeatHead(head);
      }
      this.#drawRow(element, row, i % 2 === 1 ? 'shaded' : 'plain', head);
    });
    parent.add(element);
  }

  /** The head again at the top of a page; it is read out once. */
  #repeatHead(head: readonly SetCell[]): void {
    const pen = this.#pen;
    const height = rowHeight(head);
    pen.artifact('Layout', () => {
      this.#background(height, 'head');
      for (const one of head) this.#paintCell(one, 0, mostLines(head));
      this.#rule(height, 'head');
    });
    pen.y += height;
  }

  #rule(height: number, look: Look): void {
    const { pdf, y } = this.#pen;
    pdf.lineWidth(look === 'head' ? 0.9 : 0.3);
    pdf.moveTo(paper.left, y + height);
    pdf.lineTo(paper.left + lineWidth, y + height);
    pdf.stroke(look === 'head' ? paperTones.ink : '#b5b5b5');
  }

  #paintCell({ cell, lines, style, x, width, right }: SetCell, from: number, count: number): void {
    const pen = this.#pen;
    const left = x + pad + (cell.swatch ? swatchRoom : 0);
    if (cell.swatch && from === 0) {
      pen.pdf.lineWidth(0.4);
      pen.pdf.rect(x + pad, pen.y + pad + 1, swatchRoom - 5, 8);
      pen.pdf.fillAndStroke(cell.swatch, paperTones.soft);
    }
    lines.slice(from, from + count).forEach((line, i) => {
      const at = right ? x + width - pad - pen.widthOf(line, style) : left;
      pen.write(line, at, pen.y + pad + i * body.lead, style);
    });
  }

  #background(height: number, look: Look): void {
    if (look === 'plain') return;
    const { pdf, y } = this.#pen;
    pdf.rect(paper.left, y, lineWidth, height);
    pdf.fill(look === 'head' ? '#e9edf1' : '#f6f7f9');
  }

  /** A row in the structure; one that no page can hold goes on over the next. */
  #drawRow(table: PdfStruct, row: readonly SetCell[], look: Look, head: readonly SetCell[] = []): void {
    const pen = this.#pen;
    const element = pen.pdf.struct('TR');
    const cells = row.map((_, i) =>
      pen.pdf.struct(
        look === 'head' || i === 0 ? 'TH' : 'TD',
        look === 'head' ? { scope: 'Column' } : i === 0 ? { scope: 'Row' } : {},
      ),
    );
    const all = mostLines(row);
    for (let from = 0; from < all; ) {
      if (from > 0) {
        pen.newPage();
        this.#repeatHead(head);
      }
      const count = Math.max(1, Math.min(all - from, Math.floor((pen.room - 2 * pad) / body.lead)));
      const height = count * body.lead + 2 * pad;
      pen.artifact('Layout', () => this.#background(height, look));
      row.forEach((one, i) => {
        this.#cellContent(cells[i], one, from, count, i === 0 || look === 'head' ? 'TH' : 'TD');
      });
      pen.artifact('Layout', () => this.#rule(height, look));
      pen.y += height;
      from += count;
    }
    for (const each of cells) element.add(each);
    table.add(element);
  }

  #cellContent(element: PdfStruct, one: SetCell, from: number, count: number, tag: string): void {
    const pen = this.#pen;
    const { to } = one.cell;
    const content = pen.marked(to ? 'Link' : tag, () => this.#paintCell(one, from, count));
    const lines = Math.min(count, one.lines.length - from);
    if (to && lines > 0) {
      element.add(pen.link(content, to, [one.x + pad, pen.y + pad, one.width - 2 * pad, lines * body.lead]));
    } else element.add(content);
  }
}

type Look = 'head' | 'plain' | 'shaded';

const mostLines = (row: readonly SetCell[]): number => Math.max(1, ...row.map(({ lines }) => lines.length));

const rowHeight = (row: readonly SetCell[]): number => mostLines(row) * body.lead + 2 * pad;
