/** The contents: room kept while the pages are not known, written when they are. */

import type { Report } from './model.ts';
import { lineWidth, type Pen, paper, type TextStyle } from './pdfPen.ts';
import type { PdfStruct } from './pdfTypes.ts';

/** An entry with the place kept for it. */
interface Entry {
  readonly id: string;
  readonly title: string;
  readonly page: number;
  readonly y: number;
  readonly element: PdfStruct;
}

const step = 15;

/** Keeps the room, on the page at hand or on the next. */
export function contentsOf(pen: Pen, root: PdfStruct, { sections }: Report, head: TextStyle): readonly Entry[] {
  pen.y += 6;
  pen.ensure(head.lead + 6 + Math.min(sections.length, 6) * step);
  const [title, list] = [pen.pdf.struct('H2'), pen.pdf.struct('TOC')];
  root.add(title);
  root.add(list);
  pen.lines(title, 'H2', ['Contents'], paper.left, head);
  pen.y += 6;
  return sections.map(({ id, title: name }) => {
    pen.ensure(step);
    const element = pen.pdf.struct('TOCI');
    list.add(element);
    const entry = { id, title: name, page: pen.page, y: pen.y, element };
    pen.y += step;
    return entry;
  });
}

/** Writes the entries. @param pages of the sections, from 0 */
export function drawContents(pen: Pen, entries: readonly Entry[], pages: readonly number[], style: TextStyle): void {
  entries.forEach(({ id, title, page, y, element }, i) => {
    pen.pdf.switchToPage(page);
    const number = String((pages[i] ?? 0) + 1);
    const [first = ''] = pen.wrap(title, style, lineWidth - 40);
    const content = pen.marked('Link', () => {
      pen.write(first, paper.left, y, style);
      pen.write(number, paper.width - paper.right - pen.widthOf(number, style), y, style);
    });
    element.add(pen.link(content, id, [paper.left, y, lineWidth, step - 2]));
  });
}
