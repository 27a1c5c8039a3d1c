/** Values of the channel maps at any z: their nodes correspond, so maps are mixed node by node. */

import type { Stations } from '../geometry/types.ts';
import { intervalOf } from '../math/interpolate.ts';
import type { ChannelMap } from '../path/viewTypes.ts';
import type { FlightGap } from './flightGaps.ts';

/** A place between two stations. */
export interface StationPlace {
  /** the station before */
  readonly low: number;
  /** 0 at it, 1 at the next */
  readonly share: number;
}

/** Where z (m) lies among the stations; at a section's boundary in the later section; ends are held. */
export function stationPlace({ z }: Stations, at: number): StationPlace {
  const low = intervalOf(z, at);
  const length = z[low + 1] - z[low];
  return { low, share: length > 0 ? Math.min(1, Math.max(0, (at - z[low]) / length)) : 0 };
}

/** A station array at a place. */
export const stationValue = (values: ArrayLike<number>, { low, share }: StationPlace): number =>
  values[low] + share * (values[low + 1] - values[low]);

/** Axial width of the channel at the barrel, m. */
export function axialGap({ lead, starts, flightWidth }: Stations, place: StationPlace): number {
  return stationValue(lead, place) / starts[place.low] - stationValue(flightWidth, place);
}

/** How maps are mixed at one z. */
interface MapMix {
  readonly before: ChannelMap;
  readonly after: ChannelMap;
  /** of `after` */
  readonly weight: number;
  /** whose shape is taken: across a boundary of sections only the own section's counts */
  readonly shapeWeight: number;
}

/** Mix at z (m); beyond the first and last map these are held. Needs at least one map. */
function mixAt(maps: readonly ChannelMap[], section: number, z: number): MapMix {
  const found = maps.findIndex((map) => map.z >= z);
  const high = found < 0 ? maps.length - 1 : found;
  const low = found < 0 ? high : Math.max(0, found - 1);
  const [before, after] = [maps[low], maps[high]];
  const weight = after.z > before.z ? (z - before.z) / (after.z - before.z) : 0;
  if (before.section === after.section) return { before, after, weight, shapeWeight: weight };
  const nearest = weight < 0.5 ? 0 : 1;
  const shapeWeight = before.section === section ? 0 : after.section === section ? 1 : nearest;
  return { before, after, weight, shapeWeight };
}

/** Reads maps at places of a machine; lengths follow the stations, so that shapes fit tapers exactly. */
export interface MapReader {
  /** axial distance of node k from mid-channel over the width at the barrel, in a channel whose middle is at z (m) */
  across(z: number, k: number): number;
  /** radius (m) of node k where it lies at z (m) */
  radius(z: number, k: number): number;
  /** a mapped quantity of node k at z (m) */
  value(name: 'age' | 'dwell' | 'speed', z: number, k: number): number;
}

/** A reader of at least one map. */
export function mapReader(stations: Stations, maps: readonly ChannelMap[]): MapReader {
  const mixes = new Map<number, MapMix>();
  const places = new Map(maps.map((map) => [map, stationPlace(stations, map.z)]));
  const mix = (z: number): MapMix => {
    const known = mixes.get(z);
    if (known) return known;
    const made = mixAt(maps, stations.section[stationPlace(stations, z).low], z);
    mixes.set(z, made);
    return made;
  };
  const depthOf = (map: ChannelMap) => stationValue(stations.depth, places.get(map) ?? stationPlace(stations, map.z));
  const gapOf = (map: ChannelMap) => axialGap(stations, places.get(map) ?? stationPlace(stations, map.z));
  return {
    across: (z, k) => {
      const { before, after, shapeWeight } = mix(z);
      const relative = (map: ChannelMap) => map.x[k] / gapOf(map);
      return (1 - shapeWeight) * relative(before) + shapeWeight * relative(after);
    },
    radius: (z, k) => {
      const { before, after, shapeWeight } = mix(z);
      const place = stationPlace(stations, z);
      const bore = stationValue(stations.barrelRadius, place);
      const relative = (map: ChannelMap) => (bore - map.r[k]) / depthOf(map);
      const share = (1 - shapeWeight) * relative(before) + shapeWeight * relative(after);
      return bore - share * stationValue(stations.depth, place);
    },
    value: (name, z, k) => {
      const { before, after, weight } = mix(z);
      return (1 - weight) * before[name][k] + weight * after[name][k];
    },
  };
}

/** z (m) of node k in a channel between two flights: from land to land, also where the lead changes between them. */
export function nodeAlong(stations: Stations, reader: MapReader, gap: FlightGap, k: number): number {
  const halfLand = (z: number) => stationValue(stations.flightWidth, stationPlace(stations, z)) / 2;
  const [left, right] = [gap.before + halfLand(gap.before), gap.after - halfLand(gap.after)];
  return left + (reader.across(gap.middle, k) + 0.5) * (right - left);
}
