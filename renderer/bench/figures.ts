/** Figures of calibrations in words. */

import { formatNumber } from '../../core/index.ts';

/** ln(measured / predicted) as a percentage: 0.2 is about 22 %. */
export const errorText = (log: number | null): string =>
  log === null || !Number.isFinite(log) ? '–' : `${formatNumber(100 * Math.expm1(log), 2)} %`;

/** `×1.21`. */
export const timesText = (factor: number): string => `×${formatNumber(factor, 3)}`;

/** `0.9 … 1.4`, with ends that say nothing left open. */
export const limitsText = (low: number, high: number): string =>
  `${low < 1e-3 ? '0' : formatNumber(low, 3)} … ${high > 1e3 ? '∞' : formatNumber(high, 3)}`;

/** Ids for a sentence: the first ones, and how many more. */
export function idsText(ids: readonly string[], most = 8): string {
  const more = ids.length - most;
  return more > 0 ? `${ids.slice(0, most).join(', ')} +${more}` : ids.join(', ');
}
