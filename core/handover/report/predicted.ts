/** The prediction: figures in groups, what could limit, ranges, and the models they rest on. */

import { comparedText } from '../../compare/quantities.ts';
import type { DoubtSummary } from '../../doubt/types.ts';
import type { Basis } from '../../prediction/types.ts';
import { calibrationNote, fieldsNote } from '../../present/foundation.ts';
import { capacityNames } from '../../present/groups.ts';
import type { PresentedGroup } from '../../present/types.ts';
import { formatNumber, formatQuantity } from '../../units.ts';
import { type Block, type Cell, cell, facts, heading, paragraph, type ReportSection, table } from './model.ts';
import { idOf, type ReportSubject, titleOf } from './source.ts';

/** Groups that other sections show in full. */
const elsewhere = new Set(['inputs', 'capacities']);

const groupsOf = ({ presentation }: ReportSubject): PresentedGroup[] =>
  presentation.groups.filter(({ id, rows }) => !elsewhere.has(id) && rows.some(({ text }) => text !== ''));

/** Every model once, in the order of the figures. */
function basesOf(subject: ReportSubject): { readonly basis: Basis; readonly titles: string[] }[] {
  const found = new Map<string, { basis: Basis; titles: string[] }>();
  for (const { title, rows } of subject.presentation.groups) {
    for (const { basis } of rows) {
      if (!basis) continue;
      const key = JSON.stringify(basis);
      const entry = found.get(key) ?? { basis, titles: [] };
      if (!entry.titles.includes(title)) entry.titles.push(title);
      found.set(key, entry);
    }
  }
  return [...found.values()];
}

const modelId = (subject: ReportSubject, basis: Basis): string =>
  idOf(
    subject,
    `model-${basesOf(subject).findIndex((each) => JSON.stringify(each.basis) === JSON.stringify(basis)) + 1}`,
  );

/** A group as a table; each doubt beside its figure's model. */
function groupBlocks(subject: ReportSubject, { id, title, rows }: PresentedGroup): Block[] {
  const shown = rows.filter(({ text }) => text !== '');
  const bases = [
    ...new Map(shown.flatMap(({ basis }) => (basis ? [[JSON.stringify(basis), basis] as const] : []))).values(),
  ];
  const models: Cell[] = bases.map((basis) =>
    cell(`Model: ${basis.model}${basis.doubt === null ? '' : `. Doubtful here: ${basis.doubt}`}`, {
      to: modelId(subject, basis),
    }),
  );
  return [
    table(
      idOf(subject, `figures-${id}`),
      title,
      ['Figure|30', 'Value|26', 'What it is|44'],
      shown.map(({ label, text, help }) => [label, text, help]),
    ),
    ...(models.length > 0 ? [{ kind: 'list' as const, items: models }] : []),
  ];
}

function capacityBlock(subject: ReportSubject): Block {
  const { prediction } = subject;
  return table(
    idOf(subject, 'capacities'),
    'What could limit the output: each capacity alone, and how far it is above what comes out',
    ['Capacity|28', 'Alone allows|18|right', 'Reserve|14|right', 'Model|40'],
    prediction.capacities.map(({ kind, volumeFlow, reserve, basis }) => [
      cell(kind === prediction.limit ? `${capacityNames[kind]} (limits)` : capacityNames[kind], {
        strong: kind === prediction.limit,
      }),
      Number.isFinite(volumeFlow) ? formatQuantity(volumeFlow, 'mm³/s', 3) : 'does not limit',
      Number.isFinite(reserve) ? `${formatNumber(reserve, 3)} ×` : '–',
      cell(`${basis.model}${basis.doubt === null ? '' : `; doubtful here: ${basis.doubt}`}`, {
        to: modelId(subject, basis),
      }),
    ]),
  );
}

function rangeBlocks(subject: ReportSubject, doubt: DoubtSummary): Block[] {
  const id = idOf(subject, 'ranges');
  const { outputs, influences, done, failed, measureNext, note } = doubt;
  const strongest = (output: string) => {
    const ranked =
      influences.find((each) => each.output === output)?.ranked.filter(({ aboveNoise }) => aboveNoise) ?? [];
    return (
      ranked
        .slice(0, 2)
        .map(({ label }) => label)
        .join('; ') || '–'
    );
  };
  const known = outputs.filter((one) => one.known > 0);
  const show = (value: number, unit: (typeof outputs)[number]['unit']) =>
    Number.isFinite(value) ? comparedText(value, { unit }) : '–';
  if (known.length === 0)
    return [paragraph(`Of ${done} samples over the ranges of the inputs none gave a figure to range over.`)];
  return [
    heading(id, titleOf(subject, 'Ranges')),
    table(
      `${id}-table`,
      `Figures over the ranges of the inputs: nine of ten of ${done} samples lie between low and high`,
      ['Figure|26', 'Low (5 %)|15|right', 'Figure|15|right', 'High (95 %)|15|right', 'Moved most by|29'],
      known.map((one) => [
        one.label,
        show(one.q05, one.unit),
        show(one.nominal, one.unit),
        show(one.q95, one.unit),
        strongest(one.id),
      ]),
    ),
    paragraph(`${note}${failed > 0 ? ` ${failed} of ${done} samples could not be computed.` : ''}`, 'small'),
    ...(measureNext.length > 0
      ? [
          table(
            `${id}-next`,
            'What to measure next to narrow the ranges',
            ['Value|30', 'Share of the spread|18|right', 'How|52'],
            measureNext.map(({ label, share, how }) => [label, `${formatNumber(100 * share, 2)} %`, how]),
          ),
        ]
      : []),
  ];
}

/** Figures, limits and ranges of one revision. */
export function predictionSection(subject: ReportSubject): ReportSection {
  const { prediction, doubt } = subject;
  const [output, ...rest] = groupsOf(subject);
  return {
    id: idOf(subject, 'prediction'),
    title: titleOf(subject, 'The prediction'),
    blocks: [
      paragraph(`${fieldsNote(prediction)} ${calibrationNote(prediction)}`),
      ...(prediction.converged
        ? []
        : [paragraph('Not every iteration converged: see the findings, and take these figures with care.', 'warning')]),
      ...(output ? groupBlocks(subject, output) : []),
      capacityBlock(subject),
      ...(doubt
        ? rangeBlocks(subject, doubt)
        : [paragraph('Ranges of the figures were not asked for; see the option.', 'small')]),
      ...rest.flatMap((group) => groupBlocks(subject, group)),
    ],
  };
}

/** The models with all they say of themselves. */
export function modelsSection(subject: ReportSubject): ReportSection {
  return {
    id: idOf(subject, 'models'),
    title: titleOf(subject, 'Models behind the figures'),
    blocks: basesOf(subject).flatMap(({ basis, titles }, i) => {
      const id = idOf(subject, `model-${i + 1}`);
      return [
        heading(id, basis.model),
        facts(`${id}-table`, `Model ${i + 1}`, [
          ['Used for', titles.join(', ')],
          ['Assumes', basis.assumptions.join(' ') || 'nothing beyond the above'],
          ['Holds for', basis.range],
          ['Source', basis.source],
          ['Doubtful here', basis.doubt ?? 'no: inside its range'],
        ]),
      ];
    }),
  };
}
