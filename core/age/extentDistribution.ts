/** Distribution of a law's extent in the outflow of parts that melt passes one after the other. */

import { interpolateLinear } from '../math/interpolate.ts';
import { orderOfRuns, reordered } from '../math/orderOfRuns.ts';
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
    const next = new Float64Array(shares.length * count);
    const aged: AgingState[] = [];
    for (const [i, state] of states.entries()) {
      for (let j = 0; j < count; j++) {
        next[aged.length] = shares[i] * atoms.share[j];
        aged.push(age(state, atoms.time[j]));
      }
    }
    [states, shares] = [aged, next];
    quickest = age(quickest, atoms.shortest);
  }
  const extents = new Float64Array(states.length);
  for (let k = 0; k < extents.length; k++) extents[k] = run.extentOf(states[k]);
  // of one age before the last part, extents rise with the age in it
  const order = orderOfRuns(extents, parts.at(-1)?.atoms.time.length ?? 1);
  return distributionOf(reordered(extents, order), reordered(shares, order), run.extentOf(quickest));
}

/** @param extents rising; @param shares of them */
function distributionOf(extents: Float64Array, shares: Float64Array, least: number): ExtentDistribution {
  const count = extents.length;
  const xs = new Float64Array(count + 2);
  const lower = new Float64Array(count + 2);
  xs[0] = least;
  let left = 0;
  let mean = 0;
  for (let i = 0; i < count; i++) {
    const extent = extents[i];
    const share = shares[i];
    // each stands for a bin round its mean: half of its share lies below
    xs[i + 1] = Math.max(extent, least);
    lower[i + 1] = left + share / 2;
    left += share;
    mean += extent * share;
  }
  xs[count + 1] = xs[count];
  lower[count + 1] = 1;
  return { ...joined(extents, shares), least, mean, at: (share) => interpolateLinear(lower, xs, share) };
}

/** Joins neighbours until few are left; share and mean extent are kept. */
function joined(extents: Float64Array, shares: Float64Array): Pick<ExtentDistribution, 'extent' | 'share'> {
  const count = extents.length;
  if (count <= mostKept) return { extent: extents, share: shares };
  const kept: number[] = [];
  const weights: number[] = [];
  let [left, sum, weight, cut] = [0, 0, 0, 1];
  for (let i = 0; i < count; i++) {
    left += shares[i];
    sum += shares[i] * extents[i];
    weight += shares[i];
    if (weight === 0 || (left < keptCuts[cut] && i + 1 < count)) continue;
    kept.push(sum / weight);
    weights.push(weight);
    while (cut + 1 < keptCuts.length && keptCuts[cut] <= left) cut++;
    [sum, weight] = [0, 0];
  }
  return { extent: Float64Array.from(kept), share: Float64Array.from(weights) };
}
