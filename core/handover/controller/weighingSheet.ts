/// <reference path="../../bench/papaparse.d.ts" />
/** The sheet that goes with a flow test: a table that the bench log reads back once it is filled in, and a page to print. */

import Papa from 'papaparse';
import { formatNumber } from '../../units.ts';
import type { HandoverSource } from '../types.ts';
import { directionText } from './direction.ts';
import type { FlowPlan } from './flowPlan.ts';

/** The table: remarks, heading, one line a step; date, lot, mass, torque, current, colour and note are left to fill in. */
export function sheetCsv(plan: FlowPlan, { subjects: [{ revision, design }], project }: HandoverSource): string {
  const heating = plan.heaters.map((_, i) => `set temperature ${i + 1} (°C)`);
  const heading = [
    ...['id', 'date', 'revision', 'material', 'lot', 'screw speed (rpm)', ...heating, 'time (s)', 'mass (g)'],
    ...['torque (N·m)', 'current (A)', 'L*', 'a*', 'b*', 'note'],
  ];
  const rows = plan.steps.map(({ rpm, collect }) => [
    ...['', '', revision.id, revision.materialId, '', `${rpm}`],
    ...plan.heaters.map(({ celsius }) => `${celsius}`),
    ...[`${collect}`, '', '', '', '', '', '', ''],
  ]);
  const remarks = [
    `# Weighing sheet of ${project.name}, revision ${revision.id}`,
    `# Heaters: ${plan.heaters.map(({ name }, i) => `${i + 1} ${name}`).join('; ')}`,
    `# ${directionText(design)}`,
    '# Fill in date (2026-04-30) and mass (g) of every step, then import the file into the bench log.',
  ];
  const style = { delimiter: ',', newline: '\r\n' } as const;
  return `${Papa.unparse([...remarks.map((text) => [text]), heading, ...rows], style)}\r\n`;
}

const escaped = (text: string): string =>
  text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');

const cells = (tag: 'th' | 'td', texts: readonly string[]): string =>
  `<tr>${texts.map((text) => `<${tag}>${escaped(text)}</${tag}>`).join('')}</tr>`;

const style = `@page{size:A4 landscape;margin:12mm}body{font:11pt/1.35 sans-serif;color:#000;background:#fff;margin:12px}
h1{font-size:15pt;margin:0 0 4px}p{margin:3px 0}table{border-collapse:collapse;width:100%;margin:10px 0}
th,td{border:1px solid #000;padding:5px 6px;text-align:left;font-size:10pt}td{height:26px}li{margin:2px 0}
.blanks span{display:inline-block;min-width:44mm;border-bottom:1px solid #000;margin:8px 10px 0 0}`;

/**
 * The page: complete in itself, black on white, A4 across.
 * @param cautions all that is to be minded, the direction of turning among it
 */
export function sheetPage(plan: FlowPlan, source: HandoverSource, cautions: readonly string[]): string {
  const { project, date, subjects } = source;
  const [{ revision, design }] = subjects;
  const head = ['Step', 'Screw speed, rpm', 'Settle, s', 'Weigh for, s', 'About, g'];
  const blanks = ['Mass, g', 'Second mass, g', 'Torque, N·m, or current, A', 'Seen'];
  const rows = plan.steps.map(({ rpm, settle, collect, grams }, i) =>
    cells('td', [`${i + 1}`, `${rpm}`, `${settle}`, `${collect}`, formatNumber(grams, 2), ...blanks.map(() => '')]),
  );
  const heaters = plan.heaters.map(({ name, celsius }) => `${name} ${celsius} °C`).join(', ');
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>Weighing sheet</title><style>${style}</style></head><body>
<h1>Weighing sheet: ${escaped(project.name)}</h1>
<p>Revision ${escaped(`${revision.id}: ${revision.name}`)}. Granulate: ${escaped(design.material.name)}. Written ${date}.${project.invented ? ' Machine and figures of this project are invented.' : ''}</p>
<p>Heaters: ${escaped(heaters)}. Soak ${formatNumber(plan.soak / 60, 3)} min. Purge at ${plan.purge.rpm} rpm for ${plan.purge.seconds} s.</p>
<p class="blanks"><span>Date</span><span>Lot</span><span>Dried, h at °C</span><span>Room, °C</span><span>By</span></p>
<table><thead>${cells('th', [...head, ...blanks])}</thead><tbody>${rows.join('')}</tbody></table>
<p>Run the steps in this order. Tare the cup; cut the strand, catch for the time told, cut again, weigh. A step that went wrong is worth writing down too.</p>
<ul>${cautions.map((text) => `<li>${escaped(text)}</li>`).join('')}</ul>
</body></html>
`;
}
