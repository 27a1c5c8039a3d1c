/** Sorting what is sorted in pieces: many times quicker than a sort that knows nothing, over some ten thousand values. */

/**
 * Places of values in rising order.
 * @param values in runs of `run`, each of which never falls; the last may be shorter
 * @param run length of a run, >= 1
 * @returns as many places as values; of equal values the earlier comes first
 */
export function orderOfRuns(values: Float64Array, run: number): Uint32Array<ArrayBuffer> {
  const count = values.length;
  let order = new Uint32Array(count);
  for (let i = 0; i < count; i++) order[i] = i;
  let other = new Uint32Array(count);
  for (let width = run; width < count; width *= 2) {
    for (let from = 0; from < count; from += 2 * width) {
      const middle = Math.min(from + width, count);
      mergeInto(other, order, values, from, middle, Math.min(from + 2 * width, count));
    }
    [order, other] = [other, order];
  }
  return order;
}

/** Two neighbouring runs of places, from to middle and middle to end, become one. */
function mergeInto(
  merged: Uint32Array,
  order: Uint32Array,
  values: Float64Array,
  from: number,
  middle: number,
  end: number,
): void {
  let a = from;
  let b = middle;
  for (let at = from; at < end; at++) {
    const first = b >= end || (a < middle && values[order[a]] <= values[order[b]]);
    merged[at] = first ? order[a++] : order[b++];
  }
}

/** Values in another order. */
export function reordered(values: Float64Array, order: Uint32Array): Float64Array {
  const result = new Float64Array(values.length);
  for (let i = 0; i < order.length; i++) result[i] = values[order[i]];
  return result;
}
