/** The granulate: every value with its range, its status and its source, and what that means for each prediction. */

import { fieldLabel } from '../../doubt/labels.ts';
import { completenessOf } from '../../material/completeness.ts';
import type { PredictionTopic } from '../../material/completenessTypes.ts';
import { fieldUnit } from '../../project/fieldUnit.ts';
import { asObject } from '../../project/looseView.ts';
import type { Material, Sourced } from '../../project/materialSchema.ts';
import { formatNumber } from '../../units.ts';
import { type Block, cell, paragraph, type ReportSection, table } from './model.ts';
import type { ReportSubject } from './source.ts';

type Path = readonly (string | number)[];

interface FoundValue {
  readonly path: Path;
  readonly value: Sourced;
}

const isSourced = (node: object): node is Sourced => 'status' in node && 'value' in node && 'source' in node;

/** Every sourced value of a material, in the file's order. */
function sourcedValues(node: unknown, path: Path = []): FoundValue[] {
  if (typeof node !== 'object' || node === null) return [];
  if (isSourced(node)) return [{ path, value: node }];
  const entries: readonly (readonly [string | number, unknown])[] = Array.isArray(node)
    ? node.map((item: unknown, i) => [i, item] as const)
    : Object.entries(node);
  return entries.flatMap(([key, item]) => sourcedValues(item, [...path, key]));
}

const pathWords = (path: Path): string =>
  fieldLabel(path.map((part, i) => (typeof part === 'number' ? `[${part}]` : i === 0 ? part : `.${part}`)).join(''));

function valueRow({ path, value }: FoundValue) {
  const { low, high } = value;
  const range =
    low === undefined && high === undefined
      ? '–'
      : `${formatNumber(low ?? value.value, 4)} to ${formatNumber(high ?? value.value, 4)}`;
  const unit = fieldUnit(path);
  return [
    pathWords(path),
    `${formatNumber(value.value, 6)}${unit === '' || unit === '°' ? unit : ` ${unit}`}`,
    ...[range, value.status, value.source],
  ];
}

const columns = ['Value|22', 'Number|15', 'Low to high|13', 'Status|12', 'Source|38'];

const topicNames: Readonly<Record<PredictionTopic, string>> = {
  feeding: 'Feeding',
  melting: 'Melting',
  pumping: 'Pumping',
  residence: 'Residence',
  colour: 'Colour',
  propertyLoss: 'Loss of properties',
  cracking: 'Cracking of the print',
  strand: 'Strand',
};

function completeness(material: Material): Block {
  const list = (names: readonly string[]) => (names.length === 0 ? '–' : names.join(', '));
  return table(
    `${material.id}-known`,
    'How well the values behind each prediction are known',
    ['Prediction|16', 'State|12', 'Missing|26', 'Doubtful: not seen and not measured here|46'],
    completenessOf(material).map(({ topic, state, missing, doubtful }) => [
      ...[topicNames[topic], state, list(missing), list(doubtful)],
    ]),
  );
}

function anchors({ id, colourAnchors }: Material): Block[] {
  if (colourAnchors.length === 0) return [];
  return [
    table(
      `${id}-anchors`,
      'Colours at extents of the colour’s law',
      ['Extent|12|right', 'L* / a* / b*|24', 'Status|16', 'Source|48'],
      colourAnchors.map(({ extent, lightness, a, b, status, source }) => [
        formatNumber(extent, 4),
        [lightness, a, b].map((value) => formatNumber(value, 4)).join(' / '),
        ...[status ?? 'not told', source ?? 'not told'],
      ]),
    ),
  ];
}

function range({ rheologyRange: r }: Material): Block[] {
  if (!r) return [paragraph('The range in which the viscosity law was fitted or checked is not told.')];
  return [
    paragraph(
      `The viscosity law was fitted or checked from ${formatNumber(r.fromC, 4)} to ${formatNumber(r.toC, 4)} °C and ${formatNumber(r.shearFromPerS, 4)} to ${formatNumber(r.shearToPerS, 4)} 1/s (${r.status ?? 'status not told'}; ${r.source}).`,
    ),
  ];
}

function lawWords({ degradation, colourLaw }: Material): Block[] {
  if (degradation.length === 0) return [paragraph('No law of ageing is known for this granulate.')];
  return [
    {
      kind: 'list',
      items: degradation.map((law, i) =>
        cell(
          `Law ${i + 1}, ${law.id}: ${law.observed}; measured from ${formatNumber(law.validFromC, 4)} to ${formatNumber(law.validToC, 4)} °C${law.id === colourLaw ? '; drives the colour' : ''}.`,
        ),
      ),
    },
  ];
}

function materialBlocks(material: Material): Block[] {
  const name = `${material.name}${material.invented ? ' – invented data' : ''}`;
  const values = sourcedValues(asObject(material));
  return [
    { kind: 'heading', id: `${material.id}-material`, text: name },
    ...(material.note ? [paragraph(material.note)] : []),
    completeness(material),
    ...range(material),
    ...lawWords(material),
    table(
      `${material.id}-values`,
      `Values of ${material.name}, each with its status and source`,
      columns,
      values.map(valueRow),
    ),
    ...anchors(material),
  ];
}

/** Granulates of the revisions, each once. */
export function materialsSection(subjects: readonly ReportSubject[]): ReportSection {
  const [{ project }] = subjects;
  const used = new Set(subjects.map(({ revision }) => revision.materialId));
  return {
    id: 'materials',
    title: 'Granulate: values and sources',
    blocks: project.materials.filter(({ id }) => used.has(id)).flatMap(materialBlocks),
  };
}
