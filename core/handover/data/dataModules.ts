/** The hand-over modules that write numbers: CSV, JSON, and both with every table in a zip. */

import { ok } from '../../result.ts';
import { coreVersion } from '../../version.ts';
import { tableBytes, utf8, zipped } from '../bytes.ts';
import { choiceOf } from '../check.ts';
import { fileName } from '../names.ts';
import type { HandoverFile, HandoverModule, HandoverOption, HandoverSource, HandoverValues } from '../types.ts';
import { comparisonOf, tableChoices, tablesOf } from './allTables.ts';
import { csvText, type DataTable, headingOf, stackedCsv, type TableStyle } from './table.ts';

const decimal: HandoverOption = {
  id: 'decimal',
  label: 'Decimal mark',
  help: 'With a comma, cells are parted by semicolons.',
  kind: 'choice',
  choices: [
    { id: 'point', label: 'Point: 1.5' },
    { id: 'comma', label: 'Comma: 1,5' },
  ],
  start: 'point',
};

const table: HandoverOption = {
  id: 'table',
  label: 'Table',
  help: 'One of them, or all below each other.',
  kind: 'choice',
  choices: [{ id: 'all', label: 'All, below each other' }, ...tableChoices],
  start: 'all',
};

const styleOf = (values: HandoverValues): TableStyle => ({
  decimal: choiceOf(values, 'decimal') === 'comma' ? ',' : '.',
});

const idsOf = ({ subjects }: HandoverSource): string => subjects.map(({ revision }) => revision.id).join('-');

/** Where the numbers come from, as remarks. */
function origin({ project, subjects, date }: HandoverSource): string[] {
  return [
    `${project.name}, ${date}, core ${coreVersion}`,
    ...(project.invented ? ['Machine and figures of this project are invented.'] : []),
    ...subjects.map(({ revision, design }) => `Revision ${revision.id}: ${revision.name}, design ${design.hash}`),
    'Estimates from published models, not measurements.',
  ];
}

const countFacts = (tables: readonly DataTable[]): HandoverFile['facts'] => [
  { label: 'Tables', text: String(tables.length) },
  { label: 'Rows', text: String(tables.reduce((sum, { rows }) => sum + rows.length, 0)) },
];

/** Tables of all revisions; titles name the revision where there are several. */
function allTables(source: HandoverSource): readonly DataTable[] {
  const several = source.subjects.length > 1;
  const own = source.subjects.flatMap((subject) =>
    tablesOf(subject).map((each) => (several ? { ...each, title: `${subject.revision.id}: ${each.title}` } : each)),
  );
  return [...comparisonOf(source), ...own];
}

const shared = { extension: 'csv', mediaType: 'text/csv', group: 'data', needs: 'solved', several: true } as const;

/** One table, or all below each other. */
export const csvModule: HandoverModule = {
  ...shared,
  id: 'csv',
  label: 'Table (CSV)',
  help: 'Numbers for a spreadsheet, units in the headings.',
  options: [table, decimal],
  async write(source, values) {
    const chosen = choiceOf(values, 'table');
    const tables = allTables(source).filter(({ id }) => chosen === 'all' || id === chosen);
    const remarks =
      chosen === 'all'
        ? origin(source)
            .map((line) => `# ${line}\r\n`)
            .join('')
        : '';
    const [first] = tables;
    const isPlain = chosen !== 'all' && tables.length === 1 && first !== undefined;
    const text = isPlain ? csvText(first, styleOf(values)) : `${remarks}${stackedCsv(tables, styleOf(values))}`;
    const name = fileName([source.project.name, idsOf(source), chosen === 'all' ? 'numbers' : chosen], 'csv');
    return ok([{ name, mediaType: 'text/csv', bytes: tableBytes(text), facts: countFacts(tables) }]);
  },
};

function jsonText(source: HandoverSource): string {
  return JSON.stringify(
    {
      origin: origin(source),
      project: source.project.name,
      invented: source.project.invented,
      date: source.date,
      comparison: comparisonOf(source)[0] ?? null,
      revisions: source.subjects.map((subject) => ({
        id: subject.revision.id,
        summary: subject.presentation?.summaryJson ?? null,
        tables: tablesOf(subject),
      })),
    },
    null,
    1,
  );
}

/** Everything for other programs. */
export const jsonModule: HandoverModule = {
  ...shared,
  id: 'json',
  label: 'Everything (JSON)',
  help: 'The whole verdict and every table for other programs, each column with its unit.',
  extension: 'json',
  mediaType: 'application/json',
  options: [],
  async write(source) {
    const bytes = utf8(`${jsonText(source)}\n`);
    const name = fileName([source.project.name, idsOf(source), 'numbers'], 'json');
    return ok([{ name, mediaType: 'application/json', bytes, facts: countFacts(allTables(source)) }]);
  },
};

/** What each file of the zip holds. */
function contents(tables: readonly (readonly [path: string, table: DataTable])[], source: HandoverSource): string {
  const lines = tables.map(
    ([path, { title, columns }]) => `${path}\r\n  ${title}: ${columns.map(headingOf).join('; ')}\r\n`,
  );
  return [...origin(source), '', 'numbers.json: everything for other programs', '', ...lines].join('\r\n');
}

/** Every table as CSV and the whole as JSON, in one zip. */
export const dataModule: HandoverModule = {
  ...shared,
  id: 'data',
  label: 'All tables (zip)',
  help: 'Every curve and table as a CSV of its own, with a list of contents and the whole as JSON.',
  extension: 'zip',
  mediaType: 'application/zip',
  options: [decimal],
  async write(source, values) {
    const paths = [
      ...comparisonOf(source).map((each) => [`${each.id}.csv`, each] as const),
      ...source.subjects.flatMap((subject) =>
        tablesOf(subject).map((each) => [`${subject.revision.id}/${each.id}.csv`, each] as const),
      ),
    ];
    const bytes = zipped(
      [
        ['contents.txt', utf8(contents(paths, source))],
        ['numbers.json', utf8(jsonText(source))],
        ...paths.map(([path, each]) => [path, tableBytes(csvText(each, styleOf(values)))] as const),
      ],
      source.date,
    );
    const name = fileName([source.project.name, idsOf(source), 'numbers'], 'zip');
    return ok([{ name, mediaType: 'application/zip', bytes, facts: countFacts(paths.map(([, each]) => each)) }]);
  },
};
