/** Distribution of a law's extent in the outflow of parts that melt passes one after the other. */

import { interpolateLinear } from '../math/interpolate.ts';
import { shareCuts, type TimeAtoms } from '../residence/atoms.ts';
import { type AgingState, type HeatSegment, lawRun } from './lawRun.ts';
import type { Corner, KineticLaw } from './laws.ts';

/** Part of the machine with its own ages and its own temperatures. */
export interface AgedPart {
  /** name for people */
  readonly part: string;
  /** ages of its outflow */
  readonly atoms: TimeAtoms;
  /** time and temperature of its mean passage, in order; melt of any age spends it in these proportions */
  readonly heat: readonly HeatSegment[];
}

/** Extents of the outflow, unit of the law. */
export interface ExtentDistribution {
  /** rising */
  readonly extent: Float64Array;
  /** shares of the flux, adding up to 1 */
  readonly share: Float64Array;
  /** extent of the quickest melt */
  readonly least: number;
  readonly mean: number;
  /** extent that a share (0 to 1) of the flux does not exceed */
  readonly at: (share: number) => number;
}

/** Most extents kept; more are joined to their means. */
const mostKept = 160;

/** Shares at which sorted extents are joined; the slow tail stays fine. */
const keptCuts = shareCuts(mostKept / 2, mostKept / 2);

/**
 * Extents of the outflow of parts in series.
 * @param parts in order of passing, at least one; ages of different parts are independent of each other (melt mixes
 * between them), so states are convolved: every age of one part with every age of the next
 * @param corner end of the doubt ranges
 * Of zero order the mean is exactly the sum of k times mean age over the parts. Source: segregated flow, Danckwerts 1958.
 */
export function extentDistribution(law: KineticLaw, parts: readonly AgedPart[], corner: Corner): ExtentDistribution {
  const run = lawRun(law, corner);
  let states: AgingState[] = [run.fresh];
  let shares: Float64Array = Float64Array.of(1);
  let quickest = run.fresh;
  for (const { atoms, heat } of parts) {
    const age = run.through(heat);
    const count = atoms.time.length;
    const before = shares;
    states = states.flatMap((state) => Array.from(atoms.time, (time) => age(state, time)));
    shares = Float64Array.from(states, (_, k) => before[Math.floor(k / count)] * atoms.share[k % count]);
    quickest = age(quickest, atoms.shortest);
  }
  const extents = Float64Array.from(states, run.extentOf);
  const order = Array.from(extents.keys()).sort((p, q) => extents[p] - extents[q]);
  const sorted = order.map((k) => ({ extent: extents[k], share: shares[k] }));
  return distributionOf(sorted, run.extentOf(quickest));
}

function distributionOf(sorted: readonly { extent: number; share: number }[], least: number): ExtentDistribution {
  const xs = new Float64Array(sorted.length + 2);
  const shares = new Float64Array(sorted.length + 2);
  xs[0] = least;
  let left = 0;
  let mean = 0;
  sorted.forEach(({ extent, share }, i) => {
    // each stands for a bin round its mean: half of its share lies below
    xs[i + 1] = Math.max(extent, least);
    shares[i + 1] = left + share / 2;
    left += share;
    mean += extent * share;
  });
  xs[sorted.length + 1] = xs[sorted.length];
  shares[sorted.length + 1] = 1;
  return { ...joined(sorted), least, mean, at: (share) => interpolateLinear(shares, xs, share) };
}

/** Joins neighbours until few are left; share and mean extent are kept. */
function joined(sorted: readonly { extent: number; share: number }[]): Pick<ExtentDistribution, 'extent' | 'share'> {
  if (sorted.length <= mostKept) {
    return {
      extent: Float64Array.from(sorted, ({ extent }) => extent),
      share: Float64Array.from(sorted, ({ share }) => share),
    };
  }
  const extent: number[] = [];
  const shares: number[] = [];
  let [left, sum, weight, cut] = [0, 0, 0, 1];
  sorted.forEach((own, i) => {
    left += own.share;
    sum += own.share * own.extent;
    weight += own.share;
    if (weight === 0 || (left < keptCuts[cut] && i + 1 < sorted.length)) return;
    extent.push(sum / weight);
    shares.push(weight);
    while (cut + 1 < keptCuts.length && keptCuts[cut] <= left) cut++;
    [sum, weight] = [0, 0];
  });
  return { extent: Float64Array.from(extent), share: Float64Array.from(shares) };
}
