/** Weights and scatter of a fit that outliers do not pull. */

import { medianDeviation } from '../doubt/statistics.ts';

/** Tuning constants for 95 % efficiency with normal scatter (Huber 1964; Beaton and Tukey 1974; Holland and Welsch 1977). */
const huberTurn = 1.345;
const tukeyEnd = 4.685;

/** Weight of a residual in units of the scatter: 1 inside, falling as 1/|u| outside. */
export const huberWeight = (u: number): number => Math.min(1, huberTurn / Math.max(Math.abs(u), 1e-12));

/** Weight of a residual in units of the scatter: falls smoothly to nothing. */
export const tukeyWeight = (u: number): number => (Math.abs(u) < tukeyEnd ? (1 - (u / tukeyEnd) ** 2) ** 2 : 0);

/** Slope of Tukey's influence u w(u). */
export const tukeySlope = (u: number): number => {
  const share = (u / tukeyEnd) ** 2;
  return share < 1 ? (1 - share) * (1 - 5 * share) : 0;
};

/** Slope of Huber's influence u w(u). */
export const huberSlope = (u: number): number => (Math.abs(u) < huberTurn ? 1 : 0);

/**
 * Whether figures may be rejected: only where the others are enough to tell what is wrong. With fewer, Huber's weights
 * stay, which no figure leaves altogether. Own rule.
 * @param count figures that the parameters move
 * @param fitted parameters
 */
export const mayReject = (count: number, fitted: number): boolean => count - fitted >= 3 && count >= 2 * fitted + 2;

/** Scatter below which a fit does not go, in units of the bench's own: few points may agree by luck. */
const leastScale = 0.2;
/** The same where nothing may be rejected, and for limits; own estimate: a bench seldom repeats better by much. */
export const surestScale = 0.7;

/**
 * Scatter of residuals about zero.
 * @param residuals in units of the bench's scatter
 * @param fitted number of parameters found from them
 * @param least smallest answer
 */
export function residualScale(residuals: ArrayLike<number>, fitted: number, least = leastScale): number {
  const count = residuals.length;
  const correction = count > fitted ? Math.sqrt(count / (count - fitted)) : 1;
  return Math.max(least, medianDeviation(residuals, 0) * correction);
}
