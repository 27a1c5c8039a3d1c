/** Where granules must pass before they melt, and whether they do. */

import type { Design } from '../design/types.ts';
import type { Stations } from '../geometry/types.ts';
import type { FeedPlace } from './capacity.ts';

/** A place that granules must pass. */
export interface GrainPassage {
  readonly id: 'outlet' | 'openingLength' | 'openingWidth' | 'depth' | 'gap';
  /** in words, as the subject of a sentence */
  readonly name: string;
  /** m */
  readonly size: number;
}

/**
 * Passages from the hopper to the channel under the opening, in the order of passing.
 * @param place from feedPlace; null leaves out the channel
 */
export function grainPassages(design: Design, place: FeedPlace | null): GrainPassage[] {
  const { length, width } = design.barrel.feedOpening;
  const outside: GrainPassage[] = [
    { id: 'outlet', name: 'The hopper’s outlet', size: design.hopper.outletDiameter },
    { id: 'openingLength', name: 'The length of the feed opening', size: length },
    { id: 'openingWidth', name: 'The width of the feed opening', size: width },
  ];
  if (!place) return outside;
  return [
    ...outside,
    { id: 'depth', name: 'The depth of the channel under the opening', size: place.depth },
    { id: 'gap', name: 'The gap between flights under the opening', size: place.gap },
  ];
}

/** Passages that one granule in ten does not get through: narrower than d90. */
export const blockedPassages = (design: Design, place: FeedPlace | null): GrainPassage[] =>
  grainPassages(design, place).filter(({ size }) => size < design.material.grain.d90);

/** Depth over the 90 % grain: below the first a grain does not enter, below the second it enters badly; common practice. */
export const depthOverGrain = { least: 1, wanted: 1.3 } as const;

/** Axial gap between flights over the 90 % grain that is wanted; common practice. */
export const gapOverGrain = 2;

/** A place along the channel that is too shallow for the granules that pass it. */
export interface Pinch {
  /** m; between stations where the depth falls gradually */
  readonly z: number;
  /** first station that is too shallow */
  readonly station: number;
  /** depth there, m */
  readonly depth: number;
}

/**
 * First place past the feed opening and before melting where the channel is shallower than the granules.
 * @param meltsFrom station where melting begins (or ends, for granules that have only softened); beyond the last: all
 * @param grains depth that counts as too shallow, in d90
 * @returns null where all of the way is deep enough
 */
export function pinchPoint(
  design: Design,
  stations: Stations,
  meltsFrom: number,
  grains: number = depthOverGrain.least,
): Pinch | null {
  const { z, depth, count } = stations;
  const { start, length } = design.barrel.feedOpening;
  const end = start + length;
  const limit = grains * design.material.grain.d90;
  for (let i = 0; i <= Math.min(meltsFrom, count - 1); i++) {
    if (z[i] <= end || depth[i] >= limit) continue;
    const before = i > 0 ? depth[i - 1] : depth[i];
    const share = before > limit ? (before - limit) / (before - depth[i]) : 1;
    const at = i > 0 ? z[i - 1] + share * (z[i] - z[i - 1]) : z[i];
    return { z: Math.max(end, at), station: i, depth: depth[i] };
  }
  return null;
}

/** Share of d10 from which on fines get between flight and barrel, where they wedge; common practice. */
const wedgeShare = 0.5;

/** Whether the finest grains get over the flight: clearance over d10, and the ratio from which they do. */
export const overFlight = ({ screw, material }: Design): { readonly ratio: number; readonly limit: number } => ({
  ratio: screw.radialClearance / material.grain.d10,
  limit: wedgeShare,
});

/**
 * Granules in one turn of a full channel, taken as balls of d50. Their number per turn is the scale of the feed's
 * pulsation: at random it would scatter by one over its root (own estimate).
 */
export function grainsPerTurn(design: Design, place: FeedPlace): number {
  const { bulkDensity, solidDensity, grain } = design.material;
  return (place.volumePerTurn * (bulkDensity / solidDensity)) / ((Math.PI / 6) * grain.d50 ** 3);
}
