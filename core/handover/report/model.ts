/**
 * A report as plain data. The writers decide where things stand on a page and how a screen shows them, never what is
 * said. Texts are Unicode; a writer that lacks a sign replaces it (plainSigns.ts).
 */

import type { Picture } from './picture.ts';

/** A cell of a table, or a stretch of text that may lead somewhere. */
export interface Cell {
  readonly text: string;
  /** id of the block or section that it leads to */
  readonly to?: string;
  /** #rrggbb, shown as a field of that colour before the text */
  readonly swatch?: string;
  readonly strong?: boolean;
}

/** A column of a table; `share` of the table's width. */
export interface TableColumn {
  readonly label: string;
  readonly share: number;
  readonly align?: 'left' | 'right';
}

/** Rows under named columns; the first cell of each row names it. */
export interface TableBlock {
  readonly kind: 'table';
  readonly id: string;
  readonly caption: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly Cell[])[];
}

/** A picture with what it shows in words, for those who cannot see it. */
export interface FigureBlock {
  readonly kind: 'figure';
  readonly id: string;
  readonly caption: string;
  readonly alt: string;
  readonly picture: Picture;
}

/** What a section is made of. */
export type Block =
  | { readonly kind: 'heading'; readonly id: string; readonly text: string }
  | { readonly kind: 'paragraph'; readonly text: string; readonly tone?: 'small' | 'warning' | 'lead' }
  | { readonly kind: 'list'; readonly items: readonly Cell[] }
  | TableBlock
  | FigureBlock;

/** A part of the report with an entry among the contents. */
export interface ReportSection {
  readonly id: string;
  readonly title: string;
  /** whether it begins a page of its own and must fit on it */
  readonly ownPage?: boolean;
  readonly blocks: readonly Block[];
}

/** The whole report. */
export interface Report {
  readonly title: string;
  readonly subtitle: string;
  readonly language: 'en';
  /** YYYY-MM-DD */
  readonly date: string;
  /** title page: what it is of, in pairs */
  readonly facts: readonly { readonly label: string; readonly text: string }[];
  /** stand on every page: what is invented */
  readonly notices: readonly string[];
  /** head of every page */
  readonly running: string;
  /** the answer, before the contents */
  readonly summary: readonly Block[];
  readonly sections: readonly ReportSection[];
}

/** A text as a cell. */
export const cell = (text: string, more: Omit<Cell, 'text'> = {}): Cell => ({ text, ...more });

/** A paragraph. */
export const paragraph = (text: string, tone?: 'small' | 'warning' | 'lead'): Block =>
  tone ? { kind: 'paragraph', text, tone } : { kind: 'paragraph', text };

/** A heading within a section. */
export const heading = (id: string, text: string): Block => ({ kind: 'heading', id, text });

/**
 * A table from columns as `label|share|align` and rows of texts or cells.
 * @param columns e.g. `Length|12|right`
 */
export const table = (
  id: string,
  caption: string,
  columns: readonly string[],
  rows: readonly (readonly (string | Cell)[])[],
): TableBlock => ({
  kind: 'table',
  id,
  caption,
  columns: columns.map((text) => {
    const [label = '', share = '1', align] = text.split('|');
    return { label, share: Number(share), align: align === 'right' ? 'right' : 'left' };
  }),
  rows: rows.map((row) => row.map((each) => (typeof each === 'string' ? { text: each } : each))),
});

/** A table of names and what they are. */
export const facts = (id: string, caption: string, rows: readonly (readonly [string, string | Cell])[]): TableBlock =>
  table(id, caption, ['Item|35', 'Value|65'], rows);
