/** Dead spots of the screw channel: old melt in the root corners of each section. */

import { largestRootFillet } from '../flow/field/channelSection.ts';
import type { FlowState } from '../prediction/flowState.ts';
import type { Machine } from '../prediction/machine.ts';
import { formatQuantity } from '../units.ts';
import { type ChannelField, channelRequests } from './channelField.ts';
import { type NodeRequest, nodeAt, solveNodes } from './channelNode.ts';
import { type ChannelShape, type PlacedShape, placedShapes, shapesAround } from './channelShape.ts';
import { type ChannelTimes, firstOlder } from './channelTimes.ts';
import { binCount } from './dwellBins.ts';
import { type FieldCache, keyNumber } from './fieldCache.ts';
import { mixedMap } from './maps.ts';
import { type OldShares, oldShares } from './oldMelt.ts';
import type { FoundSpot } from './spotTypes.ts';

/** Fillet that is tried as a remedy: this share of the depth, as far as the width allows. */
const triedFillet = 0.5;

/** Old corner melt of one section, summed over its reaches. */
interface SectionSum {
  readonly section: number;
  readonly reaches: number[];
  volume: number;
  stagnant: number;
  ageVolume: number;
}

/** Shape of the reach's middle. */
function shapeOf({ stations }: Machine, shapes: readonly PlacedShape[], i: number): ChannelShape | null {
  const around = shapesAround(shapes, stations.section[i], (stations.z[i] + stations.z[i + 1]) / 2);
  return around[0]?.placed.shape ?? null;
}

/** Mean age of old corner melt in a reach, s; what makes no way forward counts like the slowest that does. */
function cornerAge(times: ChannelTimes, reach: number, shares: OldShares): number {
  let [sum, weight] = [0, 0];
  for (const [bin, share] of shares.cornerBins) {
    sum += share * times.reached[reach][Math.min(bin, binCount - 2)];
    weight += share;
  }
  return weight > 0 ? sum / weight : 0;
}

function sumSections(machine: Machine, field: ChannelField, times: ChannelTimes, firstBin: number): SectionSum[] {
  const sums = new Map<number, SectionSum>();
  const shapes = placedShapes(machine.design);
  field.reaches.forEach((nodes, i) => {
    const shape = nodes?.length && times.volumes[i] > 0 ? shapeOf(machine, shapes, i) : null;
    if (!nodes || !shape) return;
    const shares = oldShares(mixedMap(nodes), shape, firstBin);
    const section = machine.stations.section[i];
    const sum = sums.get(section) ?? { section, reaches: [], volume: 0, stagnant: 0, ageVolume: 0 };
    sums.set(section, sum);
    const volume = shares.corner * times.volumes[i];
    sum.reaches.push(i);
    sum.volume += volume;
    sum.stagnant += volume * shares.stagnant;
    sum.ageVolume += volume * cornerAge(times, i, shares);
  });
  return [...sums.values()];
}

/** The same shape with a larger root fillet, or null where it has as large a one already. */
function withFillet(shape: ChannelShape): ChannelShape | null {
  const bare = { ...shape.section, rootFillet: 0 };
  const rootFillet = Math.min(triedFillet * shape.reach.depth, 0.9 * largestRootFillet(bare));
  if (!(shape.section.rootFillet < 0.8 * rootFillet)) return null;
  return { ...shape, key: `${shape.key} fillet ${keyNumber(rootFillet)}`, section: { ...bare, rootFillet } };
}

/** What a larger fillet does to the old corner melt at a reach. */
interface FilletEffect {
  /** m */
  readonly fillet: number;
  /** old melt left over old melt now */
  readonly left: number;
}

/** Share of a section that sits in its corners on orbits slower than a dwell (over the mean). */
function oldCorner(cache: FieldCache, request: NodeRequest, dwell: number): number {
  const { bins, map } = nodeAt(cache, request);
  const first = bins?.dwell.findIndex((value) => value >= dwell) ?? -1;
  return oldShares(map, request.shape, first < 0 ? binCount : first).corner;
}

function filletEffect(
  machine: Machine,
  state: FlowState,
  cache: FieldCache,
  reach: number,
  firstBin: number,
): FilletEffect | null {
  const wanted = channelRequests(machine, state)[reach];
  const main = wanted && [...wanted].sort((a, b) => b.weight - a.weight)[0]?.request;
  const rounded = main ? withFillet(main.shape) : null;
  if (!main || !rounded) return null;
  const after: NodeRequest = { ...main, shape: rounded };
  solveNodes(cache, [after]);
  const dwell = nodeAt(cache, main).bins?.dwell[Math.min(firstBin, binCount - 1)];
  const before = dwell === undefined ? 0 : oldCorner(cache, main, dwell);
  if (dwell === undefined || !(before > 0)) return null;
  const left = oldCorner(cache, after, dwell) / before;
  return { fillet: rounded.section.rootFillet * machine.stations.barrelRadius[reach], left };
}

function remedyText(effect: FilletEffect | null): string {
  if (!effect) return 'The root fillet is large already; a shallower or wider channel sweeps better.';
  const size = formatQuantity(effect.fillet, 'mm', 2);
  if (effect.left > 0.9) return `A root fillet of ${size} hardly helps here; make the channel shallower or wider.`;
  return `A root fillet of ${size} would leave about ${Math.round(100 * effect.left)} % of it.`;
}

/**
 * Dead spots of the channel, one per section that has one.
 * @param limit s; melt that passes the channel more slowly is old
 * @param least m³; smaller spots are left out
 * @param cache takes the sections re-solved with a larger fillet
 */
export function channelSpots(
  machine: Machine,
  state: FlowState,
  field: ChannelField,
  times: ChannelTimes,
  limit: number,
  least: number,
  cache: FieldCache,
): FoundSpot[] {
  const firstBin = firstOlder(times, limit);
  const { stations } = machine;
  return sumSections(machine, field, times, firstBin)
    .filter((sum) => sum.volume > least)
    .map((sum) => {
      const middle = sum.reaches[sum.reaches.length >> 1];
      const effect = filletEffect(machine, state, cache, middle, firstBin);
      const [first, last] = [sum.reaches[0], sum.reaches[sum.reaches.length - 1]];
      const depth = (stations.depth[middle] + stations.depth[middle + 1]) / 2;
      return {
        part: 'channel',
        where: `corners between root and flank in section ${sum.section + 1}`,
        z: (stations.z[middle] + stations.z[middle + 1]) / 2,
        zFrom: stations.z[first],
        zTo: stations.z[last + 1],
        r: stations.barrelRadius[middle] - depth,
        volume: sum.volume,
        meanAge: sum.ageVolume / sum.volume,
        cause: sum.stagnant > 0.5 * sum.volume ? 'no net flow' : 'corner',
        remedy: remedyText(effect),
      };
    });
}
