/** One line of a table to one trial. */

import { type Trial, trialSchema } from '../project/schema.ts';
import { checkSchema } from '../project/schemaIssues.ts';
import { readDate } from './csvDates.ts';
import { RowReader, type TrialSetup } from './csvRowReader.ts';
import type { CsvRow } from './csvRows.ts';
import type { BenchField, CsvFault } from './csvTypes.ts';

/** A line as read: a trial, or the faults that prevented it. */
export interface TrialReading {
  readonly trial: Trial | null;
  readonly errors: readonly CsvFault[];
  readonly warnings: readonly CsvFault[];
}

function dateOf(reader: RowReader): string | undefined {
  const { context, dateOrder } = reader.setup;
  const column = reader.column('date');
  const text = reader.text(column).trim();
  const allowed = 'a date such as 2026-04-30 or 30.4.2026';
  if (text === '') return context.date ?? reader.fault(column, 'The trial has no date.', allowed);
  const read = readDate(text, dateOrder);
  if ('fault' in read) return reader.fault(column, read.fault, allowed);
  if (read.doubt !== null) reader.fault(column, read.doubt, 'a date such as 2026-04-30', reader.warnings);
  return read.date;
}

/** Longest cell that is looked at for several temperatures, characters. */
const longestCell = 600;

const temperatureWords = 'temperatures from the feed to the nozzle, such as 185 or 175/185/188';

/** Cells or pieces of one cell that hold a temperature each, blank ones too. */
function temperatureTexts(reader: RowReader) {
  const columns = reader.setup.temperatures;
  return columns.flatMap((column) => {
    const whole = reader.text(column).trim();
    // no row of temperatures is as long, and taking it apart would take long
    if (whole.length > longestCell) return [{ column, piece: whole }];
    const pieces = columns.length > 1 ? [whole] : whole.split(/\s*[/;|]\s*|\s+(?=[\d+])/);
    return pieces.map((piece) => ({ column, piece }));
  });
}

/** Set temperatures in order; one column may hold them all, e.g. `175/185/188`. Blanks may only end the row of them. */
function temperaturesOf(reader: RowReader): number[] {
  const texts = temperatureTexts(reader);
  const last = texts.reduce((found, { piece }, i) => (piece === '' ? found : i), -1);
  return texts.slice(0, last + 1).flatMap(({ column, piece }) => {
    if (piece === '') {
      reader.fault(column, 'A temperature is missing between others.', temperatureWords);
      return [];
    }
    const read = reader.setup.readers.get(column.index)?.(piece);
    if (read && 'value' in read) return [reader.taken(column, read)];
    reader.fault(column, read?.fault ?? 'This is not a temperature.', temperatureWords);
    return [];
  });
}

/** Warns where the temperatures are not one for each heater of the revision. */
function compareHeaters(reader: RowReader, revisionId: string, count: number): void {
  const heated = reader.setup.context.revisions.find(({ id }) => id === revisionId)?.heated ?? [];
  if (count === 0 || heated.length === 0 || count === heated.length || reader.errors.length > 0) return;
  const message = `The line gives ${count} ${count === 1 ? 'temperature' : 'temperatures'}, revision ${revisionId} has ${heated.length} heaters: the trial cannot be predicted.`;
  reader.fault(reader.setup.temperatures[0], message, heated.join(', '), reader.warnings);
}

/** Seconds and grams, or the rate that stands for them. */
function amountsOf(reader: RowReader): { seconds: number; grams: number } | undefined {
  const seconds = reader.quantity('seconds', 'a time such as 120 or 2 min');
  const grams = reader.quantity('grams', 'a mass such as 8.1 or 0.0081 kg');
  const rate = reader.quantity('rate', 'a rate such as 4.05 or 0.24 kg/h');
  if (seconds !== undefined && grams !== undefined) return { seconds, grams };
  if (rate === undefined) {
    if (reader.errors.length > 0) return undefined;
    const missing = seconds === undefined ? 'seconds' : 'grams';
    const words = missing === 'seconds' ? 'The trial has no time.' : 'The trial has no mass.';
    return reader.fault(reader.column(missing), words, 'seconds and grams, or grams per minute');
  }
  const whole = seconds ?? (grams !== undefined && rate > 0 ? (60 * grams) / rate : 60);
  const words = 'Only the rate is given; grams and seconds were worked out from it.';
  reader.fault(reader.column('rate'), words, 'grams and seconds as weighed', reader.warnings);
  return { seconds: whole, grams: grams ?? (rate * whole) / 60 };
}

function labOf(reader: RowReader): Trial['lab'] {
  const fields = ['labL', 'labA', 'labB'] as const;
  const filled = fields.filter((field) => reader.text(reader.column(field)).trim() !== '');
  if (filled.length === 0) return undefined;
  const [l, a, b] = fields.map((field) => reader.quantity(field, 'a number'));
  if (l !== undefined && a !== undefined && b !== undefined) return [l, a, b];
  if (filled.length < 3) reader.fault(reader.column(filled[0]), 'A colour needs L*, a* and b*.', 'all three, or none');
  return undefined;
}

const yes = /^(yes|y|true|1|x|ja|j|wahr)$/i;
const no = /^(|no|n|false|0|-|nein|falsch)$/i;

function excludedOf(reader: RowReader): true | undefined {
  const column = reader.column('excluded');
  const text = reader.text(column).trim();
  if (yes.test(text)) return true;
  return no.test(text) ? undefined : reader.fault(column, 'This is neither yes nor no.', 'yes or no');
}

/** A leading apostrophe keeps a spreadsheet from taking a text for a formula; writing adds one, reading takes it off. */
export const shielded = /^'*[=+\-@\t]/;

const unshielded = (text: string): string => (text.startsWith("'") && shielded.test(text) ? text.slice(1) : text);

/** Texts that are kept as they stand. */
function textsOf(reader: RowReader): Pick<Trial, 'lot' | 'photo' | 'note' | 'excludedWhy'> {
  const entries = (['lot', 'photo', 'note', 'excludedWhy'] as const).map(
    (field) => [field, unshielded(reader.text(reader.column(field)))] as const,
  );
  return Object.fromEntries(entries.filter(([, text]) => text.trim() !== ''));
}

/** Columns that the fields of a stored trial come from. */
const columnOf: Readonly<Record<string, BenchField>> = {
  screwSpeedRpm: 'speed',
  setTempsC: 'tempC',
  torqueNm: 'torque',
  currentA: 'current',
  lab: 'labL',
};

function checked(reader: RowReader, trial: Trial): TrialReading {
  const shape = checkSchema(trialSchema, trial);
  for (const issue of shape.ok ? [] : shape.issues) {
    const key = String(issue.path[0] ?? '');
    const field = columnOf[key] ?? (key as BenchField);
    const at = issue.path[0] === 'lab' ? (['labL', 'labA', 'labB'] as const)[Number(issue.path[1] ?? 0)] : field;
    reader.fault(reader.column(at), issue.message, issue.allowed ?? issue.remedy);
  }
  return { trial: reader.errors.length === 0 ? trial : null, errors: reader.errors, warnings: reader.warnings };
}

/**
 * One line to one trial.
 * @param row cells of the line
 * @param freshId id for a line that gives none
 */
export function readTrial(row: CsvRow, setup: TrialSetup, freshId: () => string): TrialReading {
  const reader = new RowReader(row, setup);
  const { context, columns } = setup;
  if (row.fault !== null) reader.fault(undefined, row.fault, 'a closed pair of quotation marks');
  if (row.cells.slice(columns.length).some((cell) => cell.trim() !== '')) {
    reader.fault(undefined, 'The line has more cells than the heading.', `at most ${columns.length} cells`);
  }
  const date = dateOf(reader);
  const revisionId = reader.named('revision', context.revisions, context.revisionId);
  const materialId = reader.named('material', context.materials, context.materialId);
  const speed = reader.quantity('speed', 'a speed such as 10 or 0.2 rev/s');
  const lacksSpeed = speed === undefined && reader.text(reader.column('speed')).trim() === '';
  if (lacksSpeed)
    reader.fault(reader.column('speed'), 'The trial has no screw speed.', 'a speed such as 10 or 0.2 rev/s');
  const setTempsC = temperaturesOf(reader);
  compareHeaters(reader, revisionId, setTempsC.length);
  const amounts = amountsOf(reader);
  const torqueNm = reader.quantity('torque', 'a torque such as 3.4 or 340 N·cm');
  const currentA = reader.quantity('current', 'a current such as 1.2 or 800 mA');
  const lab = labOf(reader);
  const excluded = excludedOf(reader);
  if (date === undefined || speed === undefined || amounts === undefined || reader.errors.length > 0) {
    return { trial: null, errors: reader.errors, warnings: reader.warnings };
  }
  const id = reader.text(reader.column('id')).trim() || freshId();
  const some = { torqueNm, currentA, lab, excluded };
  const given = Object.fromEntries(Object.entries(some).filter(([, value]) => value !== undefined));
  const base = { id, date, revisionId, materialId, screwSpeedRpm: speed, setTempsC, ...amounts };
  return checked(reader, { ...base, ...given, ...textsOf(reader) });
}
