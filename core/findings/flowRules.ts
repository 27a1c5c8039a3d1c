/** Findings about flow, pressure, residence and colour. */

import { extentAlong } from '../age/kinetics.ts';
import type { KineticLaw } from '../age/laws.ts';
import { guidelineClearance } from '../make/runningClearance.ts';
import { meltHeat } from '../prediction/colourStage.ts';
import { formatNumber, formatQuantity } from '../units.ts';
import { type FindingRule, found } from './context.ts';
import { wattsText } from './heaterRules.ts';
import { pressureText } from './words.ts';

/** Leak over output from which it is worth a word; own choice. */
const leakyShare = 0.2;

/** Ratio of slowest hundredth to mean residence that calls for a note; the wide channel alone gives 3.3. */
const wideSpread = 4;

/** Extent of a degradation law that calls for a warning; own choice, between what is seen and what is felt. */
const degradedShare = 0.05;

/** Blocked pressure from which a caution is due, Pa: small barrels and threads are rarely made for more. */
const blockedLimit = 20e6;

/** Rules of flow and residence. */
export const flowRules: readonly FindingRule[] = [
  {
    code: 'not-converged',
    about: 'iterations ended',
    check: ({ prediction }) =>
      prediction.converged
        ? null
        : found({
            severity: 'warn',
            where: 'calculation',
            saw: 'An iteration did not converge at the working point or on the output curve.',
            why: 'Flow and pressure may be off by more than stated.',
            change: 'Treat the numbers as rough; change speed or temperature a little and look again.',
          }),
  },
  {
    code: 'cannot-pump',
    about: 'the screw pushes something out',
    check: (context) => {
      const { design, driven, machine, prediction } = context;
      if (driven.point.limits.pumping > 0) return null;
      const { backPressure } = design.process;
      const { blockedPressure } = prediction.drive;
      const late = driven.point.state.melt.start.reach >= machine.lastFlight;
      const weak = late ? wattsText(context) : '';
      return found({
        severity: 'stop',
        where: 'screw and nozzle',
        z: prediction.geometry.sectionsLength,
        saw: late
          ? `The granules are not molten before the flights end, so no flight builds pressure in the melt.${weak}`
          : `The screw can build ${pressureText(blockedPressure)} in the melt at this speed; ${pressureText(backPressure)} stand against it outside the orifice.`,
        why: 'No melt moves through the nozzle: nothing comes out, whatever the other capacities are.',
        change: weak
          ? 'Install more watts there, or insulate it.'
          : late
            ? 'Move the heat upstream, lengthen the flighted part, or turn slower.'
            : 'Let more turns run in the melt, lower the back pressure, or open the nozzle.',
        value: blockedPressure,
        limit: backPressure,
        unit: 'Pa',
      });
    },
  },
  {
    code: 'no-compression',
    about: 'free volume shrinks from feed to end',
    check: ({ design, prediction }) => {
      // less than the granules themselves shrink, and air stays between them
      const needed = design.material.meltDensity / design.material.bulkDensity;
      const { compressionRatio } = prediction.geometry;
      if (compressionRatio >= needed) return null;
      return found({
        severity: compressionRatio < 1.02 ? 'warn' : 'note',
        where: 'whole screw',
        saw: `The volume per turn at the feed is ${formatNumber(compressionRatio, 3)} times that at the end; loose granules take up ${formatNumber(needed, 3)} times the volume of their melt.`,
        why: 'The channel does not press the air out; bubbles can travel to the nozzle.',
        change: 'Taper the root or shorten the lead towards the end, or feed starved so that air leaves backwards.',
        value: compressionRatio,
        limit: needed,
        unit: '',
      });
    },
  },
  {
    code: 'blocked-pressure',
    about: 'pressure with the nozzle blocked',
    check: ({ prediction }) => {
      const { blockedPressure, stallPressure } = prediction.drive;
      const most = stallPressure ?? blockedPressure;
      if (most < blockedLimit) return null;
      const stalls = stallPressure === null ? 'and the motor holds it' : 'before the motor stalls';
      return found({
        severity: 'warn',
        where: 'end of the screw',
        z: prediction.geometry.sectionsLength,
        saw: `With a blocked nozzle the screw can build ${pressureText(most)} ${stalls}.`,
        why: 'Threads, nozzle and barrel end see this pressure when the nozzle freezes or plugs.',
        change: 'Limit the torque, fit a relief path, and have pressure-bearing parts approved by a competent person.',
        value: most,
        limit: blockedLimit,
        unit: 'Pa',
      });
    },
  },
  {
    code: 'flight-leaks',
    about: 'melt that leaks back over the flight against the output',
    check: ({ design, prediction }) => {
      const { leakFlow, volumeFlow, flows } = prediction.output;
      const share = flows ? leakFlow / volumeFlow : 0;
      if (share < leakyShare) return null;
      const { radialClearance } = design.screw;
      const usual = guidelineClearance(design.barrel.boreDiameter);
      return found({
        severity: 'note',
        where: 'flight of the last section',
        z: prediction.geometry.sectionsLength,
        saw: `${formatQuantity(leakFlow, 'mm³/s', 3)} leak back over the flight, ${formatQuantity(share, '%', 2)} of the output, through ${formatQuantity(radialClearance, 'mm', 2)}.`,
        why: `A guideline of the trade is 0.0015 of the bore, ${formatQuantity(usual, 'mm', 2)} here; a new industrial screw has 0.001. Leaked melt is sheared again and stays longer.`,
        change:
          'Turn screw and bore closer, and mind that a screw that expands more than its barrel loses clearance when hot.',
        value: share,
        limit: leakyShare,
        unit: '',
      });
    },
  },
  {
    code: 'wide-residence',
    about: 'spread of residence',
    check: ({ prediction }) => {
      const { mean, t99 } = prediction.residence;
      if (!(mean > 0) || t99 < wideSpread * mean) return null;
      return found({
        severity: 'note',
        where: 'tip and nozzle',
        z: prediction.geometry.sectionsLength,
        saw: `One part in a hundred stays longer than ${formatQuantity(t99, 's', 3)}, ${formatNumber(t99 / mean, 2)} times the mean.`,
        why: 'Old melt streaks, and changing material takes long.',
        change: 'Make tip and nozzle volumes small and slender; lead the tip into a matching cone.',
        value: t99 / mean,
        limit: wideSpread,
        unit: '',
      });
    },
  },
  {
    code: 'degrades',
    about: 'extent of degradation in the slowest hundredth of the melt',
    check: ({ design, machine, driven, prediction }) => {
      const { residence } = prediction;
      if (!(residence.mean > 0)) return null;
      const slow = meltHeat(machine, driven.point.state, residence).map(({ duration, temperature }) => ({
        duration: (duration * residence.t99) / residence.mean,
        temperature,
      }));
      // laws of order zero and scissions count in units of their own and have no limit in general
      const worst = design.material.degradation
        .filter((law) => ('kind' in law ? law.kind !== 'scission' : law.order > 0))
        .map((law) => ({ law, extent: extentAlong(law, slow).extent }))
        .reduce<{ law: KineticLaw; extent: number } | null>((a, b) => (a && a.extent >= b.extent ? a : b), null);
      if (!worst || worst.extent < degradedShare) return null;
      return found({
        severity: 'warn',
        where: 'slowest melt',
        z: prediction.geometry.sectionsLength,
        saw: `In melt that stays ${formatQuantity(residence.t99, 's', 3)}, ${formatQuantity(worst.extent, '%', 2)} is used up (${worst.law.observed}).`,
        why: 'Degraded melt is weak, stains, and gives off gas.',
        change: 'Run colder or faster, or make the melt volume smaller.',
        value: worst.extent,
        limit: degradedShare,
        unit: '',
      });
    },
  },
  {
    code: 'colour-shift',
    about: 'colour difference against what is accepted',
    check: ({ design, prediction }) => {
      const { dE00Mean, dE00Worst } = prediction.colour;
      const limit = design.process.acceptableDeltaE;
      if (dE00Mean === null || dE00Worst === null || dE00Worst <= limit) return null;
      const all = dE00Mean > limit;
      return found({
        severity: all ? 'warn' : 'note',
        where: 'extrudate',
        saw: `Colour shifts by ΔE00 ${formatNumber(dE00Mean, 2)} on average, ${formatNumber(dE00Worst, 2)} in the worst streak; ${formatNumber(limit, 2)} is accepted.`,
        why: all ? 'The whole print turns.' : 'Streaks show in an otherwise good print.',
        change: 'Run colder or faster, make the melt volume smaller, and remove places where melt lingers.',
        value: all ? dE00Mean : dE00Worst,
        limit,
        unit: 'dE00',
      });
    },
  },
];
