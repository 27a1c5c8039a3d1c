/** Where in a channel the old melt sits: the root corners, or the slow layer along the walls. */

import type { ChannelShape } from './channelShape.ts';
import { binOf } from './dwellBins.ts';
import { mapColumns, mapRows, type SectionMap } from './sectionMap.ts';

/** Old melt of one cross-section, all as shares of its volume. */
export interface OldShares {
  /** in the corners between root and flanks */
  readonly corner: number;
  /** elsewhere along the walls */
  readonly wall: number;
  /** share of `corner` that makes no way forward */
  readonly stagnant: number;
  /** bins of the outflow in the corners: share of the volume each, for their ages */
  readonly cornerBins: ReadonlyMap<number, number>;
}

/** A corner reaches this far, in depths or root half-widths, whichever is less. */
const cornerReach = 0.45;

/** Orbits beyond this share of the outflow count as not moving forward. */
const stagnantShare = 1 - 2e-6;

/** Volume of a cell of the map up to a common factor (Pappus). */
function cellVolume({ x, y }: SectionMap, floor: number, k: number): number {
  const [a, b, c, d] = [k, k + mapRows, k + mapRows + 1, k + 1];
  const area = Math.abs((x[c] - x[a]) * (y[d] - y[b]) - (x[d] - x[b]) * (y[c] - y[a])) / 2;
  return area * (floor + (y[a] + y[b] + y[c] + y[d]) / 4);
}

/**
 * Old melt over a map.
 * @param firstBin bin of the outflow from which melt counts as old
 */
export function oldShares(map: SectionMap, shape: ChannelShape, firstBin: number): OldShares {
  const { depth, rootRadius } = shape.reach;
  // the wall's lowest point is where flank and root meet, rounded or not
  const rootHalfWidth = -map.x[0];
  const reach = cornerReach * Math.min(depth, rootHalfWidth);
  const cornerBins = new Map<number, number>();
  let [all, corner, wall, stagnant] = [0, 0, 0, 0];
  for (let i = 0; i + 1 < mapColumns; i++) {
    for (let j = 0; j + 1 < mapRows; j++) {
      const k = i * mapRows + j;
      const volume = cellVolume(map, rootRadius, k);
      all += volume;
      const nodes = [k, k + 1, k + mapRows, k + mapRows + 1];
      // each node stands for a quarter of the cell
      for (const node of nodes) {
        const bin = binOf(map.share[node]);
        if (bin < firstBin) continue;
        const near = Math.hypot(map.x[node] + rootHalfWidth, map.y[node]) <= reach;
        if (!near) wall += volume / 4;
        else {
          corner += volume / 4;
          if (map.share[node] >= stagnantShare) stagnant += volume / 4;
          cornerBins.set(bin, (cornerBins.get(bin) ?? 0) + volume / 4);
        }
      }
    }
  }
  for (const [bin, volume] of cornerBins) cornerBins.set(bin, volume / all);
  return { corner: corner / all, wall: wall / all, stagnant: corner > 0 ? stagnant / corner : 0, cornerBins };
}
