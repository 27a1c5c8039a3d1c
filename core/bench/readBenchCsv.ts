/** A table of trials as text to trials, with every line accounted for. */

import { fail, ok, type Result } from '../result.ts';
import { isDotted, slashOrder } from './csvDates.ts';
import { benchColumns, fieldDimensions, headingScore, isUnitOf } from './csvHeader.ts';
import { decimalMark } from './csvNumbers.ts';
import { type TrialSetup, trialSetup } from './csvRowReader.ts';
import { type CsvRow, csvRows, findDelimiter, plainText } from './csvRows.ts';
import { readTrial, type TrialReading } from './csvTrial.ts';
import {
  type BenchColumn,
  type BenchContext,
  type BenchCsvChoices,
  type BenchImport,
  type CsvFault,
  longestCsvText,
  mostCsvRows,
  mostTrials,
  type ReadTrial,
} from './csvTypes.ts';

/** Rows that are searched for the heading, and rows that a preview shows. */
const headingWithin = 30;
const previewRows = 20;
/** Most columns of a heading, and most cells of a row of the preview. */
const widest = 200;

const tooLarge = (value: string, allowed: string): Result<never> =>
  fail({
    path: [],
    code: 'table-too-large',
    message: 'The table is too large.',
    value,
    allowed,
    remedy: 'Split it into several files.',
  });

const isEmpty = ({ cells }: CsvRow): boolean => cells.every((cell) => cell.trim() === '');
const isComment = ({ cells }: CsvRow): boolean => (cells[0] ?? '').trimStart().startsWith('#');

/** A row with several bare numbers holds data, not names. */
const isData = ({ cells }: CsvRow): boolean => cells.filter((cell) => /^\s*[+-]?[\d.,]+\s*$/.test(cell)).length > 1;

/** The row that names most columns, at least two; the first of equals. */
function headingOf(rows: readonly CsvRow[], context: BenchContext): number {
  let best = -1;
  let most = 1;
  rows.slice(0, headingWithin).forEach((row, i) => {
    const score =
      isEmpty(row) || isComment(row) || isData(row) || row.cells.length > widest ? 0 : headingScore(row.cells, context);
    if (score > most) [best, most] = [i, score];
  });
  return best;
}

const noHeading = (rows: readonly CsvRow[]): Result<never> =>
  fail({
    path: [],
    code: 'no-heading',
    message: rows.every(isEmpty) ? 'The table is empty.' : 'No line names the columns.',
    value: (rows[0]?.cells.slice(0, 20).join(' | ') ?? '').slice(0, 80),
    allowed:
      'a heading with at least the screw speed, the time and the mass, such as: date, speed (rpm), time (s), mass (g)',
    remedy: 'Add a first line with the names of the columns.',
  });

/** Units written in a row of their own under the heading. */
function unitRow(row: CsvRow | undefined, columns: readonly BenchColumn[]): readonly string[] | null {
  if (!row || isEmpty(row)) return null;
  const units = row.cells.map((cell) =>
    cell
      .trim()
      .slice(0, 40)
      .replace(/^[[(]\s*|\s*[\])]$/g, ''),
  );
  const fits = columns.map(({ field, index }) => {
    const dimension = field === null ? undefined : fieldDimensions[field];
    return dimension !== undefined && isUnitOf(units[index] ?? '', dimension);
  });
  const others = units.every((unit, i) => fits[i] || !/\d/.test(unit));
  return others && fits.filter(Boolean).length >= 2 ? units.map((unit, i) => (fits[i] ? unit : '')) : null;
}

const withUnits = (
  columns: readonly BenchColumn[],
  units: readonly (string | undefined)[] | null,
): readonly BenchColumn[] =>
  units === null ? columns : columns.map((column) => ({ ...column, unit: units[column.index] || column.unit }));

/** Why a row holds no trial, or null. */
function skipReason(row: CsvRow, i: number, heading: number, unitsAt: number, rows: readonly CsvRow[]): string | null {
  if (isEmpty(row)) return 'An empty line.';
  if (isComment(row)) return 'A remark, marked with #.';
  if (i < heading) return 'Stands before the heading.';
  if (i === heading) return 'The heading.';
  if (i === unitsAt) return 'The units.';
  const same = row.cells.every((cell, at) => cell.trim() === (rows[heading].cells[at] ?? '').trim());
  return same ? 'The heading again.' : null;
}

function* cellsOf(rows: readonly CsvRow[], columns: readonly BenchColumn[], wanted: (c: BenchColumn) => boolean) {
  const indexes = columns.filter(wanted).map(({ index }) => index);
  for (const row of rows) for (const index of indexes) yield row.cells[index] ?? '';
}

/** Ids T1, T2 … that neither the log nor another line has. */
function freshIds(taken: ReadonlySet<string>, rows: readonly CsvRow[], columns: readonly BenchColumn[]): () => string {
  const reserved = new Set(taken);
  for (const id of cellsOf(rows, columns, ({ field }) => field === 'id')) reserved.add(id.trim());
  let last = 0;
  return () => {
    do last++;
    while (reserved.has(`T${last}`));
    return `T${last}`;
  };
}

interface Gathered {
  readonly trials: ReadTrial[];
  readonly errors: CsvFault[];
  readonly warnings: CsvFault[];
  readonly skips: { line: number; reason: string }[];
  faultyLines: number;
}

const wholeLine = (line: number, text: string, message: string, allowed: string): CsvFault => ({
  line,
  column: 0,
  header: '',
  text,
  message,
  allowed,
});

/** Takes a reading up, unless its id is taken or the log is full. */
function take(into: Gathered, row: CsvRow, reading: TrialReading, taken: Set<string>, room: number): void {
  const { trial } = reading;
  const clash =
    trial === null
      ? []
      : taken.has(trial.id)
        ? [wholeLine(row.line, trial.id, 'Another trial has the same id.', 'an id that no other trial has')]
        : into.trials.length >= room
          ? [wholeLine(row.line, trial.id, 'The bench log is full.', `at most ${mostTrials} trials in a project`)]
          : [];
  const errors = [...reading.errors, ...clash];
  into.warnings.push(...reading.warnings);
  if (trial === null || errors.length > 0) {
    into.errors.push(...errors);
    into.faultyLines++;
    return;
  }
  taken.add(trial.id);
  into.trials.push({ line: row.line, trial });
}

function gather(rows: readonly CsvRow[], heading: number, unitsAt: number, setup: TrialSetup): Gathered {
  const into: Gathered = { trials: [], errors: [], warnings: [], skips: [], faultyLines: 0 };
  const { columns, context } = setup;
  const taken = new Set(context.trialIds);
  const freshId = freshIds(taken, rows.slice(heading + 1), columns);
  rows.forEach((row, i) => {
    const reason = skipReason(row, i, heading, unitsAt, rows);
    if (reason !== null) into.skips.push({ line: row.line, reason });
    else take(into, row, readTrial(row, setup, freshId), taken, context.room);
  });
  return into;
}

/**
 * Reads a table of trials.
 * @param text content of the file, at most 4 million characters and 20 000 lines
 * @param context what the trials may refer to; see benchContext
 * @param choices what the user settled; all else is found from the text: separator, decimal mark, order of dates,
 * heading, units
 * @returns columns as understood, trials, located errors, warnings and skips: each line is in one of them. An issue
 * where the text is too large or has no heading. Never throws.
 */
export function readBenchCsv(text: string, context: BenchContext, choices: BenchCsvChoices = {}): Result<BenchImport> {
  if (text.length > longestCsvText) {
    return tooLarge(
      `${(text.length / 1e6).toFixed(1)} million characters`,
      `at most ${longestCsvText / 1e6} million characters`,
    );
  }
  const plain = plainText(text);
  const delimiter = choices.delimiter ?? findDelimiter(plain);
  const { rows, tooMany } = csvRows(plain, delimiter);
  if (tooMany) return tooLarge(`more than ${mostCsvRows} lines`, `at most ${mostCsvRows} lines`);
  const heading = headingOf(rows, context);
  if (heading < 0) return noHeading(rows);
  const named = benchColumns(rows[heading].cells, context, choices.fields);
  const units = unitRow(rows[heading + 1], named);
  const columns = withUnits(withUnits(named, units), choices.units ?? null);
  const body = rows.slice(heading + 1);
  const isQuantity = ({ field }: BenchColumn) => field !== null && field in fieldDimensions;
  const dates = [...cellsOf(body, columns, ({ field }) => field === 'date')];
  const found = decimalMark(cellsOf(body, columns, isQuantity), delimiter === ';' || dates.some(isDotted));
  const decimal = choices.decimal === undefined ? found : { mark: choices.decimal, sure: true };
  const dateOrder = choices.dateOrder ?? slashOrder(dates);
  const setup = trialSetup(columns, context, decimal, dateOrder);
  const gathered = gather(rows, heading, units === null ? -1 : heading + 1, setup);
  return ok({
    ...gathered,
    delimiter,
    decimal: decimal.mark,
    dateOrder,
    rows: rows.length,
    headerLine: rows[heading].line,
    columns,
    preview: rows
      .slice(0, previewRows)
      .map(({ line, cells }) => ({ line, cells: cells.slice(0, widest).map((cell) => cell.slice(0, 200)) })),
  });
}
