/** Order statistics of small samples. */

const byValue = (p: number, q: number): number => p - q;

/** A rising copy without what is not finite. */
export const sortedFinite = (values: ArrayLike<number>): number[] =>
  Array.from(values).filter(Number.isFinite).sort(byValue);

/**
 * Quantile by linear interpolation between order statistics (definition 7 of Hyndman and Fan 1996).
 * @param sorted rising values, any unit
 * @param share 0 to 1
 * @returns same unit; NaN of an empty list
 */
export function quantile(sorted: readonly number[], share: number): number {
  if (sorted.length === 0) return Number.NaN;
  const place = Math.min(1, Math.max(0, share)) * (sorted.length - 1);
  const below = Math.floor(place);
  const above = Math.min(below + 1, sorted.length - 1);
  return sorted[below] + (sorted[above] - sorted[below]) * (place - below);
}

/** Median of the finite values; NaN where there is none. */
export const median = (values: ArrayLike<number>): number => quantile(sortedFinite(values), 0.5);

/** Median distance from the median to standard deviation of a normal distribution, 1 / Phi^-1(0.75). */
const normalScale = 1.4826022185056018;

/**
 * Standard deviation as told by the median distance from a centre, which half the values may falsify.
 * @param centre the median where absent
 * @returns same unit, >= 0; NaN of an empty list. Source: Hampel 1974.
 */
export function medianDeviation(values: ArrayLike<number>, centre = median(values)): number {
  return normalScale * median(Array.from(values, (value) => Math.abs(value - centre)));
}

/**
 * Ranks from 1 to n; equal values share the mean of their ranks.
 * @param values finite
 */
export function ranksOf(values: ArrayLike<number>): Float64Array {
  const order = Array.from(values, (_, i) => i).sort((p, q) => values[p] - values[q]);
  const ranks = new Float64Array(values.length);
  for (let first = 0; first < order.length; ) {
    let next = first + 1;
    while (next < order.length && values[order[next]] === values[order[first]]) next++;
    for (let i = first; i < next; i++) ranks[order[i]] = (first + 1 + next) / 2;
    first = next;
  }
  return ranks;
}
