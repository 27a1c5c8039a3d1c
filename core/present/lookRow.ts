/** A presented figure in the reader's unit and with the reader's decimal sign. */

import { allUnits, fromSi, lookText, lookUnit, type NumberLook, toSi, unitLabel } from '../units.ts';
import type { PresentedRow } from './types.ts';

/**
 * The row as this reader sees it; the same row where nothing changes.
 * @param row as present() makes it, metric
 * @returns value, unit and text in the reader's unit; texts of several numbers are turned number by number
 */
export function lookRow(row: PresentedRow, look: NumberLook): PresentedRow {
  if (look.system === 'metric' && look.decimal === '.') return row;
  const unit = allUnits.find((candidate) => candidate === row.unit);
  const shown = unit && lookUnit(unit, look);
  const text = lookText(row.text, look);
  if (!unit || !shown || shown === unit || row.value === null) return { ...row, text };
  return { ...row, value: fromSi(toSi(row.value, unit), shown), unit: unitLabel(shown), text };
}
