/** A residence-time distribution as a list of times with flux shares. */

/** Times and the share of the outflow that took each; shares add up to 1, times rise. */
export interface TimeAtoms {
  /** s */
  readonly time: Float64Array;
  readonly share: Float64Array;
  /** shortest time, s: no atom's mean lies below it */
  readonly shortest: number;
}

/**
 * Shares at which a distribution is cut: even up to 0.9, then ever finer towards 1 so that the slow tail is resolved.
 * @param even, fine numbers of bins below and above 0.9
 * @returns rising from 0 to 1, 1e-6 before the end
 */
export function shareCuts(even: number, fine: number): number[] {
  const cuts = Array.from({ length: even }, (_, i) => (0.9 * i) / even);
  for (let i = 0; i <= fine; i++) cuts.push(1 - 0.1 * 10 ** ((-5 * i) / fine));
  return [...cuts, 1];
}

/** Mean time of atoms, s. */
export const meanTime = (atoms: TimeAtoms): number =>
  atoms.time.reduce((sum, time, i) => sum + time * atoms.share[i], 0);
