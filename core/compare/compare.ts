/** Predictions side by side: what differs, by how much, and whether that is more than the model's error. */

import type { CapacityKind, Prediction } from '../prediction/types.ts';
import { capacityNames } from '../present/groups.ts';
import { alignColumns } from '../present/table.ts';
import type { Unit } from '../units.ts';
import { type BetterForWhat, betterForWhat } from './account.ts';
import { type ComparedQuantity, comparedQuantities, comparedText, withinError } from './quantities.ts';

/** One figure of one revision against the base. */
export interface ComparedValue {
  /** SI, or null */
  readonly value: number | null;
  readonly text: string;
  /** relative to the base; null where either has no number or that of the base is 0 */
  readonly change: number | null;
  readonly verdict: 'better' | 'worse' | 'different' | 'smaller than the model error' | 'same' | 'unknown';
}

/** One figure over all revisions. */
export interface ComparedRow {
  readonly id: string;
  readonly label: string;
  readonly unit: Unit | '';
  readonly modelError: number;
  readonly values: readonly ComparedValue[];
}

/** The comparison. */
export interface Comparison {
  readonly revisions: readonly { readonly id: string; readonly name: string; readonly limit: CapacityKind }[];
  /** index of the revision that the others are compared with */
  readonly base: number;
  readonly rows: readonly ComparedRow[];
  /** sentences from the numbers, one revision at a time */
  readonly account: readonly string[];
  /** which revision is better for what */
  readonly answer: BetterForWhat;
}

/**
 * Compares predictions with one of them.
 * @param predictions at least one
 * @param base index of the one that the others are compared with
 */
export function comparePredictions(predictions: readonly Prediction[], base = 0): Comparison {
  const rows = comparedQuantities.map((quantity) => compareRow(quantity, predictions, base));
  const others = predictions.flatMap((prediction, column) => (column === base ? [] : [{ prediction, column }]));
  return {
    revisions: predictions.map((p) => ({ id: p.revisionId, name: p.revisionName, limit: p.limit })),
    base,
    rows,
    account: others.map(({ prediction, column }) => accountOf(predictions[base], prediction, rows, base, column)),
    answer: betterForWhat(predictions),
  };
}

function compareRow(quantity: ComparedQuantity, predictions: readonly Prediction[], base: number): ComparedRow {
  const against = predictions.length > base ? quantity.value(predictions[base]) : null;
  const values = predictions.map((prediction): ComparedValue => {
    const value = quantity.value(prediction);
    const change = value !== null && against !== null && against !== 0 ? value / against - 1 : null;
    return { value, text: comparedText(value, quantity), change, verdict: verdictOf(quantity, against, value) };
  });
  const { id, label, unit, modelError } = quantity;
  return { id, label, unit, modelError, values };
}

function verdictOf(quantity: ComparedQuantity, base: number | null, value: number | null): ComparedValue['verdict'] {
  if (base === null || value === null) return 'unknown';
  if (base === value) return 'same';
  if (withinError(quantity, base, value)) return 'smaller than the model error';
  if (quantity.better === 'neither') return 'different';
  return value > base === (quantity.better === 'more') ? 'better' : 'worse';
}

/** What a revision gains and loses against the base, figures named in the table's order. */
function accountOf(
  first: Prediction,
  other: Prediction,
  rows: readonly ComparedRow[],
  base: number,
  column: number,
): string {
  const named = (verdict: ComparedValue['verdict']) => {
    const all = rows
      .filter((row) => row.values[column].verdict === verdict)
      .map((row) => `${inSentence(row.label)} ${row.values[base].text} to ${row.values[column].text}`);
    const rest = all.length - mostNamed;
    const shown = all.slice(0, mostNamed).join(', ');
    if (rest > 0) return `${verdict} in ${shown} and ${rest} more`;
    return `${verdict} in ${all.length > 0 ? shown : 'nothing that exceeds the model error'}`;
  };
  const stands = (prediction: Prediction) => `${prediction.revisionId} delivers nothing`;
  const still = [first, other].filter((prediction) => !prediction.output.flows).map(stands);
  const limit =
    first.limit === other.limit
      ? `both are limited by ${capacityNames[other.limit]}`
      : `limited by ${capacityNames[other.limit]}, not ${capacityNames[first.limit]}`;
  const parts = [...still, named('better'), named('worse'), limit];
  return `${other.revisionId} against ${first.revisionId}: ${parts.join('; ')}.`;
}

/** Figures named in an account; the others are counted. */
const mostNamed = 4;

/** A label within a sentence: a capital that only begins a sentence made small, words like ΔE00 left alone. */
const inSentence = (label: string): string =>
  /^[A-Z][a-z]/.test(label) ? label[0].toLowerCase() + label.slice(1) : label;

/** The comparison as text for a terminal. */
export function compareTable(comparison: Comparison): string {
  const head = ['', ...comparison.revisions.map((revision) => revision.id)];
  const limits = ['limited by', ...comparison.revisions.map((revision) => capacityNames[revision.limit])];
  const rows = comparison.rows.map((row) => [
    row.label,
    ...row.values.map((value, i) => (i === comparison.base ? value.text : `${value.text} ${mark(value)}`)),
  ]);
  return [
    ...alignColumns([head, limits, ...rows]),
    '',
    comparison.answer.paragraph,
    '',
    ...comparison.account,
    '',
    `+ better, - worse, ~ smaller than the model error, * different, = same, – no number; against ${
      comparison.base === 0 ? 'the first column' : comparison.revisions[comparison.base]?.id
    }.`,
  ].join('\n');
}

const marks: Readonly<Record<ComparedValue['verdict'], string>> = {
  better: '+',
  worse: '-',
  different: '*',
  'smaller than the model error': '~',
  same: '=',
  unknown: '',
};

const mark = (value: ComparedValue): string => marks[value.verdict];
