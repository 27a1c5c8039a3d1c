/** Tables of trials and of viscosities, typed quantities, reference files, pixels. */

import { readFileSync } from 'node:fs';
import { type BenchContext, type BenchCsvChoices, benchContext } from '../../../core/bench/csvTypes.ts';
import { photoColour, regionMean } from '../../../core/bench/photoLab.ts';
import { readBenchCsv } from '../../../core/bench/readBenchCsv.ts';
import { writeBenchCsv } from '../../../core/bench/writeBenchCsv.ts';
import { fitRheology } from '../../../core/material/fit/fitRheology.ts';
import type { FitModel } from '../../../core/material/fit/fitTypes.ts';
import { parseRheologyTable } from '../../../core/project/rheologyTable.ts';
import { trialSchema } from '../../../core/project/schema.ts';
import { readReference } from '../../../core/reference/readReference.ts';
import { type Dimension, displayUnits, parseQuantity } from '../../../core/units.ts';
import { nonFinite } from '../finite.ts';
import { loadExample } from '../projects.ts';
import { mutatedText, mutatedTree, pickOf, type Recipe } from './mutate.ts';
import { type Outcome, soundly } from './sound.ts';
import type { Target } from './targetTypes.ts';
import { type Tree, textOf, treeOf } from './tree.ts';
import { hostilePieces } from './values.ts';

const demo = loadExample('demo');
const context: BenchContext = benchContext(demo, demo.activeRevision, '2026-03-01');

const tables: readonly string[] = [
  writeBenchCsv(demo.benchLog, { delimiter: ',', decimal: '.' }),
  writeBenchCsv(demo.benchLog, { delimiter: ';', decimal: ',' }),
  'date;rpm;T1;T2;nozzle;time (s);mass (g)\n2026-02-12;10;175;185;188;120;8,1\n13.2.2026;12,5;175;185;188;60;4,9\n',
  '# weighed by hand\ntrial,speed (rpm),temperatures,rate (g/min),L*,a*,b*\n1,10,175/185/188,4.05,76,5,22\n2,1/2 rev/s,180,"1,000",,,\n',
  'sep=|\nVersuch|Drehzahl|Zeit|Masse\n|U/min|min|g\n1|10|2|8,1\n"2|"|20|2|16\n',
].map((text) => text.replace(/^\uFEFF/, ''));

const viscosities: readonly string[] = [
  'shear rate (1/s);temperature (°C);viscosity (Pa·s)\n1;190;1500\n10;190;1200\n100;190;520\n1000;190;110\n1;210;800\n10;210;700\n100;210;350\n',
  '1 190 1500\n10 190 1200\n100 190 520\n1000 190 110\n',
  'rate\tT [K]\teta [mPa·s]\n1,5\t463\t1.500.000\n15\t463\t1.200.000\n150\t463\t520.000\n1500\t463\t90.000\n',
  '1,1500\n10,1200\n100,520\n1000,110\n',
];

const references: readonly Tree[] = ['A', 'B', 'C', 'D'].map((kind) => {
  const file = JSON.parse(readFileSync(new URL(`../../reference/flow/case${kind}.json`, import.meta.url), 'utf8'));
  return treeOf({ ...file, entries: file.entries.slice(0, 1) });
});

function readTrials(text: string, deep: boolean): Outcome {
  if (deep) readTable(text, { decimal: ',', dateOrder: 'mdy' });
  return readTable(text, {});
}

function readTable(text: string, choices: BenchCsvChoices): Outcome {
  const read = soundly(readBenchCsv(text, context, choices));
  if (!read) return 'refused';
  const lines = read.trials.length + read.faultyLines + read.skips.length;
  if (lines !== read.rows) throw new Error(`${read.rows} lines, but ${lines} accounted for`);
  for (const { trial } of read.trials) {
    if (!trialSchema.safeParse(trial).success) throw new Error('a trial that no project may hold');
  }
  const longest = [...read.errors, ...read.warnings].find(({ text: shown }) => shown.length > 100);
  if (longest) throw new Error('a fault shows too much');
  return read.trials.length > 0 ? 'accepted' : 'refused';
}

const models: readonly FitModel[] = ['newtonian', 'powerLaw', 'carreauYasuda', 'crossWlf'];

function readViscosities(text: string, deep: boolean): Outcome {
  const table = soundly(parseRheologyTable(text, text.length % 2 === 0 ? 190 : undefined));
  if (!table) return 'refused';
  if (table.issues.length > 0) soundly({ ok: false, issues: table.issues.slice(0, 500) });
  const bad = nonFinite(table.points);
  if (bad.length > 0) throw new Error(bad.slice(0, 3).join(', '));
  if (!deep) return 'accepted';
  const fit = soundly(fitRheology(pickOf(models, text.length), table.points));
  if (!fit) return 'refused';
  const wrong = nonFinite(fit.rheology);
  if (wrong.length > 0) throw new Error(`fit: ${wrong.slice(0, 3).join(', ')}`);
  return 'accepted';
}

const dimensions = Object.keys(displayUnits.metric) as Dimension[];
const quantities = [
  '3 mm',
  '1 1/2"',
  '190 °C',
  '3,5',
  '-1e5 rpm',
  '1/8 in',
  '0.2 W/(m·K)',
  '5 % ',
  '12 kg/h',
  '1.000,5 g',
  '0/0',
  '½ in',
];

function quantityText({ pick, steps }: Recipe): string {
  const text = mutatedText(pickOf(quantities, pick), steps, pickOf(hostilePieces, pick >>> 4));
  return `${pickOf(dimensions, pick >>> 7)}\n${text}`;
}

function readTyped(input: string): Outcome {
  const at = input.indexOf('\n');
  const dimension = dimensions.find((each) => each === input.slice(0, at)) ?? 'length';
  const text = input.slice(at + 1);
  for (const decimal of ['.', ','] as const) {
    const value = soundly(parseQuantity(text, dimension, displayUnits.metric[dimension], decimal));
    if (value !== null && !Number.isFinite(value)) throw new Error(`${value} was let in`);
    if (value !== null) return 'accepted';
  }
  return 'refused';
}

function readPixels(text: string): Outcome {
  const half = text.length >>> 1;
  const pixels = (from: number, to: number) =>
    Uint8ClampedArray.from(text.slice(from, to), (sign) => (sign === '~' ? 255 : sign.charCodeAt(0)));
  const [strand, white] = [regionMean(pixels(0, half)), regionMean(pixels(half, text.length))];
  const colour = strand && white && soundly(photoColour(strand, white, 50 + (text.length % 51)));
  if (!colour) return 'refused';
  if (nonFinite(colour).length > 0) throw new Error(nonFinite(colour).join(', '));
  return 'accepted';
}

const tableText = (list: readonly string[], { pick, steps }: Recipe): string =>
  mutatedText(pickOf(list, pick), steps, pickOf(list, pick >>> 8));

/** The readers. */
export const tableTargets: readonly Target[] = [
  { name: 'table of trials', share: 8, make: (recipe) => tableText(tables, recipe), run: readTrials },
  { name: 'table of viscosities', share: 8, make: (recipe) => tableText(viscosities, recipe), run: readViscosities },
  { name: 'typed quantity', share: 14, make: quantityText, run: readTyped },
  {
    name: 'reference file',
    share: 8,
    make: ({ pick, steps }) =>
      pick % 4 === 3
        ? mutatedText(textOf(pickOf(references, pick >>> 2)), steps)
        : textOf(mutatedTree(pickOf(references, pick >>> 2), steps, pickOf(references, pick >>> 5))),
    run: (text) => (soundly(readReference(text)) ? 'accepted' : 'refused'),
  },
  {
    name: 'pixels of a picture',
    share: 5,
    make: ({ pick, steps }) => mutatedText(`${'~xA~'.repeat(pick % 60)}${'zzz~'.repeat(pick % 7)}`, steps),
    run: readPixels,
  },
];
