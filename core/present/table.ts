/** The verdict as text for a terminal. */

import type { Prediction } from '../prediction/types.ts';
import { groupsOf } from './groups.ts';

/** Groups printed in the terminal; the rest is in the JSON. */
const printed = ['output', 'print', 'residence', 'colour', 'drive', 'heat', 'capacities'];

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

/** The verdict of a prediction: figures, then what was found, gravest first. */
export function predictionTable(prediction: Prediction): string {
  const groups = groupsOf(prediction).filter((group) => printed.includes(group.id));
  const rows = groups.flatMap((group) => [
    [`${group.title}`, ''],
    ...group.rows.filter((row) => row.text !== '').map((row) => [`  ${row.label}`, row.text]),
  ]);
  const findings = prediction.findings.flatMap((finding) => [
    `${finding.severity.toUpperCase()}  ${finding.code}  (${finding.where})`,
    `  ${finding.saw} ${finding.why}`,
    `  ${finding.change}`,
  ]);
  return [
    `Revision ${prediction.revisionId}: ${prediction.revisionName}`,
    ...(prediction.converged ? [] : ['An iteration did not converge; treat the numbers as rough.']),
    '',
    ...alignColumns(rows),
    '',
    'Findings',
    ...findings.map((line) => `  ${line}`),
    '',
    'Estimates from published models, not measurements. Every figure’s basis stands in the JSON and the window.',
  ].join('\n');
}
