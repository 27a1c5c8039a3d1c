/** Quantities as text: a number with a sensible count of digits, and its unit. */

import { fromSi } from './convert.ts';
import type { Unit } from './table.ts';

/** Shown where a number is not finite. */
export const noNumber = '–';

/** Removes zeros that only pad the decimals. */
const trim = (text: string): string => (text.includes('.') ? text.replace(/\.?0+$/, '') : text);

/**
 * A number rounded to significant digits, without padding zeros; exponent form outside 1e-4 to 1e7.
 * @param value any number
 * @param significantDigits 1 to 21
 * @returns text with a decimal point, or an en dash where the value is not finite
 */
export function formatNumber(value: number, significantDigits: number): string {
  if (!Number.isFinite(value)) return noNumber;
  if (value === 0) return '0';
  const rounded = Number(value.toPrecision(significantDigits));
  const size = Math.abs(rounded);
  if (size >= 1e7 || size < 1e-4) {
    const [mantissa = '', exponent = ''] = rounded.toExponential(significantDigits - 1).split('e');
    return `${trim(mantissa)}e${exponent.replace('+', '')}`;
  }
  const decimals = Math.max(0, significantDigits - 1 - Math.floor(Math.log10(size)));
  return trim(rounded.toFixed(Math.min(decimals, 100)));
}

/** Symbol as printed after a number: the delta that tells differences apart is not printed. */
export const unitLabel = (unit: Unit): string => unit.replace('Δ', '');

/**
 * A quantity for reading, e.g. `formatQuantity(0.014, 'mm', 3)` is `14 mm`.
 * @param si value in the dimension's SI unit
 * @param unit unit to show
 * @param significantDigits 1 to 21, default 4
 */
export function formatQuantity(si: number, unit: Unit, significantDigits = 4): string {
  const number = formatNumber(fromSi(si, unit), significantDigits);
  if (number === noNumber) return number;
  return unit === '°' ? `${number}°` : `${number} ${unitLabel(unit)}`;
}
