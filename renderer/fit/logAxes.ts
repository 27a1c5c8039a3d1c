/** Axes by decades. */

import type uPlot from 'uplot';
import { formatNumber } from '../../core/index.ts';

/** A value in the legend with three digits and its unit. */
export const reading = (unit: string) => (_: uPlot, value: number | null) =>
  value === null || value === undefined ? '–' : `${formatNumber(value, 3)} ${unit}`;

/** Whole decades around the values, at least one. */
export function decades(least: number, most: number): [number, number] {
  const low = Math.floor(Math.log10(least) + 1e-9);
  return [10 ** low, 10 ** Math.max(low + 1, Math.ceil(Math.log10(most) - 1e-9))];
}

/** Marks and grid lines at whole decades only: small charts have no room for more. */
export const byDecades: uPlot.Axis = {
  splits: (_u, _axis, least, most) => {
    const low = Math.ceil(Math.log10(least) - 1e-9);
    const count = Math.floor(Math.log10(most) + 1e-9) - low + 1;
    return Array.from({ length: Math.max(0, count) }, (_, index) => 10 ** (low + index));
  },
  filter: (_u, marks) => marks,
  values: (_u, marks) => marks.map((mark) => formatNumber(mark, 3)),
};
