/** A smooth way from 0 to 1. */

/**
 * 0 up to a value, 1 from another on, smooth between: 3t² - 2t³.
 * @param x, from, to in any one unit, from < to
 * Own choice wherever two models are blended; no physics.
 */
export function smoothRamp(x: number, from: number, to: number): number {
  const t = Math.min(1, Math.max(0, (x - from) / (to - from)));
  return t * t * (3 - 2 * t);
}
