/** Units that suit small numbers in a table of one prediction; views keep one unit for all. */

import { formatQuantity, toSi, type Unit } from '../units.ts';
import type { PresentedRow } from './types.ts';

/** By the unit of a row: units for numbers below a size in SI, the largest first. */
const smaller: Readonly<Record<string, readonly { readonly below: number; readonly unit: Unit }[]>> = {
  MPa: [
    { below: 1e2, unit: 'Pa' },
    { below: 1e5, unit: 'kPa' },
  ],
  N·m: [{ below: 0.1, unit: 'mN·m' }],
};

/** Text of a row with three digits in a unit that suits its size; as it is where its unit suits. */
export function suitedText(row: PresentedRow): string {
  const units = smaller[row.unit];
  if (!units || row.value === null || row.value === 0) return row.text;
  const si = toSi(row.value, row.unit as Unit);
  const found = units.find(({ below }) => Math.abs(si) < below);
  return found ? formatQuantity(si, found.unit, 3) : row.text;
}
