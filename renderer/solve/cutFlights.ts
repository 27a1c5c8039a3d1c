/** Where flights cross a plane through the axis: what a side drawing shows of them. */

import type { Stations } from '../../core/index.ts';
import type { CutFlight } from './protocol.ts';

const at = (values: ArrayLike<number>, index: number): number => values[index] ?? 0;

/** The flight cut at a share of the way from station i to i + 1. */
function cutAt(stations: Stations, i: number, share: number, side: 1 | -1): CutFlight {
  const mix = (values: ArrayLike<number>) => at(values, i) + share * (at(values, i + 1) - at(values, i));
  const land = mix(stations.flightWidth);
  return {
    z: mix(stations.z),
    land,
    foot: land + 2 * mix(stations.depth) * Math.tan(mix(stations.flankAngle)),
    rootRadius: mix(stations.rootRadius),
    side,
  };
}

/** Half turns of one flight pass the plane alternately above and below; more starts pass it oftener. */
export function cutFlights(stations: Stations): CutFlight[] {
  const cuts: CutFlight[] = [];
  let turns = 0;
  for (let i = 0; i + 1 < stations.count; i++) {
    const length = at(stations.z, i + 1) - at(stations.z, i);
    if (!at(stations.flighted, i) || length <= 0) continue;
    const lead = (at(stations.lead, i) + at(stations.lead, i + 1)) / 2;
    const next = turns + length / lead;
    for (let start = 0; start < at(stations.starts, i); start++) {
      const offset = start / at(stations.starts, i);
      for (let half = Math.ceil(2 * (turns + offset)); half < 2 * (next + offset); half++) {
        const share = (half / 2 - offset - turns) / (next - turns);
        cuts.push(cutAt(stations, i, share, half % 2 === 0 ? 1 : -1));
      }
    }
    turns = next;
  }
  return cuts;
}
