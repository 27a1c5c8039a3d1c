/** Smooth curve through points that does not overshoot them. */

import { intervalOf } from '../math/interpolate.ts';

/** Weighted harmonic mean of two neighbouring slopes, 0 at a turning point (Fritsch and Butland 1984, eq. 5). */
function innerSlope(leftStep: number, rightStep: number, left: number, right: number): number {
  if (left * right <= 0) return 0;
  const toLeft = 2 * rightStep + leftStep;
  const toRight = rightStep + 2 * leftStep;
  return (toLeft + toRight) / (toLeft / left + toRight / right);
}

/** Three-point end slope, kept within the shape of the first interval (as in PCHIP, Moler 2004, section 3.4). */
function endSlope(step: number, nextStep: number, secant: number, nextSecant: number): number {
  const slope = ((2 * step + nextStep) * secant - step * nextSecant) / (step + nextStep);
  if (slope * secant <= 0) return 0;
  return secant * nextSecant <= 0 && Math.abs(slope) > 3 * Math.abs(secant) ? 3 * secant : slope;
}

function slopesOf(xs: readonly number[], ys: readonly number[]): number[] {
  const last = xs.length - 1;
  const step = (i: number) => xs[i + 1] - xs[i];
  const secant = (i: number) => (ys[i + 1] - ys[i]) / step(i);
  if (last === 1) return [secant(0), secant(0)];
  return xs.map((_, i) => {
    if (i === 0) return endSlope(step(0), step(1), secant(0), secant(1));
    if (i === last) return endSlope(step(last - 1), step(last - 2), secant(last - 1), secant(last - 2));
    return innerSlope(step(i - 1), step(i), secant(i - 1), secant(i));
  });
}

/**
 * Monotone cubic interpolation: rises, falls or stays between two points as they do; end values are held outside.
 * @param xs strictly rising, at least one
 * @param ys same length
 * @returns function of x, unit of ys
 * Source: Fritsch and Butland 1984, SIAM J. Sci. Stat. Comput. 5, 300; Hermite cubic, second order or better.
 */
export function monotoneCurve(xs: readonly number[], ys: readonly number[]): (x: number) => number {
  const last = xs.length - 1;
  if (last === 0) return () => ys[0];
  const slopes = slopesOf(xs, ys);
  return (x) => {
    if (x <= xs[0]) return ys[0];
    if (x >= xs[last]) return ys[last];
    const i = intervalOf(xs, x);
    const step = xs[i + 1] - xs[i];
    const s = (x - xs[i]) / step;
    const blend = s * s * (3 - 2 * s);
    const bend = s * (1 - s) * (slopes[i] * (1 - s) - slopes[i + 1] * s);
    return ys[i] + (ys[i + 1] - ys[i]) * blend + step * bend;
  };
}
