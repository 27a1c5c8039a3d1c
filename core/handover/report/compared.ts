/** The comparison of revisions: which is better for what, by how much, and curves over each other. */

import { type ComparedValue, comparePredictions } from '../../compare/compare.ts';
import { capacityNames } from '../../present/groups.ts';
import { formatNumber } from '../../units.ts';
import { overlaidFigures } from './curves.ts';
import { type Block, cell, paragraph, type ReportSection, table } from './model.ts';
import type { ReportSubject } from './source.ts';

const change = ({ change: share, verdict }: ComparedValue): string => {
  const by = share === null ? '' : `${share > 0 ? '+' : ''}${formatNumber(100 * share, 2)} %, `;
  if (verdict === 'unknown') return '–';
  if (verdict === 'same') return 'the same';
  return `${by}${verdict === 'smaller than the model error' ? 'smaller than the model’s error' : verdict}`;
};

/** Which revision is better for what, in one paragraph. */
export const answerText = (subjects: readonly ReportSubject[]): string =>
  comparePredictions(subjects.map(({ prediction }) => prediction)).answer.paragraph;

/** The section. @param subjects two or more; the first is what the others are compared with */
export function comparisonSection(subjects: readonly ReportSubject[]): ReportSection {
  const { revisions, rows, account, answer } = comparePredictions(subjects.map(({ prediction }) => prediction));
  const share = 63 / revisions.length;
  const differences = table(
    'differences',
    `Figures side by side; differences against revision ${revisions[0]?.id ?? ''}`,
    ['Figure|26', ...revisions.map(({ id }) => `Revision ${id}|${share}`), 'Model’s error|11|right'],
    [
      [cell('Limited by'), ...revisions.map(({ limit }) => cell(capacityNames[limit])), cell('–')],
      ...rows.map((row) => [
        cell(row.label),
        ...row.values.map((value, i) => cell(i === 0 ? value.text : `${value.text} (${change(value)})`)),
        cell(row.modelError === 0 ? '–' : `${formatNumber(100 * row.modelError, 2)} %`),
      ]),
    ],
  );
  const blocks: Block[] = [
    paragraph(answer.paragraph, 'lead'),
    differences,
    paragraph(
      'Model’s error is the relative error of the model between two similar designs: differences below it say nothing. Errors of inputs hit all revisions alike and mostly cancel.',
      'small',
    ),
    ...account.map((sentence) => paragraph(sentence)),
    ...overlaidFigures(subjects),
  ];
  return { id: 'comparison', title: 'Comparison', blocks };
}
