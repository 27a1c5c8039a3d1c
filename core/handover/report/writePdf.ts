/** The report as a PDF: A4, contents, bookmarks, links, searchable text, and a structure that can be read aloud. */

import { collected } from '../pdfBytes.ts';
import type { Block, Cell, FigureBlock, Report, ReportSection } from './model.ts';
import { contentsOf, drawContents } from './pdfContents.ts';
import { lineWidth, Pen, paper, type TextStyle } from './pdfPen.ts';
import { drawPicture } from './pdfPicture.ts';
import { SetTable } from './pdfTable.ts';
import type { PdfOutline, PdfPaper, PdfPaperClass, PdfStruct } from './pdfTypes.ts';
import { paperTones } from './picture.ts';

const ink = paperTones.ink;
const plain: TextStyle = { font: 'Helvetica', size: 9.5, lead: 13, colour: ink };
const styles = {
  title: { font: 'Helvetica-Bold', size: 21, lead: 26, colour: ink },
  subtitle: { font: 'Helvetica', size: 13, lead: 17, colour: paperTones.soft },
  section: { font: 'Helvetica-Bold', size: 14.5, lead: 19, colour: ink },
  heading: { font: 'Helvetica-Bold', size: 10.5, lead: 14, colour: ink },
  plain,
  small: { ...plain, size: 8.5, lead: 11.5, colour: paperTones.soft },
  lead: { ...plain, size: 10.5, lead: 14.5 },
  warning: { ...plain, font: 'Helvetica-Bold', colour: '#8c1d18' },
  caption: { ...plain, size: 8.5, lead: 11.5, colour: paperTones.soft },
  link: { ...plain, colour: '#0b57a4' },
  running: { ...plain, size: 8, lead: 10, colour: paperTones.soft },
  notice: { font: 'Helvetica-Bold', size: 8, lead: 10, colour: '#8c1d18' },
} as const satisfies Record<string, TextStyle>;

/** Sets one report. */
class Setter {
  readonly pen: Pen;
  readonly root: PdfStruct;
  #under: PdfOutline;

  constructor(pdf: PdfPaper) {
    this.pen = new Pen(pdf);
    this.root = pdf.struct('Document');
    pdf.addStructure(this.root);
    this.#under = pdf.outline;
  }

  text(parent: PdfStruct, tag: string, text: string, style: TextStyle, after: number): void {
    const element = this.pen.pdf.struct(tag);
    this.pen.lines(element, tag, this.pen.wrap(text, style, lineWidth), paper.left, style);
    parent.add(element);
    this.pen.y += after;
  }

  /** Height that must not be parted from a heading before it. */
  #leadOf(block: Block | undefined): number {
    if (!block) return 0;
    switch (block.kind) {
      case 'table':
        return new SetTable(this.pen, block).leadHeight;
      case 'figure':
        return Math.min(this.#figureHeight(block), 500);
      case 'heading':
        return 60;
      default:
        return 2 * plain.lead;
    }
  }

  #figureHeight({ caption, picture }: FigureBlock): number {
    return picture.height + 4 + this.pen.wrap(caption, styles.caption, lineWidth).length * styles.caption.lead;
  }

  #figure(parent: PdfStruct, block: FigureBlock): void {
    const { pen } = this;
    pen.ensure(this.#figureHeight(block));
    pen.name(block.id);
    const { width, height } = block.picture;
    const left = paper.left + (lineWidth - width) / 2;
    const figure = pen.pdf.struct('Figure', { alt: block.alt, bbox: [left, pen.y, left + width, pen.y + height] });
    figure.add(pen.marked('Figure', () => drawPicture(pen, block.picture, left, pen.y)));
    pen.y += height + 4;
    parent.add(figure);
    this.text(parent, 'Caption', block.caption, styles.caption, 12);
  }

  #list(parent: PdfStruct, items: readonly Cell[]): void {
    const { pen } = this;
    const list = pen.pdf.struct('L');
    for (const item of items) {
      const style = item.to ? styles.link : plain;
      const lines = pen.wrap(item.text, style, lineWidth - 14);
      pen.ensure(Math.min(lines.length, 3) * style.lead);
      const element = pen.pdf.struct('LI');
      const [label, body] = [pen.pdf.struct('Lbl'), pen.pdf.struct('LBody')];
      label.add(pen.marked('Lbl', () => pen.write('•', paper.left + 3, pen.y, plain)));
      const [page, top] = [pen.page, pen.y];
      if (item.to && lines.length * style.lead <= pen.room) {
        const content = pen.marked('Link', () => {
          lines.forEach((line, i) => {
            pen.write(line, paper.left + 14, top + i * style.lead, style);
          });
        });
        body.add(pen.link(content, item.to, [paper.left + 14, top, lineWidth - 14, lines.length * style.lead]));
        pen.y += lines.length * style.lead;
      } else pen.lines(body, 'LBody', lines, paper.left + 14, style);
      pen.y = page === pen.page ? Math.max(pen.y, top) + 3 : pen.y + 3;
      element.add(label);
      element.add(body);
      list.add(element);
    }
    parent.add(list);
    pen.y += 6;
  }

  block(parent: PdfStruct, block: Block, next: Block | undefined): void {
    const { pen } = this;
    switch (block.kind) {
      case 'heading':
        pen.y += pen.y > paper.top ? 6 : 0;
        pen.ensure(styles.heading.lead + 6 + this.#leadOf(next));
        pen.name(block.id);
        this.#under.addItem(pen.plain(block.text), this.#here());
        this.text(parent, 'H3', block.text, styles.heading, 4);
        break;
      case 'paragraph':
        this.text(parent, 'P', block.text, styles[block.tone ?? 'plain'], 7);
        break;
      case 'list':
        this.#list(parent, block.items);
        break;
      case 'table':
        new SetTable(pen, block).draw(parent);
        pen.y += 14;
        break;
      case 'figure':
        this.#figure(parent, block);
        break;
    }
  }

  blocks(parent: PdfStruct, blocks: readonly Block[]): void {
    blocks.forEach((block, i) => {
      this.block(parent, block, blocks[i + 1]);
    });
  }

  #here = () => ({ top: Math.max(0, this.pen.y - 8), left: paper.width });

  /** @returns the page it begins on, from 0 */
  section({ id, title, blocks, ownPage }: ReportSection, afterOwnPage: boolean): number {
    const { pen } = this;
    if ((ownPage || afterOwnPage) && pen.y > paper.top) pen.newPage();
    pen.y += pen.y > paper.top ? 14 : 0;
    pen.ensure(
      styles.section.lead +
        12 +
        this.#leadOf(blocks[0]) +
        (blocks[0]?.kind === 'paragraph' ? this.#leadOf(blocks[1]) : 0),
    );
    const page = pen.page;
    pen.name(id);
    this.#under = pen.pdf.outline.addItem(pen.plain(title), this.#here());
    const element = pen.pdf.struct('Sect');
    this.root.add(element);
    this.text(element, 'H2', title, styles.section, 6);
    this.blocks(element, blocks);
    return page;
  }

  titlePage({ title, subtitle, facts, notices, summary }: Report): void {
    const { pen } = this;
    const element = pen.pdf.struct('Sect');
    this.root.add(element);
    this.text(element, 'H1', title, styles.title, 2);
    this.text(element, 'P', subtitle, styles.subtitle, 10);
    for (const notice of notices) this.text(element, 'P', notice, styles.warning, 2);
    pen.y += notices.length > 0 ? 6 : 0;
    for (const { label, text } of facts) this.text(element, 'P', `${label}: ${text}`, plain, 1);
    pen.y += 10;
    pen.pdf.outline.addItem('The answer in short', this.#here());
    this.text(element, 'H2', 'The answer in short', styles.section, 6);
    this.blocks(element, summary);
  }

  /** Head and foot of every page, when their count is known. */
  running({ running, notices, date }: Report): void {
    const { pen } = this;
    const { start, count } = pen.pdf.bufferedPageRange();
    for (let i = 0; i < count; i++) {
      pen.pdf.switchToPage(start + i);
      pen.artifact('Pagination', () => {
        const [first = ''] = pen.wrap(running, styles.running, lineWidth - 130);
        pen.write(first, paper.left, 34, styles.running);
        pen.write(date, paper.width - paper.right - pen.widthOf(date, styles.running), 34, styles.running);
        const notice = notices.join(' ');
        if (notice !== '') {
          pen
            .wrap(notice, styles.notice, lineWidth)
            .slice(0, 2)
            .forEach((line, k) => {
              pen.write(line, paper.left, 46 + 10 * k, styles.notice);
            });
        }
        const number = `${i + 1} of ${count}`;
        const x = paper.width - paper.right - pen.widthOf(number, styles.running);
        pen.write(number, x, paper.height - 40, styles.running);
        pen.write('Augerwright', paper.left, paper.height - 40, styles.running);
      });
    }
  }
}

const infoOf = (report: Report, pen: (text: string) => string) => {
  const day = new Date(`${report.date}T00:00:00Z`);
  return {
    Title: pen(`${report.title} – ${report.subtitle}`),
    Subject: pen(report.notices.join(' ')),
    Author: 'Augerwright',
    Creator: 'Augerwright',
    Producer: 'Augerwright',
    CreationDate: day,
    ModDate: day,
  };
};

/** The report as bytes, its pages, and the signs that the standard fonts could neither keep nor say. */
export async function reportPdf(
  report: Report,
  Document: PdfPaperClass,
): Promise<{ bytes: Uint8Array; pages: number; lost: readonly string[] }> {
  const pdf = new Document({
    ...{ autoFirstPage: false, bufferPages: true, tagged: true, pdfVersion: '1.7' },
    ...{ size: [paper.width, paper.height], margin: 0, lang: report.language, displayTitle: true },
    info: infoOf(report, (text) => text),
  });
  const done = collected(pdf);
  const setter = new Setter(pdf);
  const { pen, root } = setter;
  pen.newPage();
  setter.titlePage(report);
  const contents = contentsOf(pen, root, report, styles.section);
  pen.newPage();
  const pages = report.sections.map((section, i) => setter.section(section, report.sections[i - 1]?.ownPage ?? false));
  drawContents(pen, contents, pages, styles.link);
  setter.running(report);
  const { count } = pdf.bufferedPageRange();
  pdf.end();
  return { bytes: await done, pages: count, lost: pen.lost };
}
