/** Findings about the hopper: arches, dead granules, sifting, trickling. */

import type { Design } from '../design/types.ts';
import { cohesiveArch } from '../feed/arching.ts';
import { flowability, hopperFlow, packing, packsWhenShaken, siftingRatio, sizeSpread } from '../feed/flowKind.ts';
import { hopperState, tightGapShare } from '../feed/hopper.ts';
import { formatNumber, formatQuantity } from '../units.ts';
import { type FindingRule, type Found, found } from './context.ts';
import { lengthText as mm } from './words.ts';

const degrees = (angle: number): string => formatQuantity(angle, '°', 2);

/** What the internal friction of a granulate was taken from, in words. */
const frictionFrom = {
  given: '',
  repose: ' The internal friction is taken from the angle of repose.',
  assumed: ' The internal friction is not known; 35° is assumed.',
} as const;

/** Share of the outlet that cohesion asks for below which nothing is expected to run; own choice, as the estimate is safe. */
const hopeless = 0.5;

/** Which number makes a granulate pack when shaken, and its limit. */
function packingNumber({ material }: Design): Pick<Found, 'value' | 'limit' | 'unit'> {
  const { grain, unconfinedStrength, angleOfRepose } = material;
  if (grain.d10 < packing.grain) return { value: grain.d10, limit: packing.grain, unit: 'm' };
  if ((unconfinedStrength ?? 0) > 0) return { value: unconfinedStrength, limit: 0, unit: 'Pa' };
  return { value: angleOfRepose, limit: packing.repose, unit: 'rad' };
}

/** Rules of the hopper. */
export const hopperRules: readonly FindingRule[] = [
  {
    code: 'hopper-arching',
    about: 'outlet against grain size',
    check: ({ design }) => {
      const { outletArch, discharge, bottleneck } = hopperState(design);
      const { risk, ratio, wanted } = outletArch;
      if (risk === 'low') return null;
      const shut = bottleneck === 'outlet' && discharge <= 0;
      const shaken = design.hopper.agitation === 'vibration';
      return found({
        severity: shut ? 'stop' : risk === 'some' ? 'note' : 'warn',
        where: 'hopper outlet',
        z: design.barrel.feedOpening.start,
        saw: `The outlet is ${formatNumber(ratio, 2)} large granules wide; ${formatNumber(wanted, 2)} are wanted.`,
        why: shaken
          ? 'Shaken, granules run through a narrow outlet in bursts, and arch as soon as the shaking stops.'
          : 'Granules form arches over a narrow outlet; the flow stops without warning. No width excludes it altogether.',
        change: shaken ? 'Widen the outlet.' : 'Widen the outlet, or stir or shake the hopper.',
        value: ratio,
        limit: wanted,
        unit: 'granules',
      });
    },
  },
  {
    code: 'hopper-cohesive-arch',
    about: 'outlet and feed opening against the granulate’s cohesion',
    check: ({ design }) => {
      const { outlet, opening } = cohesiveArch(design);
      const { length, width, start } = design.barrel.feedOpening;
      const across = Math.min(length, width);
      const narrow = design.hopper.outletDiameter / outlet <= across / opening;
      const [has, needs] = narrow ? [design.hopper.outletDiameter, outlet] : [across, opening];
      if (has >= needs) return null;
      return found({
        severity: has < hopeless * needs ? 'stop' : 'warn',
        where: narrow ? 'hopper outlet' : 'feed opening',
        z: start,
        saw: `The ${narrow ? 'outlet' : 'feed opening'} is ${mm(has)} across; with its cohesion the granulate can arch over up to ${mm(needs)}.`,
        why: 'Damp, tacky or powdery granulate carries itself over the outlet. The estimate is on the safe side; the output shown takes the granulate to flow, and is doubtful here.',
        change: 'Dry or sieve the granulate, widen the outlet, or stir the hopper down to the screw.',
        value: has,
        limit: needs,
        unit: 'm',
      });
    },
  },
  {
    code: 'hopper-funnel-flow',
    about: 'hopper wall steep enough for all granules to move',
    check: ({ design }) => {
      const { kind, limit, friction } = hopperFlow(design);
      if (kind === 'mass') return null;
      const steep = limit > 0;
      return found({
        severity: 'note',
        where: 'hopper wall',
        z: design.barrel.feedOpening.start,
        saw: `The wall leans ${degrees(design.hopper.wallHalfAngle)} from the vertical; granules slide along it up to ${degrees(limit)}.${frictionFrom[friction.from]}`,
        why: 'Granules run through a funnel in the middle; those at the wall stand next to the warm throat, take up heat and moisture, and come out late and discoloured.',
        change: steep
          ? 'Make the wall steeper or smoother, or run the hopper empty between refills.'
          : 'Take a smoother wall: at this friction no slope is steep enough; or stir the hopper.',
        value: design.hopper.wallHalfAngle,
        limit,
        unit: 'rad',
      });
    },
  },
  {
    code: 'hopper-slow',
    about: 'gravity discharge of outlet and opening against the output',
    check: ({ design, driven, prediction }) => {
      const { discharge, bottleneck } = hopperState(design);
      const { feed } = driven.point;
      // where the outlet holds the output down, the screw's own intake is what it is measured by
      const wanted =
        feed.intake > feed.massFlow && prediction.limit === 'feed' ? feed.intake : prediction.output.massFlow;
      if (discharge >= 2 * wanted) return null;
      return found({
        severity: discharge > 0 ? 'warn' : 'stop',
        where: bottleneck === 'outlet' ? 'hopper outlet' : 'feed opening',
        z: design.barrel.feedOpening.start,
        saw: `By gravity the ${bottleneck === 'outlet' ? 'outlet' : 'feed opening'} lets through ${formatQuantity(discharge, 'g/min', 3)}; the screw ${wanted > discharge ? 'would take' : 'takes'} ${formatQuantity(wanted, 'g/min', 3)}.`,
        why: discharge > 0 ? 'The screw runs starved in bursts.' : 'Granules do not fall through: nothing is fed.',
        change: bottleneck === 'outlet' ? 'Widen the outlet or shake the hopper.' : 'Widen the feed opening.',
        value: discharge,
        limit: 2 * wanted,
        unit: 'kg/s',
      });
    },
  },
  {
    code: 'granules-trickle',
    about: 'gaps of the hopper against the finest granules',
    check: ({ design }) => {
      const { gapRatio } = hopperState(design);
      const limit = tightGapShare(design.hopper.agitation);
      if (gapRatio < limit) return null;
      return found({
        severity: 'note',
        where: 'hopper joints',
        saw: `A gap of ${mm(design.hopper.gap)} is open; the finest tenth of the granules is below ${mm(design.material.grain.d10)}.`,
        why: 'Fine granules and dust trickle out onto whatever lies below, hot parts included; shaking keeps them coming.',
        change: 'Close the gap to half the finest grain, or seal it.',
        value: design.hopper.gap,
        limit: limit * design.material.grain.d10,
        unit: 'm',
      });
    },
  },
  {
    code: 'fines-sift',
    about: 'spread of grain sizes',
    check: ({ design }) => {
      const spread = sizeSpread(design);
      if (spread <= siftingRatio) return null;
      return found({
        severity: 'note',
        where: 'hopper',
        saw: `The largest granules are ${formatNumber(spread, 2)} times the finest; from ${formatNumber(siftingRatio, 3)} on, fines fall through between the large ones.`,
        why: 'Dust gathers at the bottom and arrives first: the first minutes surge, and later granules run coarser.',
        change: 'Sieve the dust out, or mix anew before each filling.',
        value: spread,
        limit: siftingRatio,
        unit: '',
      });
    },
  },
  {
    code: 'flows-badly',
    about: 'angle of repose',
    check: ({ design }) => {
      const { angleOfRepose, unconfinedStrength } = design.material;
      const band = flowability(angleOfRepose);
      if (angleOfRepose === null || (band !== 'cohesive' && band !== 'very cohesive')) return null;
      const unknown = unconfinedStrength === null;
      return found({
        severity: band === 'very cohesive' ? 'warn' : 'note',
        where: 'hopper',
        saw: `The angle of repose is ${degrees(angleOfRepose)}; above 45° a granulate counts as ${band}.${unknown ? ' Its strength is not known, so arching by cohesion is not reckoned.' : ''}`,
        why: 'It hangs in the hopper and feeds by fits and starts.',
        change:
          design.hopper.agitation === 'none' ? 'Stir the hopper, or dry and sieve the granulate.' : 'Dry and sieve it.',
        value: angleOfRepose,
        limit: Math.PI / 4,
        unit: 'rad',
      });
    },
  },
  {
    code: 'shaking-packs',
    about: 'shaking of granulate that packs',
    check: ({ design }) =>
      design.hopper.agitation !== 'vibration' || !packsWhenShaken(design)
        ? null
        : found({
            severity: 'note',
            where: 'hopper',
            saw: 'The hopper is shaken, and the granulate is fine, cohesive or runs badly.',
            why: 'Shaking packs such granulate while it stands, and the packed bed arches.',
            change: 'Shake only while granules run, or stir instead.',
            ...packingNumber(design),
          }),
  },
];
