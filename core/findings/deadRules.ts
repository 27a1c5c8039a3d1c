/** Findings about melt that lingers. */

import type { DeadSpot } from '../prediction/types.ts';
import { formatNumber, formatQuantity } from '../units.ts';
import { type FindingRule, found } from './context.ts';
import { lengthText } from './words.ts';

/** Spots with less than this share of all melt are listed but not worth a finding. */
const worthNaming = 2e-3;

/** Age over the mean from which melt counts as dead. */
const deadTimes = 3;

/** Bare bore between screw and nozzle, in bores, from which it is worth a finding; own choice. */
const bareBores = 1;

/** What becomes of the melt in a spot, in words. */
function fate({ dE00 }: DeadSpot, acceptable: number): string {
  if (dE00 === undefined || dE00 === null)
    return 'It comes out in streaks, and after a change of material long after the rest.';
  const colour = `At that age its colour is off by ΔE00 ${formatNumber(dE00, 2)}`;
  return dE00 > acceptable
    ? `${colour}, more than the ${formatNumber(acceptable, 2)} accepted; it comes out in streaks.`
    : `${colour}, within what is accepted; after a change of material it comes out long after the rest.`;
}

/** Rules of dead volume. */
export const deadRules: readonly FindingRule[] = [
  {
    code: 'screw-ends-early',
    about: 'the screw reaches to the nozzle',
    check: ({ design, prediction }) => {
      const { tipEnd, tipGap } = prediction.geometry;
      const { boreDiameter } = design.barrel;
      if (tipGap <= bareBores * boreDiameter) return null;
      return found({
        severity: 'warn',
        where: 'bore before the nozzle',
        z: tipEnd,
        saw: `The screw ends ${lengthText(tipGap)} before the bore narrows, ${formatNumber(tipGap / boreDiameter, 2)} bores.`,
        why: 'Melt fills the bare bore there; nothing wipes its wall, and it ages.',
        change: 'Lengthen the last section or shorten the barrel.',
        value: tipGap,
        limit: bareBores * boreDiameter,
        unit: 'm',
      });
    },
  },
  {
    code: 'dead-spot',
    about: 'melt that stays much longer than the mean',
    check: ({ design, prediction }) => {
      const { dead, residence } = prediction;
      const volume = residence.parts.reduce((sum, part) => sum + part.volume, 0);
      const spots = dead.spots.filter((spot) => spot.volume > worthNaming * volume);
      const [worst, ...others] = spots;
      if (!worst) return null;
      const { acceptableDeltaE } = design.process;
      const stains = spots.some(({ dE00 }) => (dE00 ?? 0) > acceptableDeltaE);
      const rest = others.reduce((sum, spot) => sum + spot.volume, 0);
      const more = others.length > 0 ? ` Further places hold ${formatQuantity(rest, 'mm³', 2)}.` : '';
      return found({
        severity: stains ? 'warn' : 'note',
        where: `${worst.part}: ${worst.where}`,
        z: worst.z,
        saw: `${formatQuantity(worst.volume, 'mm³', 2)} of melt is ${formatQuantity(worst.meanAge, 's', 2)} old on average, ${formatNumber(worst.meanAge / residence.mean, 2)} times the mean.${more}`,
        why: fate(worst, acceptableDeltaE),
        change: worst.remedy,
        value: worst.meanAge / residence.mean,
        limit: deadTimes,
        unit: '',
      });
    },
  },
];
