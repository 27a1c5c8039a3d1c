/** Student's t for 95 % bands. */

/** Two-sided 95 % points for 1 to 10 degrees of freedom (any statistics table). */
const smallSamples = [12.7062, 4.3027, 3.1824, 2.7764, 2.5706, 2.4469, 2.3646, 2.306, 2.2622, 2.2281];

/**
 * Half-width of a two-sided 95 % band in standard errors.
 * @param freedom degrees of freedom, >= 1
 * @returns t, from 12.7 for one degree down to 1.96; to 0.001 beyond 10 degrees
 * Source: tabulated; beyond 10 degrees the expansion about the normal distribution (Abramowitz and Stegun 26.7.5).
 */
export function student95(freedom: number): number {
  const tabulated = smallSamples[Math.round(freedom) - 1];
  if (tabulated !== undefined) return tabulated;
  const z = 1.959964;
  const first = (z ** 3 + z) / 4;
  const second = (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96;
  return z + first / freedom + second / freedom ** 2;
}
