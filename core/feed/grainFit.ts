/** Where granules must pass before they melt, and whether they do. */

import type { Design } from '../design/types.ts';
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
