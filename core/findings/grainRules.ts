/** Findings about granules on their way to where they melt. */

import type { Design } from '../design/types.ts';
import { fullTorque } from '../drive/motor.ts';
import { shearShareOfYield, torsionStress } from '../drive/strength.ts';
import { blockedPassages } from '../feed/grainFit.ts';
import { formatQuantity } from '../units.ts';
import { type FindingContext, type FindingRule, found } from './context.ts';
import { lengthText as mm } from './words.ts';

/** Depth over the 90 % grain: below the first a grain does not enter, below the second it enters badly; common practice. */
const depthOverGrain = { least: 1, wanted: 1.3 } as const;

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

/** First station past the feed opening and before the melt where a granule is larger than the channel is deep. */
function shallowBeforeMelt({ design, driven, machine }: FindingContext): { at: number; soft: boolean } | null {
  const { stations } = machine;
  const { start, softensAt } = driven.point.state.melt;
  const { feedOpening } = design.barrel;
  // granules that do not enter at all have their own finding
  if (driven.point.limits.grainFit === 0) return null;
  for (let i = 0; i <= Math.min(start.reach, stations.count - 1); i++) {
    if (stations.z[i] <= feedOpening.start + feedOpening.length) continue;
    if (stations.depth[i] < design.material.grain.d90) {
      return { at: i, soft: softensAt !== null && stations.z[i] >= softensAt };
    }
  }
  return null;
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
        z: stations.z[shallow.at],
        saw: `At ${mm(stations.z[shallow.at])} the channel is ${mm(stations.depth[shallow.at])} deep and one granule in ten larger than ${mm(grain)}; they are molten only at ${mm(front)}.`,
        why: shallow.soft
          ? 'Softened granules are squeezed and sheared there; torque swings, and the flow may stop.'
          : 'Hard granules jam between root and barrel; the screw stalls or breaks.',
        change: 'Keep the depth above the granules until they melt, move the heat upstream, or use smaller granules.',
        value: stations.depth[shallow.at],
        limit: grain,
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
