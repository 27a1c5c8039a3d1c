/** Numbers of findings in units that suit their size. */

import { formatNumber, formatQuantity } from '../units.ts';

/** A pressure (Pa) in MPa, kPa or Pa. */
export function pressureText(pressure: number): string {
  const size = Math.abs(pressure);
  return formatQuantity(pressure, size >= 5e4 || size === 0 ? 'MPa' : size >= 500 ? 'kPa' : 'Pa', 3);
}

/** A torque (N m) in N·m or mN·m. */
export const torqueText = (torque: number): string =>
  torque === 0 || Math.abs(torque) >= 0.05
    ? formatQuantity(torque, 'N·m', 3)
    : `${formatNumber(1000 * torque, 3)} mN·m`;

/** Length (m) in mm. */
export const lengthText = (length: number): string => formatQuantity(length, 'mm', 3);
