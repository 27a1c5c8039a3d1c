import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type BenchContext, type BenchImport, benchContext, longestCsvText } from '../../../core/bench/csvTypes.ts';
import { readBenchCsv } from '../../../core/bench/readBenchCsv.ts';
import { type BenchCsvStyle, writeBenchCsv } from '../../../core/bench/writeBenchCsv.ts';
import type { Trial } from '../../../core/project/schema.ts';
import { decimal } from '../../helpers/numberArbitraries.ts';
import { codesOf, expectOk, loadExample } from '../../helpers/projects.ts';

const demo = loadExample('demo');
const context: BenchContext = { ...benchContext(demo, 'C', '2026-06-01'), trialIds: [] };
const read = (text: string, choices = {}): BenchImport => expectOk(readBenchCsv(text, context, choices));
const fieldsOf = ({ columns }: BenchImport) => columns.map(({ field }) => field);
const trialsOf = ({ trials }: BenchImport) => trials.map(({ trial }) => trial);

describe('a table of trials', () => {
  test('in the habit of a comma country: semicolons, decimal commas, its words and units', () => {
    const table = read(
      '\uFEFFDatum;Schnecke;Drehzahl [1/min];T1;T2;Düse;Zeit [min];Gewicht [kg];Drehmoment (N·cm);Bemerkung\r\n' +
        '2.5.2026;B;10,5;175;185;188;2;0,0081;340,5;"hell; ""Streifen"""\r\n\r\n30.4.26;c;1.200,5;175;185;188;1;0,004;;\r\n',
    );
    expect([table.delimiter, table.decimal, table.errors]).toEqual([';', ',', []]);
    expect(trialsOf(table)).toEqual([
      {
        id: 'T1',
        date: '2026-05-02',
        revisionId: 'B',
        materialId: 'pale-wood-micro',
        screwSpeedRpm: 10.5,
        setTempsC: [175, 185, 188],
        seconds: 120,
        grams: 8.1,
        torqueNm: 3.405,
        note: 'hell; "Streifen"',
      },
      expect.objectContaining({ id: 'T2', date: '2026-04-30', revisionId: 'C', screwSpeedRpm: 1200.5, grams: 4 }),
    ]);
    expect(table.skips).toEqual([
      { line: 1, reason: 'The heading.' },
      { line: 3, reason: 'An empty line.' },
    ]);
  });

  test('with remarks, a row of units, kelvin, zone names and loose letters', () => {
    const table = read(
      '# exported\nmy log\n\nrun,n,melt temp °C,melting zone,metering zone,nozzle temp (K),t,m,A\n' +
        ',rpm,,°C,°C,K,s,g,A\n1,10,190,175,185,461.15,120,8.1,1.2\n2,"1,200",190,175,185,461.15,2 min,0.0075 kg,800 mA\n',
    );
    expect(fieldsOf(table)).toEqual(['id', 'speed', null, 'tempC', 'tempC', 'tempC', 'seconds', 'grams', 'current']);
    expect(trialsOf(table).map(({ setTempsC }) => setTempsC)).toEqual([
      [175, 185, 188],
      [175, 185, 188],
    ]);
    expect(trialsOf(table)[1]).toMatchObject({ screwSpeedRpm: 1200, seconds: 120, grams: 7.5, currentA: 0.8 });
    expect(table.columns[2].reason).toContain('measured');
    expect(table.skips.map(({ line }) => line)).toEqual([1, 2, 3, 4, 5]);
  });

  test('puts the nozzle last wherever it stands, and reads a list in one cell', () => {
    const apart = read('nozzle °C,zone 2,zone 1,rev/s,g,s\n188,185,175,0.2,8,120\n');
    expect(trialsOf(apart)[0]).toMatchObject({ setTempsC: [175, 185, 188], screwSpeedRpm: 12 });
    const list = read('rpm,temps,g,s\n10,175/185/188,8,120\n10,175 185 188 °C,8,120\n');
    expect(trialsOf(list).map(({ setTempsC }) => setTempsC)).toEqual([
      [175, 185, 188],
      [175, 185, 188],
    ]);
  });

  test('locates every fault and keeps the other lines', () => {
    const table = read(
      'rev,rpm,g,s,L*,a*,b*\nZ,10,8,120,,,\nC,fast,8,120,,,\nC,10,,120,,,\nC,10,8,120,78,4,\nC,10,8,0,,,\nC,10,8,9,,,,7\nC,10,8,60,,,\n',
    );
    expect(table.errors.map(({ line, column, text }) => [line, column, text])).toEqual([
      [2, 1, 'Z'],
      [3, 2, 'fast'],
      [4, 3, ''],
      [5, 5, '78'],
      [6, 4, '0'],
      [7, 0, ''],
    ]);
    expect(table.errors.every(({ message, allowed }) => message !== '' && allowed !== '')).toBe(true);
    expect(table.trials.map(({ line }) => line)).toEqual([8]);
  });

  test('counts lines through cells that hold line breaks', () => {
    const table = read('rpm,g,s,note\n10,8,60,"two\nlines"\nfast,8,60,\n10,8,60,"open\n');
    expect(table.errors.map(({ line, column }) => [line, column])).toEqual([
      [4, 1],
      [5, 0],
    ]);
    expect(table.errors[1].message).toContain('never closed');
    expect(trialsOf(table)[0].note).toBe('two\nlines');
  });

  test('says where day and month could be exchanged, and settles it by other dates or by choice', () => {
    const open = read('date,rpm,g,s\n04/05/2026,10,8,60\n');
    expect(open.warnings.map(({ line, column }) => [line, column])).toEqual([[2, 1]]);
    expect(trialsOf(open)[0].date).toBe('2026-05-04');
    expect(trialsOf(read('date,rpm,g,s\n04/05/2026,10,8,60\n', { dateOrder: 'mdy' }))[0].date).toBe('2026-04-05');
    const told = read('date,rpm,g,s\n04/05/2026,10,8,60\n04/13/2026,10,8,60\n');
    expect([told.dateOrder, told.warnings, trialsOf(told)[0].date]).toEqual(['mdy', [], '2026-04-05']);
    expect(read('date,rpm,g,s\n29.2.2025,10,8,60\n').errors[0].message).toContain('calendar');
  });

  test('does not guess a comma that could be either', () => {
    expect(read('rpm;g;s\n10;1,234;60\n').errors[0]).toMatchObject({ line: 2, column: 2 });
    expect(trialsOf(read('rpm;g;s\n10;1,234;60\n', { decimal: ',' }))[0].grams).toBe(1.234);
    expect(trialsOf(read('rpm;g;s\n10,5;1,234;60\n'))[0].grams).toBe(1.234);
  });

  test('doubts a point that could mark thousands where the table comes from where it does', () => {
    const table = read('date;speed (rpm);time (s);mass (g)\n2.5.2026;1.200;120;1.500\n');
    expect(trialsOf(table)[0]).toMatchObject({ screwSpeedRpm: 1.2, grams: 1.5 });
    expect(table.warnings.map(({ column, message }) => [column, message])).toEqual([
      [2, 'The point could mark thousands; it was taken for decimals.'],
      [4, 'The point could mark thousands; it was taken for decimals.'],
    ]);
    expect(read('date;speed (rpm);time (s);mass (g)\n2.5.2026;1.200;120;1.5\n').warnings).toEqual([]);
    expect(read('date,speed (rpm),time (s),mass (g)\n2026-05-02,1.200,120,1.500\n').warnings).toEqual([]);
    expect(read('date;speed (rpm);time (s);mass (g)\n2.5.2026;1.200;120;1.500\n', { decimal: '.' }).warnings).toEqual(
      [],
    );
  });

  test('does not move a temperature into the place of one that is missing', () => {
    const table = read(
      'speed (rpm),T1 (°C),T2 (°C),nozzle (°C),time (s),mass (g)\n10,175,,188,60,4\n10,175,185,,60,4\n10,175,185,188,60,4\n',
    );
    expect(table.errors.map(({ line, column, message }) => [line, column, message])).toEqual([
      [2, 3, 'A temperature is missing between others.'],
    ]);
    expect(table.warnings.map(({ line, message }) => [line, message])).toEqual([
      [3, 'The line gives 2 temperatures, revision C has 3 heaters: the trial cannot be predicted.'],
    ]);
    expect(table.trials.map(({ line }) => line)).toEqual([3, 4]);
  });

  test('works out grams and seconds from a rate, with a warning', () => {
    const table = read('rpm,output (kg/h)\n10,0.24\n');
    expect(trialsOf(table)[0].grams).toBeCloseTo(4, 9);
    expect(table.warnings).toHaveLength(1);
  });

  test('refuses ids that are taken, and what the log cannot hold', () => {
    const taken = expectOk(
      readBenchCsv('id,rpm,g,s\nT1,9,8,60\nX,9,8,60\nX,9,8,60\n,9,8,60\n', { ...context, trialIds: ['T1'] }),
    );
    expect(taken.errors.map(({ line }) => line)).toEqual([2, 4]);
    expect(trialsOf(taken).map(({ id }) => id)).toEqual(['X', 'T2']);
    const full = expectOk(readBenchCsv('rpm,g,s\n9,8,60\n9,8,60\n', { ...context, room: 1 }));
    expect([full.trials.length, full.errors[0].message]).toEqual([1, 'The bench log is full.']);
  });

  test('refuses what is too large or has no heading', () => {
    expect(readBenchCsv(' \n', context)).toMatchObject({
      issues: [{ code: 'no-heading', message: 'The table is empty.' }],
    });
    expect(codesOf(readBenchCsv('hello\nworld', context))).toEqual(['no-heading']);
    expect(codesOf(readBenchCsv('x'.repeat(longestCsvText + 1), context))).toEqual(['table-too-large']);
    expect(codesOf(readBenchCsv(`rpm,g,s\n${'\n'.repeat(100_001)}`, context))).toEqual(['table-too-large']);
  });

  test('lets no heading reach the language’s own machinery', () => {
    const table = read('__proto__,constructor,toString,rpm,g,s\n1,2,3,10,8,120\n');
    expect(fieldsOf(table)).toEqual([null, null, null, 'speed', 'grams', 'seconds']);
    expect(({} as Record<string, unknown>).rpm).toBeUndefined();
  });
});

const word = fc.constantFrom(
  'pale',
  '=1+1',
  "'=x",
  '-5 left',
  ' two; words',
  'a "quote"',
  'line\nbreak',
  'é,ü',
  '@here',
);
const trialArbitrary: fc.Arbitrary<Trial> = fc
  .record(
    {
      revisionId: fc.constantFrom('A', 'B', 'C'),
      screwSpeedRpm: decimal(0.1, 300, 3),
      setTempsC: fc.array(decimal(-20, 480, 1), { maxLength: 4 }),
      seconds: decimal(0.2, 9000, 2),
      grams: decimal(0, 9000, 4),
      torqueNm: decimal(0, 50, 3),
      currentA: decimal(0, 9, 3),
      lab: fc.tuple(decimal(0, 100, 2), decimal(-128, 128, 2), decimal(-128, 128, 2)),
      lot: word,
      note: word,
      photo: word,
      excluded: fc.constant(true as const),
      excludedWhy: word,
    },
    { requiredKeys: ['revisionId', 'screwSpeedRpm', 'setTempsC', 'seconds', 'grams'] },
  )
  .map((some) => ({ id: '', date: '2026-02-28', materialId: 'pale-wood-micro', ...some }));

test('what is written is read back unchanged, in every style', () => {
  const styles: readonly BenchCsvStyle[] = [
    { delimiter: ',', decimal: '.' },
    { delimiter: ';', decimal: ',' },
    { delimiter: ',', decimal: ',' },
    { delimiter: '\t', decimal: ',' },
  ];
  fc.assert(
    fc.property(fc.array(trialArbitrary, { minLength: 1, maxLength: 6 }), fc.constantFrom(...styles), (some, style) => {
      const trials = some.map((trial, i) => ({ ...trial, id: `run ${i}` }));
      const table = read(writeBenchCsv(trials, style), { decimal: style.decimal, delimiter: style.delimiter });
      expect(table.errors).toEqual([]);
      expect(trialsOf(table)).toEqual(trials);
    }),
    { seed: 11, numRuns: 40 },
  );
  expect(trialsOf(read(writeBenchCsv(demo.benchLog, { delimiter: ';', decimal: ',' })))).toEqual(demo.benchLog);
});

test('any text is read without throwing, each line counted once', () => {
  const cell = fc.oneof(
    fc.string({ maxLength: 12 }),
    fc.constantFrom(
      'rpm',
      'date',
      'g',
      's',
      'T1',
      'L*',
      '__proto__',
      '1,5',
      '1.234,5',
      '4/5/26',
      '"',
      '""',
      'NaN',
      '1e999',
      '-',
      '°C',
      '∞',
    ),
  );
  const text = fc
    .tuple(
      fc.boolean(),
      fc.array(fc.array(cell, { maxLength: 7 }), { maxLength: 9 }),
      fc.constantFrom(',', ';', '\t', '|'),
      fc.constantFrom('\n', '\r\n', '\r'),
    )
    .map(([headed, rows, mark, end]) =>
      [...(headed ? [['rpm', 'g', 's', 'date']] : []), ...rows].map((row) => row.join(mark)).join(end),
    );
  fc.assert(
    fc.property(text, (table) => {
      const result = readBenchCsv(table, context);
      if (!result.ok) return;
      const { rows, trials, faultyLines, skips, errors } = result.value;
      expect(trials.length + faultyLines + skips.length).toBe(rows);
      expect(new Set(errors.map(({ line }) => line)).size).toBe(faultyLines);
      for (const { trial } of trials) expect(Object.values(trial).every((value) => !Number.isNaN(value))).toBe(true);
    }),
    { seed: 3, numRuns: 120 },
  );
});
