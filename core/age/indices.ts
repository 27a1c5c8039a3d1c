/**
 * Single-number indices of yellowing and browning. None grows monotonically into deep brown: both yellowness and
 * browning index fall again below about L* 40, so they compare pale to tan samples only; use dE2000 or L* beyond.
 */

import type { Lab, Xyz } from './cielab.ts';
import { type E313Condition, e313Coefficients } from './e313Coefficients.ts';

/**
 * Yellowness index YI = 100 (Cx X - Cz Z)/Y.
 * @param xyz tristimulus values under the named illuminant and observer, any scale
 * @param condition illuminant / observer angle
 * @returns dimensionless, about 0 for white; not finite for Y = 0
 * Source: ASTM E313-15e1.
 */
export function yellownessE313(xyz: Xyz, condition: E313Condition = 'D65/2'): number {
  const [cx, cz] = e313Coefficients[condition];
  return (100 * (cx * xyz[0] - cz * xyz[2])) / xyz[1];
}

/**
 * Browning index BI = 100 (x - 0.31)/d with x = (a + 1.75 L)/(5.645 L + a - 3.012 b).
 * @param lab L*a*b*, L* > 0
 * @param divisor d: 0.17 (Maskan 2001) or 0.172 (Buera et al. 1985)
 * @returns dimensionless, about 0 for white; not finite where the denominator vanishes (very dark and very yellow)
 * Source: Maskan 2001, J. Food Eng. 48, 169; Pathare et al. 2013 review it.
 */
export function browningIndex(lab: Lab, divisor: 0.17 | 0.172 = 0.17): number {
  const [l, a, b] = lab;
  const x = (a + 1.75 * l) / (5.645 * l + a - 3.012 * b);
  return (100 * (x - 0.31)) / divisor;
}
