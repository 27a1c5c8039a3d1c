/** Where a dead spot is seen in a half-plane through the axis. */

import type { Stations } from '../geometry/types.ts';
import type { ChannelMap } from '../path/viewTypes.ts';
import type { DeadSpot } from '../prediction/types.ts';
import { flightGaps } from './flightGaps.ts';
import { mapReader, nodeAlong } from './mapBetween.ts';

/** m */
export interface SpotPlace {
  readonly z: number;
  readonly r: number;
}

/**
 * Place of a spot in the half-plane at an azimuth (rad, see channelSection). Spots of tip and nozzle run all round. Those
 * of the channel follow its corners along a whole section: shown is the corner that the half-plane cuts nearest to the
 * section's middle.
 */
export function spotPlace(
  spot: Pick<DeadSpot, 'part' | 'z' | 'r'>,
  stations: Stations,
  maps: readonly ChannelMap[],
  azimuth: number,
  hand: 'right' | 'left',
): SpotPlace {
  const [map] = maps;
  if (spot.part !== 'channel' || !map) return { z: spot.z, r: spot.r };
  const reader = mapReader(stations, maps);
  // one node in from the root and from either flank: amid the fillet
  const corners = [map.rows + 1, (map.columns - 2) * map.rows + 1];
  const found = flightGaps(stations, azimuth, hand).flatMap((gap) =>
    corners
      .map((k) => ({ z: nodeAlong(stations, reader, gap, k), k }))
      .filter(({ z }) => z >= gap.from && z <= gap.to)
      .map(({ z, k }) => ({ z, r: reader.radius(z, k) })),
  );
  const [first, ...others] = found;
  if (!first) return { z: spot.z, r: spot.r };
  return others.reduce((best, one) => (Math.abs(one.z - spot.z) < Math.abs(best.z - spot.z) ? one : best), first);
}
