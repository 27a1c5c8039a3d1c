/** What the table of checks shows of a result, in words. */

import { type CheckResult, formatNumber } from '../../core/index.ts';
import { checksText as words } from '../strings/checks.ts';

/** Digits that show a difference of the size of the limit. */
const digitsFor = ({ expected, limit, measure }: CheckResult): number => {
  const share = measure === 'relative' ? limit : limit / Math.max(Math.abs(expected), limit);
  return Math.max(3, Math.min(8, Math.ceil(-Math.log10(Math.max(share, 1e-9))) + 2));
};

/** A number of a check with its unit. */
export const withUnit = (check: CheckResult, value: number | null): string =>
  value === null ? '–' : `${formatNumber(value, digitsFor(check))}${check.unit && `\u00A0${check.unit}`}`;

/** An error or limit: a share in per cent, or in the unit. */
export function errorText({ measure, unit }: CheckResult, value: number | null): string {
  if (value === null) return '–';
  return measure === 'relative'
    ? `${formatNumber(100 * value, 2)}\u00A0%`
    : `${formatNumber(value, 2)}${unit && `\u00A0${unit}`}`;
}

/** Which rows are wanted. */
export interface Choice {
  /** stage or kind, or `all` */
  readonly stage: string;
  readonly kind: string;
  readonly onlyFailed: boolean;
}

/** The rows of a choice, by stage in the order of the way through, and as they came. */
export function chosen(results: readonly CheckResult[], { stage, kind, onlyFailed }: Choice): CheckResult[] {
  const order = Object.keys(words.stages);
  return results
    .filter((each) => stage === 'all' || each.stage === stage)
    .filter((each) => kind === 'all' || each.kind === kind)
    .filter((each) => !onlyFailed || !each.pass)
    .sort((a, b) => order.indexOf(a.stage) - order.indexOf(b.stage));
}

/** The rows as a table of text, tab between cells, as spreadsheets take it. */
export function asText(results: readonly CheckResult[]): string {
  const { quantity, expected, got, error, limit, status, source } = words.heads;
  const heads = [words.stage, quantity, expected, got, error, limit, 'unit', status, words.kind, source];
  const cells = results.map((each) => [
    words.stages[each.stage],
    each.quantity,
    each.expected,
    each.got ?? '',
    each.error ?? '',
    each.measure === 'relative' ? `${each.limit} of expected` : each.limit,
    each.unit,
    each.pass ? words.within : words.outside,
    words.kinds[each.kind],
    each.source,
  ]);
  return [heads, ...cells].map((row) => row.join('\t')).join('\n');
}
