/** The hand-over modules for whoever sets up the controller. */

import { alignColumns } from '../../present/table.ts';
import { ok, type Result } from '../../result.ts';
import { formatNumber } from '../../units.ts';
import { tableBytes, utf8 } from '../bytes.ts';
import { choiceOf, numberOf } from '../check.ts';
import { csvText, type DataTable } from '../data/table.ts';
import { fileName } from '../names.ts';
import type { HandoverFile, HandoverModule, HandoverSource } from '../types.ts';
import { flowTestCautions, stopCautions } from './cautions.ts';
import { directionText, senseOf } from './direction.ts';
import { type FlowPlan, flowPlan, planOptions } from './flowPlan.ts';
import { flowGcode, type HeaterWay } from './gcode.ts';
import { controllerTable } from './numbers.ts';
import { sheetCsv, sheetPage } from './weighingSheet.ts';

const shared = { group: 'controller', needs: 'solved', several: false } as const;

/** Where the numbers come from, one remark a line. */
function originOf({ project, subjects: [{ revision, design }], date }: HandoverSource): string[] {
  return [
    `${project.name}, revision ${revision.id}: ${revision.name}, design ${design.hash.slice(0, 12)}, ${date}`,
    `Granulate: ${design.material.name}`,
    ...(project.invented ? ['Machine and figures of this project are invented.'] : []),
    'Predicted, not measured: weigh the output and correct the steps by asked over weighed.',
  ];
}

const textTable = (table: DataTable): string[] =>
  alignColumns(
    table.rows.map(([, name, value, unit, meaning]) => {
      const number = typeof value === 'number' ? formatNumber(value, 8) : (value ?? '–');
      return [String(name), number, String(unit), String(meaning)];
    }),
  );

type Form = 'text' | 'csv' | 'json';

const mediaTypes: Readonly<Record<Form, string>> = { text: 'text/plain', csv: 'text/csv', json: 'application/json' };

const stopsOf = ({ subjects: [{ prediction }] }: HandoverSource): readonly string[] =>
  prediction === null ? [] : stopCautions(prediction);

function numbersBytes(source: HandoverSource, form: Form): Uint8Array {
  const table = controllerTable(source.subjects[0]);
  const origin = [...originOf(source), directionText(source.subjects[0].design)];
  const mind = stopsOf(source);
  if (form === 'csv') {
    const rows = [...mind.map((text) => ['Mind', 'Stop', null, '', text] as const), ...table.rows];
    return tableBytes(csvText({ ...table, rows }, { decimal: '.' }));
  }
  if (form === 'text') return utf8(`${[...mind, ...origin, '', ...textTable(table)].join('\r\n')}\r\n`);
  const numbers = table.rows.map(([topic, name, value, unit, meaning]) => ({ topic, name, value, unit, meaning }));
  return utf8(`${JSON.stringify({ origin, mind, numbers }, null, 1)}\n`);
}

/** Steps, limits, pressure, temperatures. */
export const controllerModule: HandoverModule = {
  ...shared,
  id: 'controller',
  label: 'Numbers for the controller',
  help: 'Steps per volume and per mm of virtual filament, limits, pressure time constant, start temperatures.',
  extension: 'txt',
  mediaType: 'text/plain',
  options: [
    {
      id: 'form',
      label: 'Form',
      help: 'To read, for a spreadsheet, or for a program.',
      kind: 'choice',
      choices: [
        { id: 'text', label: 'Text' },
        { id: 'csv', label: 'Table (CSV)' },
        { id: 'json', label: 'JSON' },
      ],
      start: 'text',
    },
  ],
  write: (source, values) => numbersFile(source, choiceOf<Form>(values, 'form')),
};

async function numbersFile(source: HandoverSource, form: Form): Promise<Result<readonly HandoverFile[]>> {
  const { project, subjects } = source;
  const [{ revision, design, prediction }] = subjects;
  const name = fileName([project.name, revision.id, 'controller'], form === 'text' ? 'txt' : form);
  const perMm3 = prediction?.print.firmware.stepsPerVolume;
  const facts = [
    { label: 'Steps per mm³', text: perMm3 ? formatNumber(perMm3 * 1e-9, 5) : 'nothing flows' },
    { label: 'Turns', text: `${senseOf(design.screw.hand)}, seen from the drive` },
  ];
  return ok([
    { name, mediaType: mediaTypes[form], bytes: numbersBytes(source, form), facts, cautions: stopsOf(source) },
  ]);
}

/** Facts of a flow test that are worth knowing before it is saved. */
function planFacts({ steps, highestRpm, bound, soak, purge }: FlowPlan, pause: number): HandoverFile['facts'] {
  const seconds =
    soak + purge.seconds + steps.reduce((sum, step) => sum + step.settle + step.collect + pause, steps[0].settle);
  const grams = steps.reduce((sum, step) => sum + step.grams, 0);
  return [
    { label: 'Steps', text: steps.map(({ rpm }) => `${rpm} rpm`).join(', ') },
    { label: 'Highest allowed', text: `${highestRpm} rpm, bound by: ${bound}` },
    { label: 'Takes', text: `about ${formatNumber(seconds / 60, 2)} min after the heaters are hot` },
    { label: 'Weighed', text: `about ${formatNumber(grams, 2)} g in all` },
  ];
}

/** The flow test. */
export const gcodeModule: HandoverModule = {
  ...shared,
  id: 'gcode',
  label: 'Flow test (G-code)',
  help: 'Heats, soaks, purges and turns the screw at several speeds so that the output can be weighed. Not written of a design that is refused or would be blocked.',
  extension: 'gcode',
  mediaType: 'text/x-gcode',
  options: [
    ...planOptions,
    {
      id: 'pause',
      label: 'Pause to weigh',
      help: 'The screw stands still between steps.',
      kind: 'number',
      unit: 's',
      least: 10,
      most: 600,
      start: 60,
    },
    {
      id: 'heaters',
      label: 'Heaters of the barrel',
      help: 'Set by hand, or by the program as tools: the nozzle is T0, zones from the feed T1, T2 and so on.',
      kind: 'choice',
      choices: [
        { id: 'nozzle', label: 'Set by hand' },
        { id: 'tools', label: 'As tools T1, T2 …' },
      ],
      start: 'nozzle',
    },
  ],
  async write(source, values) {
    const plan = flowPlan(source.subjects[0], values);
    if (!plan.ok) return plan;
    const pause = Math.round(numberOf(values, 'pause'));
    const way = choiceOf<HeaterWay>(values, 'heaters');
    const name = fileName([source.project.name, source.subjects[0].revision.id, 'flow-test'], 'gcode');
    const cautions = flowTestCautions(source, plan.value);
    const bytes = utf8(flowGcode(plan.value, way, pause, { origin: originOf(source), cautions }));
    return ok([{ name, mediaType: 'text/x-gcode', bytes, facts: planFacts(plan.value, pause), cautions }]);
  },
};

/** The sheet. */
export const weighingSheetModule: HandoverModule = {
  ...shared,
  id: 'weighing-sheet',
  label: 'Weighing sheet',
  help: 'The steps of the flow test with the same options: a table that the bench log reads once filled in, and a page to print.',
  extension: 'csv',
  mediaType: 'text/csv',
  options: planOptions,
  async write(source, values) {
    const plan = flowPlan(source.subjects[0], values);
    if (!plan.ok) return plan;
    const parts = [source.project.name, source.subjects[0].revision.id, 'weighing-sheet'];
    const facts = [{ label: 'Steps', text: plan.value.steps.map(({ rpm }) => `${rpm} rpm`).join(', ') }];
    const cautions = flowTestCautions(source, plan.value);
    return ok([
      {
        name: fileName(parts, 'csv'),
        mediaType: 'text/csv',
        bytes: tableBytes(sheetCsv(plan.value, source)),
        facts,
        cautions,
      },
      {
        name: fileName(parts, 'html'),
        mediaType: 'text/html',
        bytes: utf8(sheetPage(plan.value, source, cautions)),
        facts: [{ label: 'Page', text: 'A4 across, to print' }],
        cautions,
      },
    ]);
  },
};
