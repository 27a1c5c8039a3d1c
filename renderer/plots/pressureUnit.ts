/** The unit in which a pressure reads well: wax heads build pascals, plastic heads megapascals. */

import { toSi, type Unit } from '../../core/index.ts';
import { formatQuantity } from '../look.ts';

/** MPa, kPa or Pa, by the largest pressure shown (Pa). */
export function pressureUnit(largest: number): Unit {
  if (largest >= 5e4 || largest === 0) return 'MPa';
  return largest >= 500 ? 'kPa' : 'Pa';
}

/** A pressure (Pa) as text in the unit that suits it. */
export const pressureText = (pressure: number): string => formatQuantity(pressure, pressureUnit(pressure), 3);

/** A pressure that stands in `unit`, as text in the unit that suits it; nothing reads in `unit` itself. */
export const suitedPressure = (value: number, unit: Unit): string =>
  value === 0 ? formatQuantity(0, unit, 3) : pressureText(toSi(value, unit));
