/** What was asked: print, granulate, machine and running, in one table. */

import type { Design } from '../../design/types.ts';
import { formatNumber, formatQuantity } from '../../units.ts';
import { type Block, facts, paragraph, type ReportSection } from './model.ts';
import type { ReportSubject } from './source.ts';

const percent = (share: number): string => `${formatNumber(100 * share, 3)} %`;

type Row = readonly [string, string];

function printRows({ print }: Design): Row[] {
  const optional = (label: string, kelvin: number | null): Row => [
    label,
    kelvin === null ? 'not known' : formatQuantity(kelvin, '°C', 3),
  ];
  return [
    [
      'Print: line',
      `${formatQuantity(print.lineWidth, 'mm', 3)} wide, ${formatQuantity(print.layerHeight, 'mm', 3)} high`,
    ],
    ['Print: speed', formatQuantity(print.speed, 'mm/s', 3)],
    ['Print: wall', formatQuantity(print.wallThickness, 'mm', 3)],
    [
      'Print: travel and idle',
      `${percent(print.travelShare)} of the time travelling, ${percent(print.idleShare)} idle`,
    ],
    ['Print: nozzle above the layer below', formatQuantity(print.nozzleHeight, 'mm', 3)],
    optional('Print: bed', print.bedTemperature),
    optional('Print: chamber', print.chamberTemperature),
  ];
}

function machineRows({ revisionId, revisionName, screw, barrel, process, nozzle, material }: Design): Row[] {
  const length = screw.sections.reduce((sum, section) => sum + section.length, 0);
  const orifice = nozzle.segments[nozzle.segments.length - 1];
  return [
    ['Granulate', `${material.name}, as ${material.form}${material.invented ? '; invented data' : ''}`],
    ['Machine', `revision ${revisionId}: ${revisionName}`],
    [
      'Machine: bore and screw',
      `${formatQuantity(barrel.boreDiameter, 'mm', 4)} bore, ${formatQuantity(length, 'mm', 4)} of screw`,
    ],
    ['Machine: orifice', orifice ? formatQuantity(orifice.endDiameter, 'mm', 3) : 'none'],
    ['Run: screw speed', formatQuantity(process.screwSpeed, 'rpm', 3)],
    [
      'Run: feed',
      process.starvedRate === null ? 'hopper kept full' : `metered, ${formatQuantity(process.starvedRate, 'g/min', 3)}`,
    ],
    ['Run: surroundings', formatQuantity(process.ambient, '°C', 3)],
    ['Run: granulate comes at', formatQuantity(process.feedTemperature, '°C', 3)],
    ['Run: pressure at the orifice', formatQuantity(process.backPressure, 'MPa', 3)],
    ['Colour: accepted shift', `${formatNumber(process.acceptableDeltaE, 3)} ΔE00`],
  ];
}

function notes({ project, revision }: ReportSubject): Block[] {
  const of = (label: string, text: string | undefined) => (text ? [paragraph(`${label}: ${text}`)] : []);
  return [...of('Note on the project', project.note), ...of('Note on the revision', revision.note)];
}

/** The section; for several revisions what they share, and each one's notes. */
export function askedSection(subjects: readonly ReportSubject[]): ReportSection {
  const [first] = subjects;
  const granulates = new Set(subjects.map(({ design }) => design.material.name));
  const shared = machineRows(first.design).filter(
    ([label]) =>
      subjects.length === 1 || (!label.startsWith('Machine') && (granulates.size === 1 || label !== 'Granulate')),
  );
  const each: Row[] =
    subjects.length === 1
      ? []
      : subjects.map(({ design }) => [
          `Revision ${design.revisionId}`,
          `${design.revisionName}${granulates.size > 1 ? `; granulate: ${design.material.name}` : ''}`,
        ]);
  return {
    id: 'asked',
    title: 'What was asked',
    blocks: [
      facts('asked-table', 'Print, granulate, machine and running', [...printRows(first.design), ...each, ...shared]),
      ...(subjects.length === 1 ? notes(first) : notes({ ...first, revision: { ...first.revision, note: undefined } })),
      ...(subjects.length > 1
        ? subjects.flatMap(({ revision }) =>
            revision.note ? [paragraph(`Revision ${revision.id}: ${revision.note}`)] : [],
          )
        : []),
    ],
  };
}
