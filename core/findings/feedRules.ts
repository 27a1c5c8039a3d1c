/** Findings about the feed: hopper, feed opening, and what the screw takes in. */

import { gapOverGrain, grainsPerTurn } from '../feed/grainFit.ts';
import { hopperState } from '../feed/hopper.ts';
import { perfectBite } from '../feed/throat.ts';
import { formatNumber, formatQuantity } from '../units.ts';
import { type FindingContext, type FindingRule, found } from './context.ts';
import { hopperRules } from './hopperRules.ts';
import { lengthText as mm } from './words.ts';

/** Granules per turn below which output pulses: their number would scatter by one in seven (own estimate). */
const fewGrains = 50;

const flow = (value: number) => formatQuantity(value, 'g/min', 3);

/** What a screw that filled every turn would take in, g/min in words. */
function biteText({ machine, driven, design }: FindingContext): string {
  const { feed } = machine;
  if (!feed) return '';
  const { barrelRadius, lead } = feed.plug;
  const perTurn = perfectBite(2 * barrelRadius, feed.depth, lead) * design.material.bulkDensity;
  return ` Filled to the full at every turn it would take in ${formatQuantity(perTurn * driven.point.screwSpeed, 'g/min', 3)}.`;
}

/** What to change where the feed holds the output down. */
function moreFeed({ design, driven, prediction }: FindingContext): string {
  const { feed } = driven.point;
  if (prediction.limit === 'starved')
    return 'Right where a feeder meters on purpose; else raise its rate or slow the screw.';
  if (feed.intake > feed.massFlow) {
    return hopperState(design).bottleneck === 'outlet'
      ? 'Widen the hopper’s outlet: it lets out less than the screw takes in.'
      : 'Widen the feed opening: it lets the hopper through slower than the screw takes in.';
  }
  return 'Deepen the feed, roughen or groove the barrel there, polish the root, or make the metering shallower.';
}

/** Rules of the feed. */
export const feedRules: readonly FindingRule[] = [
  ...hopperRules,
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
    code: 'opening-small',
    about: 'feed opening against grain size',
    check: ({ design }) => {
      const { width, length, start } = design.barrel.feedOpening;
      const { risk, ratio, wanted } = hopperState(design).openingArch;
      if (risk === 'low' || risk === 'blocked') return null;
      return found({
        severity: risk === 'high' ? 'warn' : 'note',
        where: 'feed opening',
        z: start,
        saw: `The opening is ${mm(Math.min(width, length))} across, ${formatNumber(ratio, 2)} large granules; ${formatNumber(wanted, 2)} are wanted.`,
        why: 'Granules arch over it. A slot wants three to five grain widths, a square opening six.',
        change: 'Widen it, lengthen it along the screw, or stir the granules above it.',
        value: ratio,
        limit: wanted,
        unit: 'granules',
      });
    },
  },
  {
    code: 'feed-uncertain',
    about: 'feed at the low end of the friction range against the output',
    check: ({ driven, machine, prediction }) => {
      const { massFlow, massFlowLow } = driven.point.feed;
      const plugLow = prediction.solids.low.freeFlow;
      const low = flow(massFlowLow);
      const words =
        plugLow < massFlowLow
          ? `a plug alone would carry ${plugLow > 0 ? `only ${flow(plugLow)}` : 'nothing'}, and granules tumbling loose, as in a trough, ${low}`
          : `only ${low}`;
      const { output, limit } = prediction;
      if (!output.flows || limit === 'feed' || limit === 'starved' || massFlowLow >= output.massFlow) return null;
      return found({
        severity: massFlow < 1.5 * output.massFlow ? 'warn' : 'note',
        where: 'channel under the feed opening',
        z: machine.feed ? machine.stations.z[machine.feed.station] : null,
        saw: `The feed carries ${flow(massFlow)}, but at the low end of the friction range ${words}; the output is ${flow(output.massFlow)}.`,
        why: 'When friction falls that far, with wear, heat or a new batch, the channel runs empty for a while and the output surges.',
        change: 'Polish the root, roughen the barrel under the opening, keep the throat cold, or measure the friction.',
        value: massFlowLow,
        limit: output.massFlow,
        unit: 'kg/s',
      });
    },
  },
  {
    code: 'feed-pulses',
    about: 'granules in one turn of the channel',
    check: ({ design, machine }) => {
      const { feed, stations } = machine;
      if (!feed) return null;
      const grains = grainsPerTurn(design, feed);
      if (grains >= fewGrains) return null;
      return found({
        severity: 'note',
        where: 'channel under the feed opening',
        z: stations.z[feed.station],
        saw: `A full turn of the channel holds about ${formatNumber(grains, 2)} granules.`,
        why: 'With so few the intake differs from turn to turn, and the output pulses unless melt in stock evens it out.',
        change: 'Use smaller granules, or a deeper or longer turn under the opening.',
        value: grains,
        limit: fewGrains,
        unit: 'granules',
      });
    },
  },
  {
    code: 'runs-starved',
    about: 'the feeder gives less than the screw could pump',
    check: (context) => {
      const { limit, output, capacities } = context.prediction;
      if ((limit !== 'starved' && limit !== 'feed') || !output.flows) return null;
      const pumping = capacities.find(({ kind }) => kind === 'pumping')?.volumeFlow ?? 0;
      return found({
        severity: 'note',
        where: 'whole screw',
        saw: `The screw could pump ${formatQuantity(pumping, 'mm³/s', 3)} but gets ${formatQuantity(output.volumeFlow, 'mm³/s', 3)}.${limit === 'feed' ? biteText(context) : ''}`,
        why: 'Part of the channel runs partly filled; output follows the feed, not the screw’s pressure.',
        change: moreFeed(context),
        value: output.volumeFlow,
        limit: pumping,
        unit: 'm³/s',
      });
    },
  },
];
