/** The report from what is known of its revisions. */

import { fieldsNote, inventedNotes } from '../../present/foundation.ts';
import { capacityNames } from '../../present/groups.ts';
import { formatNumber, formatQuantity } from '../../units.ts';
import { askedSection } from './asked.ts';
import { calibrationSection } from './calibrated.ts';
import { colourSection } from './coloured.ts';
import { answerText, comparisonSection } from './compared.ts';
import { curvesSection } from './curves.ts';
import { designSection } from './designed.ts';
import { dwellSection } from './dwelling.ts';
import { cautionsSection, findingCounts, findingsSection } from './found.ts';
import { materialsSection } from './materials.ts';
import { methodSection, originSection } from './method.ts';
import { type Block, cell, paragraph, type Report, type ReportSection } from './model.ts';
import { modelsSection, predictionSection } from './predicted.ts';
import { idOf, type ReportSubject } from './source.ts';

/** What one revision comes to, in a few sentences made from its numbers. */
function answerOf({ prediction: p, design }: ReportSubject): string {
  const { output, print, residence, colour, drive } = p;
  const counts = `The rules tell ${findingCounts(p.findings)}.`;
  const asked = formatQuantity(print.demand, 'mm³/s', 3);
  if (!output.flows) {
    return `Revision ${p.revisionId} delivers nothing at ${formatQuantity(design.process.screwSpeed, 'rpm', 3)}: limited by ${capacityNames[p.limit]}. The print asks for ${asked} while it lays a line. ${counts}`;
  }
  const shade =
    colour.dE00Mean === null || colour.dE00Worst === null
      ? 'Its colour cannot be said.'
      : `Its colour shifts by ${formatNumber(colour.dE00Mean, 2)} ΔE00 on average and ${formatNumber(colour.dE00Worst, 2)} in the worst streak; ${formatNumber(design.process.acceptableDeltaE, 3)} is accepted.`;
  const motor =
    drive.motorMargin === null ? '' : ` The motor has ${formatNumber(drive.motorMargin, 2)} times the torque needed.`;
  return [
    `Revision ${p.revisionId} delivers ${formatQuantity(output.volumeFlow, 'mm³/s', 3)} (${formatQuantity(output.massFlow, 'g/min', 3)}) at ${formatQuantity(output.screwSpeed, 'rpm', 3)}, limited by ${capacityNames[p.limit]}.`,
    `The print asks for ${asked} while it lays a line: supply is ${formatNumber(print.margin, 3)} times demand.${motor}`,
    `Melt stays ${formatNumber(residence.mean, 3)} s on average; 95 % has left after ${formatNumber(residence.t95, 3)} s.`,
    `${shade} ${counts}`,
  ].join(' ');
}

function summaryOf(subjects: readonly ReportSubject[]): Block[] {
  const grave = subjects.flatMap((subject) =>
    subject.prediction.findings
      .filter(({ severity }) => severity === 'stop' || severity === 'warn')
      .slice(0, subjects.length > 1 ? 3 : 6)
      .map(({ severity, where, saw }) => {
        const of = subject.prefix === '' ? '' : `${subject.prefix}, `;
        return cell(`${severity === 'stop' ? 'Stop' : 'Warning'}: ${of}${where}: ${saw}`, {
          to: idOf(subject, `findings-${severity}`),
        });
      }),
  );
  return [
    ...(subjects.length > 1 ? [paragraph(answerText(subjects), 'lead')] : []),
    ...subjects.map((subject) => paragraph(answerOf(subject), subjects.length > 1 ? undefined : 'lead')),
    ...[...new Set(subjects.map(({ prediction }) => fieldsNote(prediction)))].map((note) => paragraph(note, 'small')),
    ...(grave.length > 0 ? [{ kind: 'list' as const, items: grave }] : []),
  ];
}

/** Sections of one revision alone. */
const ofOne = (subject: ReportSubject): ReportSection[] => [
  designSection(subject),
  predictionSection(subject),
  curvesSection(subject),
  dwellSection(subject),
  colourSection(subject),
  findingsSection(subject),
];

/** Sections of one among several: what the comparison does not hold. */
const ofEach = (subject: ReportSubject): ReportSection[] => [
  designSection(subject),
  dwellSection(subject),
  colourSection(subject),
  findingsSection(subject),
];

/**
 * The report of one revision, or of several compared with the first.
 * @param subjects at least one, predicted
 * @param date YYYY-MM-DD
 */
export function buildReport(subjects: readonly ReportSubject[], date: string): Report {
  const [first] = subjects;
  const several = subjects.length > 1;
  const ids = subjects.map(({ revision }) => revision.id);
  const of = several ? `revisions ${ids.slice(0, -1).join(', ')} and ${ids[ids.length - 1]}` : `revision ${ids[0]}`;
  return {
    title: first.project.name,
    subtitle: several ? `Comparison of ${of}` : `Report on ${of}: ${first.revision.name}`,
    language: 'en',
    date,
    facts: [
      { label: 'Date of writing', text: date },
      { label: 'Granulate', text: [...new Set(subjects.map(({ design }) => design.material.name))].join('; ') },
      ...subjects.map(({ revision, prediction }) => ({
        label: `Revision ${revision.id}`,
        text: `${revision.name}${revision.date ? `, ${revision.date}` : ''}; made from ${prediction.designHash}`,
      })),
      { label: 'Models', text: `version ${first.prediction.coreVersion}` },
    ],
    notices: inventedNotes(subjects.map(({ design }) => design)),
    running: `${first.project.name} – ${of}`,
    summary: summaryOf(subjects),
    sections: [
      askedSection(subjects),
      ...(several ? [comparisonSection(subjects), ...subjects.flatMap(ofEach)] : ofOne(first)),
      cautionsSection(subjects),
      materialsSection(subjects),
      calibrationSection(subjects),
      modelsSection(first),
      methodSection(),
      originSection(subjects, date),
    ],
  };
}
