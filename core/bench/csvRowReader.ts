/** What the lines of one table share, and a reader that gathers the faults of one line. */

import type { Unit } from '../units.ts';
import type { DateOrder } from './csvDates.ts';
import { fieldDimensions } from './csvHeader.ts';
import { type DecimalMark, type NumberReading, type QuantityReader, quantityReader, readPlain } from './csvNumbers.ts';
import type { CsvRow } from './csvRows.ts';
import type { BenchColumn, BenchContext, BenchField, CsvFault } from './csvTypes.ts';

/** Units in which trials are stored. */
const storedUnits: Readonly<Partial<Record<BenchField, Unit>>> = {
  speed: 'rpm',
  tempC: '°C',
  seconds: 's',
  grams: 'g',
  rate: 'g/min',
  torque: 'N·m',
  current: 'A',
};

/** What the lines of one table share. */
export interface TrialSetup {
  readonly columns: readonly BenchColumn[];
  readonly context: BenchContext;
  readonly decimal: DecimalMark;
  readonly dateOrder: DateOrder | null;
  readonly readers: ReadonlyMap<number, QuantityReader>;
  readonly byField: ReadonlyMap<BenchField, BenchColumn>;
  /** columns of set temperatures, in order along the machine */
  readonly temperatures: readonly BenchColumn[];
}

/** Looks up once what every line needs. */
export function trialSetup(
  columns: readonly BenchColumn[],
  context: BenchContext,
  decimal: DecimalMark,
  dateOrder: DateOrder | null,
): TrialSetup {
  const temperatures = columns.filter(({ field }) => field === 'tempC');
  temperatures.sort((p, q) => (p.order ?? 0) - (q.order ?? 0));
  const byField = new Map(
    columns.flatMap((column) => (column.field === null ? [] : [[column.field, column] as const])),
  );
  return { columns, context, decimal, dateOrder, readers: columnReaders(columns, decimal), byField, temperatures };
}

/** Readers of the columns that hold quantities. */
function columnReaders(columns: readonly BenchColumn[], decimal: DecimalMark): Map<number, QuantityReader> {
  const readers = new Map<number, QuantityReader>();
  for (const { index, field, unit } of columns) {
    const dimension = field === null ? undefined : fieldDimensions[field];
    const stored = field === null ? undefined : storedUnits[field];
    if (dimension && stored) readers.set(index, quantityReader(dimension, unit, stored, decimal));
  }
  return readers;
}

const shortText = (text: string): string => (text.length > 60 ? `${text.slice(0, 60)}…` : text);

/** Looks into one row and gathers what is wrong with it. */
export class RowReader {
  readonly errors: CsvFault[] = [];
  readonly warnings: CsvFault[] = [];
  readonly row: CsvRow;
  readonly setup: TrialSetup;

  constructor(row: CsvRow, setup: TrialSetup) {
    this.row = row;
    this.setup = setup;
  }

  column(field: BenchField): BenchColumn | undefined {
    return this.setup.byField.get(field);
  }

  text(column: BenchColumn | undefined): string {
    return column === undefined ? '' : (this.row.cells[column.index] ?? '');
  }

  fault(column: BenchColumn | undefined, message: string, allowed: string, list = this.errors): undefined {
    const text = shortText(this.text(column));
    list.push({
      line: this.row.line,
      column: (column?.index ?? -1) + 1,
      header: column?.header ?? '',
      text,
      message,
      allowed,
    });
    return undefined;
  }

  quantity(field: BenchField, allowed: string): number | undefined {
    const column = this.column(field);
    const text = this.text(column).trim();
    if (column === undefined || text === '') return undefined;
    const reader = this.setup.readers.get(column.index);
    const read = reader ? reader(text) : readPlain(text, this.setup.decimal);
    return 'value' in read ? this.taken(column, read) : this.fault(column, read.fault, allowed);
  }

  /** The number, its doubt told. */
  taken(column: BenchColumn, { value, doubt }: Extract<NumberReading, { readonly value: number }>): number {
    if (doubt !== undefined)
      this.fault(column, doubt, 'the decimal mark told, or a number without thousands', this.warnings);
    return value;
  }

  named(
    field: 'revision' | 'material',
    among: readonly { readonly id: string; readonly name: string }[],
    other: string,
  ): string {
    const column = this.column(field);
    const text = this.text(column).trim();
    if (text === '') return other;
    const lower = text.toLowerCase();
    const found =
      among.find(({ id }) => id === text) ??
      among.find(({ id, name }) => id.toLowerCase() === lower || name.toLowerCase() === lower);
    if (found) return found.id;
    const ids = among.slice(0, 20).map(({ id }) => id);
    this.fault(
      column,
      `No ${field} has this id or name.`,
      `one of: ${ids.join(', ')}${among.length > 20 ? ', …' : ''}`,
    );
    return other;
  }
}
