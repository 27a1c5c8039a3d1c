/** Washing out an old colour after a purge or a change of material. */

import type { Basis } from '../prediction/types.ts';
import { knownShare, type LeavingCurve, timeToOldShare } from '../residence/washout.ts';
import { formatNumber, formatQuantity } from '../units.ts';
import type { Lab } from './cielab.ts';
import { deltaE2000 } from './deltaE2000.ts';
import { blendedLab, mixedLab } from './mixedLab.ts';

/** A purity or a colour that is reached. */
export interface ChangeMilestone {
  /** share of old melt left, 0 to 1; null where no share meets the aim */
  readonly oldShare: number | null;
  /** s after the change, and kg of melt that leave until then; null where beyond the known distribution */
  readonly time: number | null;
  readonly mass: number | null;
  /** why there is no time, or null */
  readonly reason: string | null;
}

/** Washing out over time. */
export interface ChangeOver {
  /** s after the change, share of old melt, dE00 against the new colour; same length */
  readonly time: Float64Array;
  readonly oldShare: Float64Array;
  readonly dE00: Float64Array;
  /** dE00 that is to be reached */
  readonly aim: number;
  readonly toColour: ChangeMilestone;
  readonly to99: ChangeMilestone;
  readonly to999: ChangeMilestone;
  /** share of the output up to which the distribution is resolved; the rest has an unknown, longer age */
  readonly knownShare: number;
  readonly basis: Basis;
}

/** Halvings that narrow down the share of a colour. */
const halvings = 50;
/** Shares tried upwards, a factor apart, for the first that shows. */
const triedFactor = 1.25;
const leastTried = 1e-9;

/** How far a share of old melt is off the new colour, dE00: the worse of streaks side by side and a pigment blend. */
export function changeDifference(share: number, labOld: Lab, labNew: Lab): number {
  if (share <= 0) return 0;
  return Math.max(
    deltaE2000(labNew, mixedLab(share, labOld, labNew)),
    deltaE2000(labNew, blendedLab(share, labOld, labNew)),
  );
}

/** Largest share of old melt below which every share keeps the aim; 1 where the pure old colour does. */
function shareOfAim(labOld: Lab, labNew: Lab, aim: number): number | null {
  if (!(aim > 0)) return null;
  const shows = (share: number) => changeDifference(share, labOld, labNew) > aim;
  let high = leastTried;
  while (high < 1 && !shows(high)) high = Math.min(1, high * triedFactor);
  if (!shows(high)) return 1;
  let low = high / triedFactor;
  for (let i = 0; i < halvings; i++) {
    const middle = (low + high) / 2;
    if (shows(middle)) high = middle;
    else low = middle;
  }
  return low;
}

function milestone(curve: LeavingCurve, massFlow: number, oldShare: number | null): ChangeMilestone {
  if (oldShare === null) return { oldShare, time: null, mass: null, reason: 'No mixture meets a difference of 0.' };
  const time = oldShare >= 1 ? 0 : timeToOldShare(curve, oldShare);
  if (time !== null) return { oldShare, time, mass: time * massFlow, reason: null };
  const known = formatNumber(1 - knownShare(curve), 2);
  return {
    ...{ oldShare, time, mass: null },
    reason:
      curve.time.length === 0
        ? 'Nothing flows, so nothing washes out.'
        : `Old melt has to fall to a share of ${formatNumber(oldShare, 2)}, but ages are known only to ${known}: it takes longer than ${formatQuantity(curve.time[curve.time.length - 1], 's', 2)}, how long is not known.`,
  };
}

const basisOf = (known: number): Basis => ({
  model: 'Share of old melt from the age distribution, in the new colour',
  assumptions: [
    'The change at the inlet is a step, flow and temperatures stay, and old and new melt flow alike.',
    'A stiffer or runnier new melt washes better or worse; what sticks to walls by wear or cracking is not seen.',
    'Opaque colours; the worse of old melt in fine streaks (linear XYZ) and blended down to its pigments (equal scattering).',
  ],
  source:
    'Danckwerts 1953 (washing out as 1 - F); Kubelka and Munk 1931, Duncan 1940 (blend, from memory); Sharma, Wu and Dalal 2005 (dE00)',
  range: 'Steady running; granulate left in hopper and feed comes on top.',
  doubt:
    known < 1
      ? `Ages are known for all but ${formatQuantity(1 - known, '%', 2)} of the output; that tail lasts longer than shown.`
      : null,
});

/**
 * Washing out of old melt by new.
 * @param residence age distribution of the whole machine as a curve, s; empty where nothing flows
 * @param massFlow kg/s of melt
 * @param labOld, labNew colours of old and new melt
 * @param aim dE00 against the new colour that is to be reached, > 0
 * @returns shares, times and masses; what lies beyond the known distribution is null with a reason
 */
export function changeOver(residence: LeavingCurve, massFlow: number, labOld: Lab, labNew: Lab, aim = 1): ChangeOver {
  const { time } = residence;
  const oldShare = residence.cumulative.map((left) => Math.max(0, 1 - left));
  const known = knownShare(residence);
  return {
    time,
    oldShare,
    dE00: oldShare.map((share) => changeDifference(share, labOld, labNew)),
    aim,
    toColour: milestone(residence, massFlow, shareOfAim(labOld, labNew, aim)),
    to99: milestone(residence, massFlow, 0.01),
    to999: milestone(residence, massFlow, 0.001),
    knownShare: known,
    basis: basisOf(known),
  };
}
