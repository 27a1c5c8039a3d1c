/** Predictions side by side: what differs, by how much, and whether that is more than the model's error. */

import type { Prediction } from '../prediction/types.ts';
import { alignColumns } from '../present/table.ts';
import { formatNumber, formatQuantity } from '../units.ts';
import { type ComparedQuantity, comparedQuantities } from './quantities.ts';

/** One figure of one revision against the first one. */
export interface ComparedValue {
  /** SI, or null */
  readonly value: number | null;
  readonly text: string;
  /** relative to the first revision; null where either has no number or the first is 0 */
  readonly change: number | null;
  readonly verdict: 'better' | 'worse' | 'different' | 'smaller than the model error' | 'same' | 'unknown';
}

/** One figure over all revisions. */
export interface ComparedRow {
  readonly id: string;
  readonly label: string;
  readonly modelError: number;
  readonly values: readonly ComparedValue[];
}

/** The comparison. */
export interface Comparison {
  readonly revisions: readonly { readonly id: string; readonly name: string; readonly limit: string }[];
  readonly rows: readonly ComparedRow[];
  /** sentences from the numbers, one revision at a time */
  readonly account: readonly string[];
}

/**
 * Compares predictions with the first of them.
 * @param predictions at least one
 */
export function comparePredictions(predictions: readonly Prediction[]): Comparison {
  const rows = comparedQuantities.map((quantity) => compareRow(quantity, predictions));
  return {
    revisions: predictions.map((p) => ({ id: p.revisionId, name: p.revisionName, limit: p.limit })),
    rows,
    account: predictions.slice(1).map((prediction, i) => accountOf(predictions[0], prediction, rows, i + 1)),
  };
}

function compareRow(quantity: ComparedQuantity, predictions: readonly Prediction[]): ComparedRow {
  const first = predictions.length > 0 ? quantity.value(predictions[0]) : null;
  const values = predictions.map((prediction): ComparedValue => {
    const value = quantity.value(prediction);
    const change = value !== null && first !== null && first !== 0 ? value / first - 1 : null;
    return { value, text: textOf(value, quantity), change, verdict: verdictOf(quantity, first, value) };
  });
  return { id: quantity.id, label: quantity.label, modelError: quantity.modelError, values };
}

function textOf(value: number | null, { unit }: ComparedQuantity): string {
  if (value === null) return '–';
  return unit === '' ? formatNumber(value, 3) : formatQuantity(value, unit, 3);
}

function verdictOf(quantity: ComparedQuantity, first: number | null, value: number | null): ComparedValue['verdict'] {
  if (first === null || value === null) return 'unknown';
  if (first === value) return 'same';
  const size = Math.max(Math.abs(first), Math.abs(value));
  if (Math.abs(value - first) < quantity.modelError * size) return 'smaller than the model error';
  if (quantity.better === 'neither') return 'different';
  return value > first === (quantity.better === 'more') ? 'better' : 'worse';
}

/** What a revision gains and loses against the first, figures named in the table's order. */
function accountOf(first: Prediction, other: Prediction, rows: readonly ComparedRow[], column: number): string {
  const named = (verdict: ComparedValue['verdict']) =>
    rows
      .filter((row) => row.values[column].verdict === verdict)
      .slice(0, 4)
      .map((row) => `${row.label.toLowerCase()} ${row.values[0].text} to ${row.values[column].text}`);
  const better = named('better');
  const worse = named('worse');
  const parts = [
    better.length > 0 ? `better in ${better.join(', ')}` : 'better in nothing that exceeds the model error',
    worse.length > 0 ? `worse in ${worse.join(', ')}` : 'worse in nothing that exceeds the model error',
  ];
  const limit =
    first.limit === other.limit
      ? `both are limited by ${other.limit}`
      : `limited by ${other.limit}, not ${first.limit}`;
  return `${other.revisionId} against ${first.revisionId}: ${parts.join('; ')}; ${limit}.`;
}

/** The comparison as text for a terminal. */
export function compareTable(comparison: Comparison): string {
  const head = ['', ...comparison.revisions.map((revision) => revision.id)];
  const limits = ['limited by', ...comparison.revisions.map((revision) => revision.limit)];
  const rows = comparison.rows.map((row) => [
    row.label,
    ...row.values.map((value, i) => (i === 0 ? value.text : `${value.text} ${mark(value)}`)),
  ]);
  return [
    ...alignColumns([head, limits, ...rows]),
    '',
    ...comparison.account,
    '',
    '+ better, - worse, ~ smaller than the model error, * different; against the first column.',
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
