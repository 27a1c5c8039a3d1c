/** The hand-over modules of the workshop: tables for a spreadsheet, a sheet to print, a list of parts. */

import { ok, type Result } from '../../result.ts';
import { tableBytes, utf8 } from '../bytes.ts';
import { choiceOf, numberOf } from '../check.ts';
import { fileName } from '../names.ts';
import type { HandoverFile, HandoverModule, HandoverOption, HandoverSource, HandoverValues } from '../types.ts';
import { latheOptions, readLathe } from './lathe.ts';
import { partsSheet } from './partsList.ts';
import { type Sheet, type SheetTable, sheetHtml, sheetText, tableCsv } from './sheet.ts';
import { turningSheet } from './turning.ts';

type Form = 'csv' | 'html' | 'text';

const forms: Readonly<Record<Form, { extension: string; mediaType: string }>> = {
  csv: { extension: 'csv', mediaType: 'text/csv' },
  html: { extension: 'html', mediaType: 'text/html' },
  text: { extension: 'txt', mediaType: 'text/plain' },
};

const form = (choices: readonly Form[], start: Form): HandoverOption => ({
  id: 'form',
  label: 'Form',
  help: 'A table is for spreadsheets, a page for printing, text for everything else.',
  kind: 'choice',
  choices: choices.map((id) => ({ id, label: { csv: 'Table (CSV)', html: 'Page (HTML)', text: 'Text' }[id] })),
  start,
});

const cautions: readonly string[] = [
  'Order of cutting and limits are common practice, not a work instruction: the machine’s manual and local rules come first.',
];

function fileOf({ project, subjects: [{ revision }] }: HandoverSource, name: string, kind: Form, bytes: Uint8Array) {
  const { extension, mediaType } = forms[kind];
  return { name: fileName([project.name, revision.id, name], extension), mediaType, bytes };
}

const tablesOf = ({ parts }: Sheet): SheetTable[] => parts.filter((part): part is SheetTable => part.kind === 'table');

const rowsFact = ({ heading, rows }: SheetTable) => ({ label: heading, text: `${rows.length} rows` });

/** A sheet in one form; a table a file as CSV. */
function filesOf(source: HandoverSource, sheet: Sheet, kind: Form, name: string): HandoverFile[] {
  const tables = tablesOf(sheet);
  if (kind === 'csv') {
    return tables.map((table) => {
      const stem = table.id === name ? name : `${name}-${table.id}`;
      return { ...fileOf(source, stem, 'csv', tableBytes(tableCsv(table))), facts: [rowsFact(table)] };
    });
  }
  const bytes = kind === 'html' ? utf8(sheetHtml(sheet)) : utf8(sheetText(sheet));
  return [{ ...fileOf(source, name, kind, bytes), facts: tables.map(rowsFact) }];
}

function turning(source: HandoverSource, values: HandoverValues, kind: Form): Result<readonly HandoverFile[]> {
  const lathe = readLathe(values);
  if (!lathe.ok) return lathe;
  const sheet = turningSheet(source, lathe.value, numberOf(values, 'every') * 1e-3);
  return ok(filesOf(source, sheet, kind, 'turning').map((file) => ({ ...file, cautions })));
}

/** Tables of stations, flights and blank for a spreadsheet. */
export const shopTableModule: HandoverModule = {
  id: 'shop-table',
  label: 'Turning tables',
  help: 'Stations, flights with change gears or threading words, and the blank, one table each for a spreadsheet.',
  extension: 'csv',
  mediaType: 'text/csv',
  group: 'shop',
  needs: 'design',
  several: false,
  options: latheOptions,
  write: async (source, values) => turning(source, values, 'csv'),
};

/** The same with order of cutting and cautions, to read and print. */
export const shopSheetModule: HandoverModule = {
  id: 'shop-sheet',
  label: 'Turning sheet',
  help: 'The turning tables with an order of cutting and cautions, as a page to print or as text.',
  extension: 'html',
  mediaType: 'text/html',
  group: 'shop',
  needs: 'design',
  several: false,
  options: [form(['html', 'text'], 'html'), ...latheOptions],
  write: async (source, values) => turning(source, values, choiceOf<Form>(values, 'form')),
};

/** What to make and what to buy. */
export const partsListModule: HandoverModule = {
  id: 'parts-list',
  label: 'Parts list',
  help: 'What to make and what to buy, indented as assembled, with the design’s figures.',
  extension: 'csv',
  mediaType: 'text/csv',
  group: 'shop',
  needs: 'prediction',
  several: false,
  options: [form(['csv', 'html', 'text'], 'csv')],
  write: async (source, values) => ok(filesOf(source, partsSheet(source), choiceOf<Form>(values, 'form'), 'parts')),
};
