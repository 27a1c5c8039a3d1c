/// <reference path="../../bench/papaparse.d.ts" />
/** A sheet for the workshop: tables and lists, as text, as a page to print, and as tables for a spreadsheet. */

import Papa from 'papaparse';
import { alignColumns } from '../../present/table.ts';

/** A table with its heading. */
export interface SheetTable {
  readonly kind: 'table';
  /** end of the file's name where the table is a file of its own */
  readonly id: string;
  readonly heading: string;
  readonly note: string | null;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Sentences under a heading. */
export interface SheetList {
  readonly kind: 'list';
  readonly heading: string;
  readonly lines: readonly string[];
}

/** A whole sheet. */
export interface Sheet {
  readonly title: string;
  readonly about: readonly string[];
  readonly parts: readonly (SheetTable | SheetList)[];
}

/** As text of fixed columns. */
export function sheetText({ title, about, parts }: Sheet): string {
  const lines = [title, ...about];
  for (const part of parts) {
    lines.push('', part.heading.toUpperCase());
    if (part.kind === 'list') lines.push(...part.lines.map((line, i) => `${i + 1}. ${line}`));
    else {
      if (part.note) lines.push(part.note);
      lines.push(...alignColumns([part.columns, ...part.rows]));
    }
  }
  return `${lines.join('\n')}\n`;
}

const escaped = (text: string): string =>
  text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');

const style = [
  'body{font:14px/1.45 system-ui,sans-serif;color:#111;background:#fff;margin:2rem;max-width:75rem}',
  'h1{font-size:1.4rem;margin:0 0 .3rem}h2{font-size:1.1rem;margin:1.6rem 0 .3rem}p{margin:.2rem 0}',
  '.wide{overflow-x:auto}table{border-collapse:collapse;font-variant-numeric:tabular-nums;font-size:12.5px}',
  'th,td{border:1px solid #999;padding:.15rem .45rem;text-align:left;vertical-align:top}th{background:#eee}',
  '@media print{body{margin:0;font-size:10px}table{font-size:9px}tr,h2{break-inside:avoid}h2{break-after:avoid}}',
].join('');

function partHtml(part: SheetTable | SheetList): string {
  const heading = `<h2>${escaped(part.heading)}</h2>`;
  if (part.kind === 'list') {
    return `${heading}<ol>${part.lines.map((line) => `<li>${escaped(line)}</li>`).join('')}</ol>`;
  }
  const head = part.columns.map((name) => `<th scope="col">${escaped(name)}</th>`).join('');
  const rows = part.rows.map((row) => `<tr>${row.map((cell) => `<td>${escaped(cell)}</td>`).join('')}</tr>`);
  const note = part.note ? `<p>${escaped(part.note)}</p>` : '';
  return `${heading}${note}<div class="wide"><table><thead><tr>${head}</tr></thead><tbody>\n${rows.join('\n')}\n</tbody></table></div>`;
}

/** As a page of its own, without script, for reading and printing. */
export function sheetHtml({ title, about, parts }: Sheet): string {
  return [
    '<!doctype html>',
    `<html lang="en-GB"><head><meta charset="utf-8"><title>${escaped(title)}</title>`,
    `<meta name="viewport" content="width=device-width,initial-scale=1"><style>${style}</style></head><body>`,
    `<h1>${escaped(title)}</h1>`,
    ...about.map((line) => `<p>${escaped(line)}</p>`),
    ...parts.map(partHtml),
    '</body></html>',
    '',
  ].join('\n');
}

/** Texts that a spreadsheet would run as a formula; a plain number may begin with a minus. */
const formula = /^(?![+-]?[\d.]+(e[+-]?\d+)?$)[=+\-@\t\r]/i;

/** A table for spreadsheets: commas, decimal points, lines ended by CR LF. */
export const tableCsv = ({ columns, rows }: SheetTable): string =>
  `${Papa.unparse(
    [columns, ...rows].map((row) => row.map((cell) => (formula.test(cell) ? `'${cell}` : cell))),
    { delimiter: ',', newline: '\r\n' },
  )}\r\n`;
