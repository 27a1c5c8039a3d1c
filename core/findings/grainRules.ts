/** Findings about granules on their way to where they melt. */

import type { Design } from '../design/types.ts';
import { fullTorque } from '../drive/motor.ts';
import { shearShareOfYield, torsionStress } from '../drive/strength.ts';
import { largestGrain } from '../feed/arching.ts';
import { blockedPassages, depthOverGrain, overFlight, type Pinch, pinchPoint } from '../feed/grainFit.ts';
import { formatQuantity } from '../units.ts';
import { type FindingContext, type FindingRule, found } from './context.ts';
import { lengthText as mm } from './words.ts';

/** Root over bore below which a root is called thin; common practice. */
const thinRoot = 0.35;

/** What a deeper feed would leave of the root, and so what to do instead where that is too little. */
function deeperAdvice(design: Design, depth: number): string {
  const { boreDiameter } = design.barrel;
  const root = boreDiameter - 2 * depth;
  const allowed = shearShareOfYield * design.screw.steel.yieldStress;
  const thin = root < thinRoot * boreDiameter || torsionStress(fullTorque(design.drive), root) > allowed;
  if (!thin) return `Make the feed depth at least ${mm(depth)}`;
  return root > 0
    ? `Take a larger bore or smaller granules: a feed depth of ${mm(depth)} in this bore would leave a root of only ${mm(root)}`
    : `Take a larger bore or smaller granules: a feed depth of ${mm(depth)} does not fit this bore of ${mm(boreDiameter)}`;
}

/** First place before the melt where granules are larger than the channel is deep, and whether they are soft there. */
function shallowBeforeMelt({ design, driven, machine }: FindingContext): (Pinch & { readonly soft: boolean }) | null {
  // granules that do not enter at all have their own finding
  if (driven.point.limits.grainFit === 0) return null;
  const { start, softensAt } = driven.point.state.melt;
  const pinch = pinchPoint(design, machine.stations, start.reach);
  return pinch && { ...pinch, soft: softensAt !== null && pinch.z >= softensAt };
}

/** First place before granules soften where the channel is deep enough for them, but only just. */
function tightBeforeSoft({ design, driven, machine }: FindingContext): Pinch | null {
  const { feed, stations } = machine;
  const { start, softensAt } = driven.point.state.melt;
  const grain = design.material.grain.d90;
  if (!feed || feed.depth < depthOverGrain.wanted * grain) return null;
  const tight = pinchPoint(design, stations, start.reach, depthOverGrain.wanted);
  const hard = tight && (softensAt === null || tight.z < softensAt);
  return hard && pinchPoint(design, stations, start.reach) === null ? tight : null;
}

/** Rules of grain against passages. */
export const grainRules: readonly FindingRule[] = [
  {
    code: 'grain-fit',
    about: 'granules fit the channel under the feed opening',
    check: ({ design, machine }) => {
      const grain = design.material.grain.d90;
      const { feed, stations } = machine;
      if (!feed || feed.depth >= depthOverGrain.wanted * grain) return null;
      const blocked = feed.depth < depthOverGrain.least * grain;
      return found({
        severity: blocked ? 'stop' : 'warn',
        where: 'channel under the feed opening',
        z: stations.z[feed.station],
        saw: `The channel is ${mm(feed.depth)} deep; one granule in ten is larger than ${mm(grain)}.`,
        why: blocked
          ? 'Granules do not enter: they ride on the flight, are sheared, or jam the screw.'
          : 'Granules enter one by one and jam now and then; output pulses.',
        change: `${deeperAdvice(design, depthOverGrain.wanted * grain)}. Granules below ${mm(feed.depth / depthOverGrain.wanted)} fit it as it is.`,
        value: feed.depth,
        limit: (blocked ? depthOverGrain.least : depthOverGrain.wanted) * grain,
        unit: 'm',
      });
    },
  },
  {
    code: 'long-granules',
    about: 'longest dimension of the granules against the channel’s depth',
    check: ({ design, machine }) => {
      const { feed, stations } = machine;
      const longest = largestGrain(design.material);
      if (!feed || feed.depth < depthOverGrain.least * design.material.grain.d90 || longest <= feed.depth) return null;
      return found({
        severity: 'note',
        where: 'channel under the feed opening',
        z: stations.z[feed.station],
        saw: `The channel is ${mm(feed.depth)} deep; the longest granules measure about ${mm(longest)}.`,
        why: 'Long granules must lie along the channel to pass. Those that stand up are cut or jam, which is not in the numbers.',
        change: 'Deepen the feed, or take shorter granules or flakes.',
        value: feed.depth,
        limit: longest,
        unit: 'm',
      });
    },
  },
  {
    code: 'grain-blocked',
    about: 'granules fit hopper outlet, feed opening and the gap between flights',
    check: ({ design, machine }) => {
      const [first, ...others] = blockedPassages(design, machine.feed).filter(({ id }) => id !== 'depth');
      if (!first) return null;
      const more = others.map(({ name, size }) => ` ${name} is ${mm(size)}.`).join('');
      return found({
        severity: 'stop',
        where: first.id === 'outlet' ? 'hopper outlet' : 'feed opening',
        z: design.barrel.feedOpening.start,
        saw: `${first.name} is ${mm(first.size)}; one granule in ten is larger than ${mm(design.material.grain.d90)}.${more}`,
        why: 'A granule that does not pass stops the rest: nothing is fed.',
        change: 'Widen it to at least three granules, or use smaller granules.',
        value: first.size,
        limit: design.material.grain.d90,
        unit: 'm',
      });
    },
  },
  {
    code: 'shallow-before-melt',
    about: 'the channel stays deeper than the granules until they melt',
    check: (context) => {
      const shallow = shallowBeforeMelt(context);
      if (!shallow) return null;
      const { stations } = context.machine;
      const { start } = context.driven.point.state.melt;
      const grain = context.design.material.grain.d90;
      const front = stations.z[Math.min(start.reach + 1, stations.count - 1)];
      return found({
        severity: shallow.soft ? 'warn' : 'stop',
        where: shallow.soft ? 'channel before the melt' : 'channel with hard granules',
        z: shallow.z,
        saw: `From ${mm(shallow.z)} on one granule in ten is larger than the channel is deep (${mm(grain)} or more); they are molten only at ${mm(front)}.`,
        why: shallow.soft
          ? 'Softened granules are squeezed and sheared there; torque swings, and the flow may stop.'
          : 'Hard granules jam between root and barrel; the screw stalls or breaks.',
        change: 'Keep the depth above the granules until they melt, move the heat upstream, or use smaller granules.',
        value: shallow.depth,
        limit: grain,
        unit: 'm',
      });
    },
  },
  {
    code: 'tight-before-melt',
    about: 'the channel stays well deeper than the granules until they soften',
    check: (context) => {
      const tight = tightBeforeSoft(context);
      if (!tight) return null;
      const wanted = depthOverGrain.wanted * context.design.material.grain.d90;
      return found({
        severity: 'note',
        where: 'channel with hard granules',
        z: tight.z,
        saw: `From ${mm(tight.z)} on the channel is less than ${mm(wanted)} deep, ${depthOverGrain.wanted} large granules, and they are still hard.`,
        why: 'A single layer of hard granules wedges now and then between root and barrel; torque swings.',
        change: 'Let the channel grow shallow later, move the heat upstream, or use smaller granules.',
        value: tight.depth,
        limit: wanted,
        unit: 'm',
      });
    },
  },
  {
    code: 'grains-over-flight',
    about: 'clearance of the flight against the finest granules',
    check: ({ design, machine }) => {
      const { ratio, limit } = overFlight(design);
      if (ratio < limit) return null;
      const { grain } = design.material;
      return found({
        severity: 'warn',
        where: 'flight clearance in the feed',
        z: machine.feed ? machine.stations.z[machine.feed.station] : design.barrel.feedOpening.start,
        saw: `The clearance is ${mm(design.screw.radialClearance)}; the finest tenth of the granules is below ${mm(grain.d10)}.`,
        why: 'Fines get over the flight, wedge there, score the barrel and brake the screw.',
        change: `Sieve the fines out, or make the clearance less than ${mm(limit * grain.d10)}.`,
        value: design.screw.radialClearance,
        limit: limit * grain.d10,
        unit: 'm',
      });
    },
  },
  {
    code: 'feed-soft',
    about: 'granules come in hard',
    check: ({ design }) => {
      const { feedTemperature } = design.process;
      const { softening } = design.material;
      if (feedTemperature < softening) return null;
      const celsius = (value: number) => formatQuantity(value, '°C', 3);
      return found({
        severity: 'stop',
        where: 'hopper',
        z: design.barrel.feedOpening.start,
        saw: `The granules come in at ${celsius(feedTemperature)}; they soften at ${celsius(softening)}.`,
        why: 'Soft granules stick together in the hopper and do not flow.',
        change: 'Feed them colder than they soften; dry them below that temperature.',
        value: feedTemperature,
        limit: softening,
        unit: 'K',
      });
    },
  },
];
