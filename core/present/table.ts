/** The verdict as text for a terminal. */

import type { Design } from '../design/types.ts';
import type { Basis, Prediction } from '../prediction/types.ts';
import { formatQuantity } from '../units.ts';
import { calibrationNote, fieldsNote, inventedNotes } from './foundation.ts';
import { capacityNames, groupsOf } from './groups.ts';
import { suitedText } from './suited.ts';

/** Groups printed in the terminal; the rest is in the JSON. */
const printed = [
  ...['output', 'capacities', 'print', 'residence', 'colour', 'feeding', 'melting', 'drive', 'heat', 'coldEnd'],
  'warmUp',
];

/**
 * Columns padded to their widest cell, two spaces apart; the last column is left as it is.
 * @param rows same number of cells each
 */
export function alignColumns(rows: readonly (readonly string[])[]): string[] {
  const widths: number[] = [];
  for (const row of rows)
    row.forEach((cell, i) => {
      widths[i] = Math.max(widths[i] ?? 0, cell.length);
    });
  return rows.map((row) =>
    row
      .map((cell, i) => (i === row.length - 1 ? cell : cell.padEnd(widths[i])))
      .join('  ')
      .trimEnd(),
  );
}

/** Columns indented by two, under a title; nothing where there are no rows. */
const section = (title: string, lines: readonly string[]): string[] =>
  lines.length > 0 ? ['', title, ...lines.map((line) => `  ${line}`)] : [];

function figures(prediction: Prediction): string[] {
  const groups = groupsOf(prediction).filter((group) => printed.includes(group.id));
  return alignColumns(
    groups.flatMap((group) => [
      [group.title, ''],
      ...group.rows.filter((row) => row.text !== '').map((row) => [`  ${row.label}`, suitedText(row)]),
    ]),
  );
}

function deadSpots({ dead }: Prediction): string[] {
  return dead.spots.flatMap((spot, i) => [
    `${i + 1}  ${spot.where}: ${formatQuantity(spot.volume, 'mm³', 3)}, mean age ${formatQuantity(spot.meanAge, 's', 3)}, cause: ${spot.cause}`,
    `   ${spot.remedy}`,
  ]);
}

/** Models by name, each with its doubt where there is one; models that several stages share stand once. */
function foundations(prediction: Prediction): string[] {
  const { output, residence, dead, colour, drive, heat, print, capacities, solids, melting, coldEnd } = prediction;
  const limiting = capacities.filter((capacity) => capacity.kind === prediction.limit);
  const stages: readonly (readonly [name: string, basis: Basis])[] = [
    ['Output', output.basis],
    ...limiting.map(({ kind, basis }) => [`Limit, ${capacityNames[kind]}`, basis] as const),
    ['Residence', residence.basis],
    ['Dead volume', dead.basis],
    ['Colour', colour.basis],
    ['Granules', solids.basis],
    ['Melting', melting.basis],
    ['Drive', drive.basis],
    ['Heat', heat.basis],
    ['Throat', coldEnd.basis],
    ...(prediction.warmUp ? [['Warming up', prediction.warmUp.basis] as const] : []),
    ['Print', print.basis],
  ];
  return stages.flatMap(([name, { model, doubt }]) => [
    `${name}: ${model}.`,
    ...(doubt === null ? [] : [`  Doubtful here: ${doubt}`]),
  ]);
}

const findingLines = ({ findings }: Prediction): string[] =>
  findings.flatMap((finding) => [
    `${finding.severity.toUpperCase()}  ${finding.code}  (${finding.where})`,
    `  ${finding.saw} ${finding.why}`,
    `  ${finding.change}`,
  ]);

/**
 * The verdict of a prediction: figures, dead spots, models with their doubts, then what was found, gravest first.
 * @param design tells whether project and material are invented
 */
export function predictionTable(prediction: Prediction, design?: Design): string {
  return [
    `Revision ${prediction.revisionId}: ${prediction.revisionName}`,
    ...(design ? [`Material: ${design.material.name}`, ...inventedNotes([design])] : []),
    fieldsNote(prediction),
    calibrationNote(prediction),
    ...(prediction.converged ? [] : ['An iteration did not converge; treat the numbers as rough.']),
    '',
    ...figures(prediction),
    ...section('Dead spots', deadSpots(prediction)),
    ...section('Models', foundations(prediction)),
    ...section('Findings', findingLines(prediction)),
    '',
    'Estimates from published models, not measurements. Assumptions, range and source of every stage stand in the JSON.',
  ].join('\n');
}
