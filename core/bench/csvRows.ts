/// <reference path="./papaparse.d.ts" />
/** Delimited text to rows of cells, each with its line. */

import Papa from 'papaparse';
import { mostCsvRows } from './csvTypes.ts';

/** A row of the file. */
export interface CsvRow {
  /** line on which the row begins, from 1 */
  readonly line: number;
  readonly cells: readonly string[];
  /** why the row cannot be trusted, in words, else null */
  readonly fault: string | null;
}

/** Rows of a text. */
export interface CsvRows {
  readonly rows: readonly CsvRow[];
  /** true where reading stopped at the limit */
  readonly tooMany: boolean;
}

/** Separators that are tried, the likelier first where two fit alike. */
const knownDelimiters = ['\t', ';', ',', '|'] as const;

const faultWords: Readonly<Record<string, string>> = {
  MissingQuotes: 'A quotation mark is opened and never closed.',
  InvalidQuotes: 'A quotation mark stands inside a quoted cell.',
};

const lineBreaks = (text: string, from: number, to: number): number => {
  let count = 0;
  for (let at = text.indexOf('\n', from); at >= 0 && at < to; at = text.indexOf('\n', at + 1)) count++;
  return count;
};

/** One kind of line break, and no mark of the byte order. */
export const plainText = (text: string): string => text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');

/**
 * Rows of a text.
 * @param text from plainText
 * @param delimiter one character
 * @param most rows to read
 */
export function csvRows(text: string, delimiter: string, most = mostCsvRows): CsvRows {
  const rows: CsvRow[] = [];
  let line = 1;
  let before = 0;
  let tooMany = false;
  Papa.parse(text, {
    delimiter,
    newline: '\n',
    step: ({ data, errors, meta }, parser) => {
      if (rows.length >= most) {
        tooMany = meta.cursor < text.length || data.some((cell) => cell.trim() !== '');
        parser.abort();
        return;
      }
      const code = errors[0]?.code;
      rows.push({ line, cells: data, fault: code === undefined ? null : (faultWords[code] ?? errors[0].message) });
      line += lineBreaks(text, before, meta.cursor);
      before = meta.cursor;
    },
  });
  // The text's last line break ends a row and begins none.
  const last = rows[rows.length - 1];
  if (text.endsWith('\n') && last?.cells.length === 1 && last.cells[0] === '') rows.pop();
  return { rows, tooMany };
}

/** Rows that are looked at to find the separator. */
const looked = 30;

/** How well a separator cuts the first rows: columns of its widest-agreed row times the share of rows that agree. */
function fitOf(text: string, delimiter: string): number {
  const counts = csvRows(text, delimiter, looked)
    .rows.filter(({ cells, fault }) => fault === null && cells.some((cell) => cell.trim() !== ''))
    .map(({ cells }) => cells.length);
  const agreeing = (count: number) => counts.filter((other) => other === count).length;
  const common = counts.reduce((best, count) => (agreeing(count) > agreeing(best) ? count : best), counts[0] ?? 1);
  return common > 1 ? agreeing(common) / counts.length + Math.min(common, 20) * 1e-3 : 0;
}

/**
 * The separator of a text.
 * @param text from plainText
 * @returns one character; a comma where nothing separates
 */
export function findDelimiter(text: string): string {
  const told = /^\s*"?sep=(.)"?\s*(\n|$)/i.exec(text)?.[1];
  if (told !== undefined && !/["\uFEFF\uD800-\uDFFF]/.test(told)) return told;
  const start = text.slice(0, 200_000);
  const fits = knownDelimiters.map((delimiter) => fitOf(start, delimiter));
  const best = fits.indexOf(Math.max(...fits));
  return fits[best] > 0 ? knownDelimiters[best] : ',';
}
