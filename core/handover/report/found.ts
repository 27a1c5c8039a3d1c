/** Findings by weight, and the standing cautions. */

import type { Finding, Severity } from '../../findings/types.ts';
import { pressureText } from '../../findings/words.ts';
import { displayedValue } from '../../present/shown.ts';
import { formatNumber } from '../../units.ts';
import { type Block, type Cell, cell, paragraph, type ReportSection, table } from './model.ts';
import { idOf, type ReportSubject, titleOf } from './source.ts';

/** Weights in order, with what each means. */
const weights: readonly {
  readonly severity: Exclude<Severity, 'caution'>;
  readonly title: string;
  readonly name: string;
}[] = [
  { severity: 'stop', title: 'Stops: the machine will not do what is asked', name: 'stop' },
  { severity: 'warn', title: 'Warnings: it may fail or disappoint', name: 'warning' },
  { severity: 'note', title: 'Notes: worth knowing', name: 'note' },
];

/** Part of the report that shows where a finding lies. */
function placeOf(subject: ReportSubject, { z, code, where }: Finding): string | null {
  if (subject.prediction.dead.spots.length > 0 && /dead|corner|shoulder|ledge/.test(code))
    return idOf(subject, 'dead-spots');
  if (/colour|streak|yellow/i.test(code)) return idOf(subject, 'colour');
  if (/nozzle/i.test(where)) return idOf(subject, 'nozzle');
  if (/zone|heater/i.test(where)) return idOf(subject, 'zones');
  if (z !== null) return idOf(subject, 'screw');
  return idOf(subject, 'machine');
}

function whereCell(subject: ReportSubject, finding: Finding): Cell {
  const to = placeOf(subject, finding);
  const along = finding.z === null ? '' : ` (at ${formatNumber(finding.z * 1000, 4)} mm)`;
  return cell(`${finding.where}${along}`, to === null ? {} : { to });
}

/** The number and its limit, where there are both. */
function numberText({ value, limit, unit }: Finding): string {
  if (value === null || limit === null) return '';
  if (unit === 'Pa') return ` Number: ${pressureText(value)}; limit: ${pressureText(limit)}.`;
  const [shown, bound] = [displayedValue(value, unit), displayedValue(limit, unit)];
  if (shown.value === null || bound.value === null) return '';
  const symbol = unit === '' || unit === '-' ? '' : ` ${shown.unit}`;
  return ` Number: ${formatNumber(shown.value, 3)}${symbol}; limit: ${formatNumber(bound.value, 3)}${symbol}.`;
}

const columns = ['Where|22', 'What was seen, and why it matters|46', 'What to change|32'];

const rowOf = (subject: ReportSubject, finding: Finding): (string | Cell)[] => [
  whereCell(subject, finding),
  `${finding.saw} ${finding.why}${numberText(finding)}`,
  finding.change,
];

/** Findings of one revision, gravest first. */
export function findingsSection(subject: ReportSubject): ReportSection {
  const { findings } = subject.prediction;
  const tables = weights.flatMap(({ severity, title }): Block[] => {
    const some = findings.filter((finding) => finding.severity === severity);
    return some.length === 0
      ? []
      : [
          table(
            idOf(subject, `findings-${severity}`),
            title,
            columns,
            some.map((finding) => rowOf(subject, finding)),
          ),
        ];
  });
  return {
    id: idOf(subject, 'findings'),
    title: titleOf(subject, 'Findings'),
    blocks: tables.length > 0 ? tables : [paragraph('No rule found anything doubtful about this design.')],
  };
}

/** How many findings of each weight, in words. */
export function findingCounts(findings: readonly Finding[]): string {
  const counted = weights.flatMap(({ severity, name }) => {
    const count = findings.filter((finding) => finding.severity === severity).length;
    return count === 0 ? [] : [`${count} ${name}${count === 1 ? '' : 's'}`];
  });
  return counted.length === 0 ? 'no finding' : counted.join(', ');
}

/** Standing cautions, each once; they hold for every machine of this kind. */
export function cautionsSection(subjects: readonly ReportSubject[]): ReportSection {
  const seen = new Set<string>();
  const rows = subjects.flatMap((subject) =>
    subject.prediction.findings
      .filter(({ severity }) => severity === 'caution')
      .filter(({ code, where, saw }) => {
        const key = `${code} ${where} ${saw}`;
        return seen.has(key) ? false : Boolean(seen.add(key));
      })
      .map((finding): (string | Cell)[] => {
        const of = subject.prefix === '' ? '' : ` (${subject.prefix})`;
        return [`${finding.where}${of}`, `${finding.saw} ${finding.why}`, finding.change];
      }),
  );
  return {
    id: 'cautions',
    title: 'Cautions',
    blocks: [
      paragraph(
        'These stand for every machine of this kind and are never left out as dealt with. They do not replace local codes or people licensed to judge them.',
      ),
      ...(rows.length > 0
        ? [table('cautions-table', 'Standing cautions', ['Where|20', 'What, and why|48', 'What to do|32'], rows)]
        : []),
    ],
  };
}
