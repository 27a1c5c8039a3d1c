/** Findings about hopper, feed opening and grain. */

import { hopperState } from '../feed/hopper.ts';
import { formatNumber, formatQuantity } from '../units.ts';
import { type FindingRule, found } from './context.ts';
import { lengthText as mm } from './words.ts';

/** Gap between flights over the 90 % grain, common practice. */
const gapOverGrain = 2;

/** Rules of the feed. */
export const feedRules: readonly FindingRule[] = [
  {
    code: 'flight-gap-narrow',
    about: 'two granules fit between neighbouring flights',
    check: ({ design, machine }) => {
      const { feed, stations } = machine;
      const wanted = gapOverGrain * design.material.grain.d90;
      if (!feed || feed.gap >= wanted || feed.gap < design.material.grain.d90) return null;
      return found({
        severity: 'warn',
        where: 'flights under the feed opening',
        z: stations.z[feed.station],
        saw: `Between the flights there are ${mm(feed.gap)}, less than two large granules (${mm(wanted)}).`,
        why: 'Granules bridge from flight to flight and the channel fills badly.',
        change: 'Use a longer lead, fewer starts or a narrower flight in the feed, or smaller granules.',
        value: feed.gap,
        limit: wanted,
        unit: 'm',
      });
    },
  },
  {
    code: 'hopper-arching',
    about: 'outlet against grain size',
    check: ({ design }) => {
      const { outletRatio, outletRatioWanted } = hopperState(design);
      if (outletRatio >= outletRatioWanted) return null;
      return found({
        severity: outletRatio < outletRatioWanted / 2 ? 'warn' : 'note',
        where: 'hopper outlet',
        z: design.barrel.feedOpening.start,
        saw: `The outlet is ${formatNumber(outletRatio, 2)} large granules wide; ${outletRatioWanted} are wanted.`,
        why: 'Granules form arches over a narrow outlet; the flow stops without warning. No width excludes it altogether.',
        change: 'Widen the outlet, lengthen the opening along the screw, or stir or shake the hopper.',
        value: outletRatio,
        limit: outletRatioWanted,
        unit: 'granules',
      });
    },
  },
  {
    code: 'opening-small',
    about: 'feed opening against grain size',
    check: ({ design }) => {
      const { width, length, start } = design.barrel.feedOpening;
      const across = Math.min(width, length);
      const wanted = 3 * design.material.grain.d90;
      if (across >= wanted || across < design.material.grain.d90) return null;
      return found({
        severity: 'warn',
        where: 'feed opening',
        z: start,
        saw: `The opening is ${mm(across)} across, less than three large granules (${mm(wanted)}).`,
        why: 'A slot wants three to five grain widths before granules fall through it freely.',
        change: 'Widen or lengthen the opening.',
        value: across,
        limit: wanted,
        unit: 'm',
      });
    },
  },
  {
    code: 'hopper-slow',
    about: 'gravity discharge of the outlet against the output',
    check: ({ design, driven, prediction }) => {
      const { discharge } = hopperState(design);
      const { feed } = driven.point;
      // where the outlet holds the output down, the screw's own intake is what it is measured by
      const wanted =
        feed.intake > feed.massFlow && prediction.limit === 'feed' ? feed.intake : prediction.output.massFlow;
      if (discharge >= 2 * wanted) return null;
      return found({
        severity: 'warn',
        where: 'hopper outlet',
        z: design.barrel.feedOpening.start,
        saw: `By gravity the outlet lets out ${formatQuantity(discharge, 'g/min', 3)}; the screw ${wanted > discharge ? 'would take' : 'takes'} ${formatQuantity(wanted, 'g/min', 3)}.`,
        why: 'The screw runs starved in bursts.',
        change: 'Widen the outlet or shake the hopper.',
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
      const limit = design.hopper.agitation === 'vibration' ? 0.5 : 1;
      if (gapRatio < limit) return null;
      return found({
        severity: 'note',
        where: 'hopper joints',
        saw: `A gap of ${mm(design.hopper.gap)} is open; the finest tenth of the granules is below ${mm(design.material.grain.d10)}.`,
        why: 'Fine granules and dust trickle out onto whatever lies below, hot parts included.',
        change: 'Close the gap to half the finest grain, or seal it.',
        value: design.hopper.gap,
        limit: limit * design.material.grain.d10,
        unit: 'm',
      });
    },
  },
  {
    code: 'runs-starved',
    about: 'the feeder gives less than the screw could pump',
    check: ({ driven, prediction }) =>
      (prediction.limit !== 'starved' && prediction.limit !== 'feed') || !prediction.output.flows
        ? null
        : found({
            severity: 'note',
            where: 'whole screw',
            saw: `The screw could pump ${formatQuantity(prediction.capacities.find((c) => c.kind === 'pumping')?.volumeFlow ?? 0, 'mm³/s', 3)} but gets ${formatQuantity(prediction.output.volumeFlow, 'mm³/s', 3)}.`,
            why: 'Part of the channel runs partly filled; output follows the feed, not the screw’s pressure.',
            change:
              prediction.limit === 'starved'
                ? 'Right where a feeder meters on purpose; else raise its rate or slow the screw.'
                : driven.point.feed.intake > driven.point.feed.massFlow
                  ? 'Widen the hopper’s outlet: it lets out less than the screw takes in.'
                  : 'Deepen the feed, roughen or groove the barrel there, polish the root, or make the metering shallower.',
          }),
  },
];
