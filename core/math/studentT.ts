/** Student's t, for limits from few measurements. */

/**
 * Probability that |t| stays below a value.
 * @param angle atan(t / sqrt(freedom)), 0 to pi/2
 * @param freedom whole number of degrees of freedom, >= 1
 * Source: Abramowitz and Stegun 1964, 26.7.3 and 26.7.4, finite sums.
 */
function within(angle: number, freedom: number): number {
  const cosine = Math.cos(angle);
  const odd = freedom % 2 === 1;
  let term = odd ? cosine : 1;
  let sum = freedom > 1 ? term : 0;
  for (let k = odd ? 3 : 2; k <= freedom - 2; k += 2) {
    term *= ((k - 1) / k) * cosine * cosine;
    sum += term;
  }
  return odd ? (2 / Math.PI) * (angle + Math.sin(angle) * sum) : Math.sin(angle) * sum;
}

/** Above this many degrees of freedom the limit changes by less than 0.1 % and the sums would only cost time. */
const mostFreedom = 2000;

/**
 * Two-sided limit of Student's t: |t| stays below it with the given probability.
 * @param probability 0 to below 1, e.g. 0.95
 * @param freedom degrees of freedom, >= 1, rounded down
 * @returns t, >= 0; Infinity where freedom is below 1
 */
export function studentLimit(probability: number, freedom: number): number {
  const count = Math.min(mostFreedom, Math.floor(freedom));
  if (!(count >= 1)) return Number.POSITIVE_INFINITY;
  let low = 0;
  let high = Math.PI / 2;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (within(middle, count) < probability) low = middle;
    else high = middle;
  }
  return Math.sqrt(count) * Math.tan((low + high) / 2);
}
