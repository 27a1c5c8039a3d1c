/** Pasted viscosity tables. */

import { decimalMark, quantityReader } from '../bench/csvNumbers.ts';
import { type CsvRow, csvRows, findDelimiter, plainText } from '../bench/csvRows.ts';
import type { RheologyPoint, RheologyTable } from '../material/fit/fitTypes.ts';
import { fail, type Issue, ok, type Result } from '../result.ts';
import { type Dimension, toSi } from '../units.ts';
import { assumedOrder, assumedUnits, columnsOf, type RheologyColumn, type RheologyField } from './rheologyHeader.ts';

/** Most rows that are read. */
const mostRows = 5000;
/** Longest text that is read, characters. */
const longest = 1_000_000;
/** Most numbers that could be read otherwise of which a note is made. */
const mostDoubts = 5;
/** Bare temperatures from here up can only be kelvin. */
const surelyKelvin = 420;

const fieldWords: Readonly<Record<RheologyField, string>> = {
  shearRate: 'shear rate',
  temperature: 'temperature',
  viscosity: 'viscosity',
};
const dimensions: Readonly<Record<RheologyField, Dimension>> = {
  shearRate: 'rate',
  temperature: 'temperature',
  viscosity: 'viscosity',
};
const delimiterWords: Readonly<Record<string, string>> = {
  '\t': 'tabs or spaces',
  ';': 'semicolons',
  ',': 'commas',
  '|': 'bars',
};

const startsWithNumber = (cell: string): boolean => /^\s*[+-]?[\d.,]*\d/.test(cell);
const isEmpty = ({ cells }: CsvRow): boolean => cells.every((cell) => cell.trim() === '');
const isData = ({ cells }: CsvRow): boolean => cells.filter(startsWithNumber).length >= 2;

/** Columns set apart by spaces alone become tabs: numbers at any space, headings at two or more. */
function spaced(text: string): string {
  if (/[\t;|]/.test(text)) return text;
  const numbers = /^\s*[+-]?[\d.,]+(e[+-]?\d+)?(\s+[+-]?[\d.,]+(e[+-]?\d+)?)+\s*$/i;
  const lines = text.split('\n');
  if (!lines.some((line) => numbers.test(line))) return text;
  return lines.map((line) => line.trim().replace(numbers.test(line) ? /\s+/g : / {2,}/g, '\t')).join('\n');
}

const whole = (code: string, message: string, allowed: string, remedy: string): Result<never> =>
  fail({ path: [], code, message, allowed, remedy });

/** The columns of a table without headings, by their number. */
const unnamed = (count: number): readonly RheologyColumn[] =>
  (count === 2 ? (['shearRate', 'viscosity'] as const) : assumedOrder).map((field, index) => ({
    field,
    index,
    unit: assumedUnits[field],
    told: false,
  }));

/** A table cut into headings and rows of numbers. */
interface Cut {
  readonly delimiter: string;
  readonly rows: readonly CsvRow[];
  readonly columns: readonly RheologyColumn[];
  readonly notes: readonly string[];
}

function cut(text: string): Result<Cut> {
  const body = spaced(plainText(text));
  const delimiter = findDelimiter(body);
  const { rows, tooMany } = csvRows(body, delimiter, mostRows);
  if (tooMany) return whole('too-large', 'The table is too long.', `at most ${mostRows} rows`, 'Paste fewer rows.');
  const start = rows.findIndex(isData);
  if (start < 0) {
    const allowed = 'rows of shear rate, temperature and viscosity';
    return whole('no-numbers', 'No row of numbers was found.', allowed, 'Paste a table with one reading per row.');
  }
  const heads = rows.slice(0, start).filter((row) => !isEmpty(row));
  const width = rows[start]?.cells.length ?? 0;
  const headings = Array.from({ length: width }, (_, k) => heads.map(({ cells }) => cells[k] ?? '').join(' '));
  const columns = heads.length > 0 ? columnsOf(headings) : unnamed(width);
  const order =
    heads.length > 0 ? [] : [`No headings: read as ${columns.map(({ field }) => fieldWords[field]).join(', ')}.`];
  const notes = [`Columns set apart by ${delimiterWords[delimiter] ?? delimiter}.`, ...order];
  return ok({ delimiter, rows: rows.slice(start).filter((row) => !isEmpty(row)), columns, notes });
}

/** Where the heading says no unit of temperature, numbers that can only be kelvin are taken as kelvin. */
function settled(columns: readonly RheologyColumn[], rows: readonly CsvRow[]): readonly RheologyColumn[] {
  return columns.map((column) => {
    if (column.field !== 'temperature' || column.told) return column;
    const numbers = rows.map(({ cells }) => Number.parseFloat((cells[column.index] ?? '').replace(',', '.')));
    const hot = numbers.filter((number) => Number.isFinite(number));
    return hot.length > 0 && hot.every((number) => number >= surelyKelvin) ? { ...column, unit: 'K' as const } : column;
  });
}

function assumptions(columns: readonly RheologyColumn[]): readonly string[] {
  return columns
    .filter(({ told }) => !told)
    .map(({ field, unit }) => `No unit for the ${fieldWords[field]}: ${unit} assumed.`);
}

/** Reads one field of a row: SI value or an issue. */
type Reader = (row: CsvRow) => number | Issue;

function readers(
  columns: readonly RheologyColumn[],
  rows: readonly CsvRow[],
  delimiter: string,
  doubt: (line: number, field: RheologyField, words: string) => void,
): ReadonlyMap<RheologyField, Reader> {
  const cells = rows.flatMap((row) => columns.map(({ index }) => row.cells[index] ?? ''));
  const mark = decimalMark(cells, delimiter === ';');
  return new Map(
    columns.map(({ field, index, unit }) => {
      const read = quantityReader(dimensions[field], unit, unit, mark);
      const reader: Reader = (row) => {
        const text = row.cells[index] ?? '';
        const got = row.fault === null ? read(text) : { fault: row.fault };
        if ('value' in got && got.doubt !== undefined) doubt(row.line, field, got.doubt);
        if ('value' in got) return toSi(got.value, unit);
        return {
          path: ['rows', row.line, field],
          code: 'bad-number',
          message: `Line ${row.line}: the ${fieldWords[field]} cannot be read. ${got.fault}`,
          value: text.slice(0, 60),
          allowed: `a number in ${unit}`,
          remedy: 'Correct the cell, or remove the row.',
        };
      };
      return [field, reader] as const;
    }),
  );
}

function missingColumn(columns: readonly RheologyColumn[], temperatureC: number | undefined): Result<never> | null {
  const lacks = (field: RheologyField) => !columns.some((column) => column.field === field);
  const lacking = assumedOrder.filter(
    (field) => lacks(field) && (field !== 'temperature' || temperatureC === undefined),
  );
  if (lacking.length === 0) return null;
  const names = lacking.map((field) => fieldWords[field]).join(', ');
  const allowed = 'headings such as: shear rate (1/s), temperature (°C), viscosity (Pa·s)';
  return whole('column-missing', `No column was found for: ${names}.`, allowed, 'Name the columns in the first row.');
}

/**
 * Reads a pasted table of viscosities.
 * @param text lines with shear rate, temperature and viscosity; headings with units (1/s, °C, K, °F, Pa·s, mPa·s, P) in
 *   any order, or none: then in this order in 1/s, °C and Pa·s; tabs, semicolons, commas, bars or spaces between, decimal
 *   point or comma; at most 5000 rows
 * @param temperatureC temperature of the whole table where it has no such column, °C
 * @returns points in SI with their lines, issues of rows that could not be read at `rows[line].field`, and notes about
 *   what was assumed; or one issue where no table can be made out. Whether values are believable is checked by the fit
 */
export function parseRheologyTable(text: string, temperatureC?: number): Result<RheologyTable> {
  if (text.length > longest) {
    return whole('too-large', 'The text is too long.', `at most ${longest} characters`, 'Paste the table alone.');
  }
  const table = cut(text);
  if (!table.ok) return table;
  const { rows } = table.value;
  const columns = settled(table.value.columns, rows);
  const lacking = missingColumn(columns, temperatureC);
  if (lacking) return lacking;
  const doubts: string[] = [];
  const reading = readers(columns, rows, table.value.delimiter, (line, field, words) => {
    if (doubts.length < mostDoubts) doubts.push(`Line ${line}, ${fieldWords[field]}: ${words}`);
  });
  const points: RheologyPoint[] = [];
  const issues: Issue[] = [];
  for (const row of rows) {
    const values = assumedOrder.map((field) => reading.get(field)?.(row) ?? toSi(temperatureC ?? 0, '°C'));
    const faults = values.filter((value) => typeof value !== 'number');
    const [shearRate, temperature, viscosity] = values.filter((value) => typeof value === 'number');
    if (faults.length > 0) issues.push(...faults);
    else
      points.push({
        shearRate: shearRate ?? 0,
        temperature: temperature ?? 0,
        viscosity: viscosity ?? 0,
        line: row.line,
      });
  }
  return ok({ points, issues, notes: [...table.value.notes, ...assumptions(columns), ...doubts] });
}
