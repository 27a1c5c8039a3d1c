/** Two first-order steps in series, solved exactly over a stretch of constant temperature. */

/** Masses of the reacting solids, per mass of the fresh solid. */
export interface SeriesState {
  /** first solid */
  readonly a: number;
  /** intermediate solid */
  readonly b: number;
  /** final solid */
  readonly c: number;
}

/** Rates (1/s) and solid yields (0 to 1) of both steps. */
export interface SeriesRates {
  readonly first: number;
  readonly second: number;
  readonly firstYield: number;
  readonly secondYield: number;
}

/** (exp(-k1 t) - exp(-k2 t)) / (k2 - k1), s; symmetric in both, well-behaved where they meet or differ widely. */
function growthTime(first: number, second: number, duration: number): number {
  const gap = Math.abs(second - first) * duration;
  const slower = Math.exp(-Math.min(first, second) * duration);
  return slower * duration * (gap === 0 ? 1 : -Math.expm1(-gap) / gap);
}

/**
 * State after a stretch at constant rates: A to B (first, firstYield), B to C (second, secondYield), volatiles lost.
 * @param state masses before, per fresh mass
 * @param rates 1/s and yields
 * @param duration s, >= 0
 * @returns masses after, per fresh mass
 * Source: consecutive first-order reactions (Bateman 1910) with solid yields (Di Blasi and Lanzetta 1997).
 */
export function stepSeries(state: SeriesState, rates: SeriesRates, duration: number): SeriesState {
  const a = state.a * Math.exp(-rates.first * duration);
  const made = rates.firstYield * rates.first * state.a * growthTime(rates.first, rates.second, duration);
  const b = state.b * Math.exp(-rates.second * duration) + made;
  const intermediateUsed = rates.firstYield * (state.a - a) + state.b - b;
  return { a, b, c: state.c + rates.secondYield * intermediateUsed };
}
