/** Residence-time distribution of the outflow, cut into ages with flux shares. */

import { gaussLegendre } from '../math/gaussLegendre.ts';

/** Ages of what leaves: upper edges of bins and the share of the flux younger than each. */
export interface AgeDistribution {
  /** s, never decreasing, >= 0 */
  readonly time: Float64Array;
  /** 0 to 1, never decreasing */
  readonly cumulative: Float64Array;
}

/** One age and the share of the outflow that has it. */
export interface AgeShare {
  /** s */
  readonly age: number;
  /** of the volume flux; all add up to 1 */
  readonly share: number;
}

const rule = gaussLegendre(2);
const roundingOfShares = 1e-9;

/** Why a distribution cannot be used, or null. */
export function ageProblem({ time, cumulative }: AgeDistribution): string | null {
  if (time.length === 0 || time.length !== cumulative.length) return 'no residence times are known';
  const rising = (values: Float64Array) =>
    values.every((v, i) => Number.isFinite(v) && v >= (i === 0 ? 0 : values[i - 1]));
  if (!rising(time) || !rising(cumulative)) return 'the residence times are not a rising distribution';
  const total = cumulative[cumulative.length - 1];
  return total > 1 + roundingOfShares || total <= 0
    ? 'the shares of the residence times do not fit into one whole'
    : null;
}

/** Share of the flux older than the last edge. */
export const unresolvedShare = ({ cumulative }: AgeDistribution): number =>
  Math.max(0, 1 - cumulative[cumulative.length - 1]);

/**
 * Ages and shares for averages over the outflow: two Gauss points per bin, the flux being even within a bin.
 * @param ages passes `ageProblem`; the first bin begins at 0, plug flow is a bin of no width (the same edge twice)
 * @returns shares adding up to 1; what is older than the last edge counts at that edge, a lower bound of its age
 */
export function ageShares(ages: AgeDistribution): AgeShare[] {
  const shares: AgeShare[] = [];
  ages.time.forEach((upper, i) => {
    const lower = i === 0 ? 0 : ages.time[i - 1];
    const share = ages.cumulative[i] - (i === 0 ? 0 : ages.cumulative[i - 1]);
    if (share <= 0) return;
    rule.nodes.forEach((node, k) => {
      shares.push({ age: lower + (upper - lower) * node, share: share * rule.weights[k] });
    });
  });
  const rest = unresolvedShare(ages);
  return rest > 0 ? [...shares, { age: ages.time[ages.time.length - 1], share: rest }] : shares;
}
