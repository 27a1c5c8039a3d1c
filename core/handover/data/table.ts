/// <reference path="../../bench/papaparse.d.ts" />
/** Plain tables with a unit in every heading, and their text for spreadsheets. */

import Papa from 'papaparse';
import { fromSi, type Unit, unitLabel } from '../../units.ts';

/** A cell; null where there is no number. */
export type Cell = number | string | null;

/** A table; all rows as long as the columns. */
export interface DataTable {
  readonly id: string;
  readonly title: string;
  readonly columns: readonly { readonly label: string; readonly unit: string }[];
  readonly rows: readonly (readonly Cell[])[];
}

/** How numbers are written: a decimal comma goes with semicolons between cells. */
export interface TableStyle {
  readonly decimal: '.' | ',';
}

/** Significant digits that are written: more than any model is good for. */
const digits = 8;

/** A finite number as it is written, or null. */
export const cellOf = (value: number | null | undefined): Cell =>
  typeof value === 'number' && Number.isFinite(value) ? Number(value.toPrecision(digits)) : null;

/** An SI number in a display unit, or null. */
export const cellIn = (value: number | null | undefined, unit: Unit): Cell =>
  typeof value === 'number' && Number.isFinite(value) ? cellOf(fromSi(value, unit)) : null;

/** A column of SI values shown in a unit. */
export interface Column {
  readonly label: string;
  readonly unit: Unit | '';
  readonly values: ArrayLike<number>;
}

/** A table of columns of equal length. */
export function columnTable(id: string, title: string, columns: readonly Column[]): DataTable {
  const count = columns[0]?.values.length ?? 0;
  return {
    id,
    title,
    columns: columns.map(({ label, unit }) => ({ label, unit: unit === '' ? '' : unitLabel(unit) })),
    rows: Array.from({ length: count }, (_, i) =>
      columns.map(({ unit, values }) => (unit === '' ? cellOf(values[i]) : cellIn(values[i], unit))),
    ),
  };
}

/** `Pressure (MPa)`. */
export const headingOf = ({ label, unit }: DataTable['columns'][number]): string =>
  unit === '' ? label : `${label} (${unit})`;

/** A spreadsheet takes a text that begins so for a formula. */
const formula = /^[=+\-@\t]/;

const written = (cell: Cell, { decimal }: TableStyle): string => {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell).replace('.', decimal);
  return formula.test(cell) ? `'${cell}` : cell;
};

/** The table as CSV, heading first, lines ended by CR LF. */
export function csvText(table: DataTable, style: TableStyle): string {
  const rows = [table.columns.map(headingOf), ...table.rows.map((row) => row.map((cell) => written(cell, style)))];
  return `${Papa.unparse(rows, { delimiter: style.decimal === ',' ? ';' : ',', newline: '\r\n' })}\r\n`;
}

/** Several tables in one text, each under a remark with its title, parted by empty lines. */
export const stackedCsv = (tables: readonly DataTable[], style: TableStyle): string =>
  tables.map((table) => `# ${table.title}\r\n${csvText(table, style)}`).join('\r\n');
