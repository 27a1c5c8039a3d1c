/// <reference path="./papaparse.d.ts" />
/** Trials to a table that readBenchCsv reads back unchanged. */

import Papa from 'papaparse';
import type { Trial } from '../project/schema.ts';
import { shielded } from './csvTrial.ts';

/** How the table is written. */
export interface BenchCsvStyle {
  readonly delimiter: ',' | ';' | '\t';
  readonly decimal: '.' | ',';
}

const text = (value: string | undefined): string => {
  const written = value ?? '';
  return shielded.test(written) ? `'${written}` : written;
};

/**
 * Table of trials, heading first, lines ended by CR LF as spreadsheets expect.
 * @param trials any number
 * @param style a comma for decimals needs another separator than the comma; numbers are quoted where it does not have one
 * @returns text in the units of the headings; as many temperature columns as the longest list needs
 */
export function writeBenchCsv(
  trials: readonly Trial[],
  style: BenchCsvStyle = { delimiter: ',', decimal: '.' },
): string {
  const zones = trials.reduce((most, { setTempsC }) => Math.max(most, setTempsC.length), 0);
  const number = (value: number | undefined): string =>
    value === undefined ? '' : String(value).replace('.', style.decimal);
  const places = Array.from({ length: zones }, (_, i) => i);
  const heading = [
    ...['id', 'date', 'revision', 'material', 'lot', 'screw speed (rpm)'],
    ...places.map((i) => `set temperature ${i + 1} (°C)`),
    ...[
      'time (s)',
      'mass (g)',
      'torque (N·m)',
      'current (A)',
      'L*',
      'a*',
      'b*',
      'photo',
      'note',
      'excluded',
      'excluded why',
    ],
  ];
  const rows = trials.map((trial) => [
    ...[trial.id, trial.date, trial.revisionId, trial.materialId, text(trial.lot), number(trial.screwSpeedRpm)],
    ...places.map((i) => number(trial.setTempsC[i])),
    ...[trial.seconds, trial.grams, trial.torqueNm, trial.currentA].map(number),
    ...(trial.lab ?? [undefined, undefined, undefined]).map(number),
    ...[text(trial.photo), text(trial.note), trial.excluded ? 'yes' : '', text(trial.excludedWhy)],
  ]);
  return `${Papa.unparse([heading, ...rows], { delimiter: style.delimiter, newline: '\r\n' })}\r\n`;
}
