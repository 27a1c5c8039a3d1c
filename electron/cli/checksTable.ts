/** Lays out checks against the outside world for a terminal. */

import { alignColumns, type CheckKind, type CheckResult, checkCounts } from '../../core/index.ts';

const kindWords: Readonly<Record<CheckKind, string>> = {
  published: 'published',
  independent: 'independent solver',
  exact: 'exact',
  commonPractice: 'common practice',
  fromMemory: 'from memory',
};

/** How many of the worst are named at the end. */
const worstCount = 5;

const figure = (value: number | null, digits = 5): string => {
  if (value === null || !Number.isFinite(value)) return '-';
  const size = Math.abs(value);
  return value === 0 || (size >= 1e-3 && size < 1e6)
    ? String(Number(value.toPrecision(digits)))
    : value.toExponential(digits - 1);
};

/** An error or a limit: a share as %, else as it stands in the unit. */
const away = ({ measure, unit }: CheckResult, value: number | null): string => {
  if (value === null) return '-';
  return measure === 'relative' ? `${figure(value * 100, 2)} %` : `${figure(value, 2)} ${unit}`.trimEnd();
};

/**
 * Error over limit: 1 is just allowed.
 * @returns Infinity where there is no number, or where any error is too large
 */
export function strain({ error, limit }: CheckResult): number {
  if (error === null) return Number.POSITIVE_INFINITY;
  if (limit > 0) return error / limit;
  return error > 0 ? Number.POSITIVE_INFINITY : 0;
}

/** Those nearest to their limits or beyond, worst first; failed ones before all others. */
export const worstChecks = (results: readonly CheckResult[], count = worstCount): readonly CheckResult[] =>
  results.toSorted((a, b) => Number(a.pass) - Number(b.pass) || strain(b) - strain(a)).slice(0, count);

const head = ['stage', 'quantity', 'expected', 'got', 'unit', 'error', 'limit', 'kind', 'status', 'source'];

const cells = (result: CheckResult): readonly string[] => [
  result.stage,
  result.quantity,
  figure(result.expected),
  figure(result.got),
  result.unit,
  away(result, result.error),
  away(result, result.limit),
  kindWords[result.kind],
  result.pass ? 'pass' : `FAIL${result.fault === null ? '' : ` (${result.fault})`}`,
  result.source,
];

const share = (value: number): string => (Number.isFinite(value) ? `${figure(value * 100, 2)} % of its limit` : 'FAIL');

/** Every check, then how many there are of each kind, and the worst errors relative to their limits. */
export function checksTable(results: readonly CheckResult[]): string {
  const { passed, kinds } = checkCounts(results);
  const counts = Object.entries(kinds).map(([kind, count]) => `${count} ${kindWords[kind as CheckKind]}`);
  return [
    ...alignColumns([head, ...results.map(cells)]),
    '',
    'Nearest to their limits',
    ...alignColumns(worstChecks(results).map((result) => [`  ${share(strain(result))}`, result.id])),
    '',
    `${passed} of ${results.length} within their limits: ${counts.join(', ')}`,
  ].join('\n');
}
