/**
 * Residence time of a shallow wide Newtonian channel, closed form.
 * Source: Pinto & Tadmor, Polym. Eng. Sci. 10 (1970) 279, formulas from memory, derived again from the time fractions of
 * a particle that moves forth at height xi and back at the paired height. Newtonian, isothermal, wide channel, no
 * leakage; independent of back pressure and helix angle.
 */

/** Paired depth (1 at the barrel) of an orbit whose upper branch runs at xi in [2/3, 1]; result in [0, 2/3]. */
export function pairedHeight(xi: number): number {
  return (1 - xi + Math.sqrt((1 - xi) * (1 + 3 * xi))) / 2;
}

/** Dwell over mean dwell of the orbit with upper height xi in [2/3, 1); 0.75 at 2/3, infinite at the barrel. */
export function dwellOfHeight(xi: number): number {
  const root = Math.sqrt(Math.max(0, 1 + 2 * xi - 3 * xi * xi));
  return (3 * xi - 1 + 3 * root) / (6 * xi * (1 - xi + root));
}

/** Share of the flow on orbits with upper height up to xi in [2/3, 1]; 0 at 2/3, 1 at the barrel. */
export function shareOfHeight(xi: number): number {
  const root = Math.sqrt(Math.max(0, 1 + 2 * xi - 3 * xi * xi));
  return (3 * xi * xi - 1 + (xi - 1) * root) / 2;
}

/** Dwell over mean by which a share of the flow, 0 to below 1, has left. */
export function pintoTadmorTime(share: number): number {
  return dwellOfHeight(heightWhere((xi) => shareOfHeight(xi) > share));
}

/** Volume share of orbits with a dwell above a multiple of the mean: all between the paired heights is younger. */
export function pintoTadmorOlder(dwell: number): number {
  if (dwell <= 0.75) return 1;
  const xi = heightWhere((height) => dwellOfHeight(height) > dwell);
  return 1 - (xi - pairedHeight(xi));
}

/** First height at which a condition that stays true turns true. */
function heightWhere(condition: (xi: number) => boolean): number {
  let low = 2 / 3;
  let high = 1;
  for (let pass = 0; pass < 60; pass++) {
    const middle = (low + high) / 2;
    if (condition(middle)) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}
