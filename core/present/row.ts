/** Making one presented row. */

import type { Basis, Prediction } from '../prediction/types.ts';
import { formatNumber, formatQuantity, fromSi, type Unit, unitLabel } from '../units.ts';
import type { PresentedRow } from './types.ts';

/** Text where a number is missing. */
const missing = '–';

/** Keeps a number where melt flows; elsewhere it is a zero that says nothing, and none is shown. */
export const whereFlowing =
  ({ output }: Prediction) =>
  (value: number): number | null =>
    output.flows ? value : null;

/** What a row says besides its number. */
export interface RowWords {
  readonly id: string;
  readonly label: string;
  readonly help: string;
  readonly basis?: Basis | null;
}

/** A quantity in a display unit; `si` in SI. */
export function quantityRow(words: RowWords, si: number | null, unit: Unit, digits = 4): PresentedRow {
  const { basis = null, ...rest } = words;
  if (si === null || !Number.isFinite(si)) return { ...rest, value: null, unit: unitLabel(unit), text: missing, basis };
  return { ...rest, value: fromSi(si, unit), unit: unitLabel(unit), text: formatQuantity(si, unit, digits), basis };
}

/** A bare number, with an optional unit that needs no conversion. */
export function numberRow(words: RowWords, value: number | null, unit = '', digits = 4): PresentedRow {
  const { basis = null, ...rest } = words;
  if (value === null || !Number.isFinite(value)) return { ...rest, value: null, unit, text: missing, basis };
  return { ...rest, value, unit, text: `${formatNumber(value, digits)}${unit ? ` ${unit}` : ''}`, basis };
}

/** Words only. */
export function textRow(words: RowWords, text: string): PresentedRow {
  const { basis = null, ...rest } = words;
  return { ...rest, value: null, unit: '', text, basis };
}
