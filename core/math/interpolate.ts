/** Piecewise linear interpolation with stated behaviour at the ends. */

/**
 * Value at x of a polyline through (xs, ys); outside, the end value is held.
 * @param xs abscissas, never decreasing, at least one
 * @param ys ordinates, same length
 * @returns same unit as ys; at a step (two equal xs) the value after the step
 */
export function interpolateLinear(xs: ArrayLike<number>, ys: ArrayLike<number>, x: number): number {
  const last = xs.length - 1;
  if (x <= xs[0]) return ys[0];
  if (x >= xs[last]) return ys[last];
  const i = intervalOf(xs, x);
  const span = xs[i + 1] - xs[i];
  return span > 0 ? ys[i] + ((ys[i + 1] - ys[i]) * (x - xs[i])) / span : ys[i + 1];
}

/**
 * Index i of the last interval with xs[i] <= x, for never decreasing xs.
 * @returns 0 to xs.length - 2
 */
export function intervalOf(xs: ArrayLike<number>, x: number): number {
  let low = 0;
  let high = xs.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (xs[middle] <= x) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * First x at which a rising polyline reaches a level.
 * @param ys never decreasing
 * @returns x by linear interpolation; the end's x where the level lies outside
 */
export function inverseRising(xs: ArrayLike<number>, ys: ArrayLike<number>, level: number): number {
  const last = ys.length - 1;
  if (level <= ys[0]) return xs[0];
  if (level >= ys[last]) return xs[last];
  const i = intervalOf(ys, level);
  const rise = ys[i + 1] - ys[i];
  return rise > 0 ? xs[i] + ((xs[i + 1] - xs[i]) * (level - ys[i])) / rise : xs[i];
}
