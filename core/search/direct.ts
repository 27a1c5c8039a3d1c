/** Dividing rectangles (DIRECT) in batches: the points of an iteration are asked for before any is evaluated. */

import direct from 'ml-direct';

/** The method's state after whole iterations; opaque, plain data. */
type State = ReturnType<typeof direct>['finalState'];

/** Value that stands for a point not evaluated yet; what an iteration asks for does not depend on it. */
const placeholder = 0;

/** So small that it orders nothing but points of equal value, of which the method would otherwise divide all at once. */
const tie = 1e-9;

/** One iteration with an objective; the state is copied, because the method changes it. */
function iterate(state: State | null, size: number, objective: (at: readonly number[]) => number): State {
  const low = new Array<number>(size).fill(0);
  const high = new Array<number>(size).fill(1);
  const options = { iterations: 1, epsilon: 1e-3, ...(state === null ? {} : { initialState: copied(state) }) };
  return direct((at) => objective(Array.from(at)), low, high, options).finalState;
}

/** A deep copy of the lists and numbers of a state. */
function copied<T>(node: T): T {
  if (node instanceof Float64Array) return node.slice() as T;
  if (Array.isArray(node)) return node.map(copied) as T;
  if (typeof node !== 'object' || node === null) return node;
  return Object.fromEntries(Object.entries(node).map(([key, item]) => [key, copied(item)])) as T;
}

/**
 * Minimises over the unit cube without knowing the function: yields the points of each iteration, takes their values.
 * @param size dimensions, 1 or more
 * @yields points from 0 to 1 in every direction, in the order in which their values are wanted; never ends by itself
 * Source: Jones, Perttunen and Stuckman 1993, as in the package ml-direct. An iteration is run twice: once to hear what
 * it asks for, once with the values, so that they can be found in parallel and the result depends on nothing else.
 */
export function* directBatches(size: number): Generator<readonly (readonly number[])[], never, readonly number[]> {
  let state: State | null = null;
  let told = 0;
  for (;;) {
    const asked: (readonly number[])[] = [];
    iterate(state, size, (at) => {
      asked.push(at);
      return placeholder;
    });
    const values = yield asked;
    let next = 0;
    const before = told;
    state = iterate(state, size, () => (values[next] ?? 0) + tie * (before + next++));
    told += asked.length;
  }
}
