/** Numbers of the machine-readable output: in display units, rounded, null where there is none. */

import { fromSi, type Unit } from '../units.ts';

/** Significant digits that are written: more than any model is good for. */
const digits = 7;

/** A number as it is written. */
export const rounded = (value: number): number => Number(value.toPrecision(digits));

/** An SI number in a display unit, as it is written. */
export const shown = (si: number, unit: Unit): number => rounded(fromSi(si, unit));

/** The number where there is a finite one, else null. */
export const orNull = (value: number | null | undefined, show: (value: number) => number = rounded): number | null =>
  typeof value === 'number' && Number.isFinite(value) ? show(value) : null;

/** Display units of what findings and comparisons carry in SI; what is not listed has no unit to convert. */
const displayed: Readonly<Record<string, Unit>> = {
  m: 'mm',
  Pa: 'MPa',
  // Findings and comparisons state temperatures, never differences.
  K: '°C',
  'N m': 'N·m',
  N·m: 'N·m',
  'rev/s': 'rpm',
  'kg/s': 'g/min',
  'm³/s': 'mm³/s',
  'Pa s': 'Pa·s',
  Pa·s: 'Pa·s',
};

/** A value in the display unit of its SI unit. */
export function displayedValue(si: number | null, siUnit: string): { value: number | null; unit: string } {
  const unit = displayed[siUnit];
  return unit ? { value: orNull(si, (v) => shown(v, unit)), unit } : { value: orNull(si), unit: siUnit };
}
