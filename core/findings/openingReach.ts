/** How far a hand reaches through the feed. */

import type { Barrel, Hopper } from '../design/types.ts';
import { roundReach, slotReach } from './openingTable.ts';

/** Distance of the first row that covers an opening, m; Infinity where none does: a whole arm passes. */
const lookUp = (table: typeof slotReach, opening: number): number =>
  table.find(([upTo]) => opening <= upTo * (1 + 1e-9))?.[1] ?? Number.POSITIVE_INFINITY;

/** Distance for a round opening of a diameter, m. */
export const roundDistance = (diameter: number): number => lookUp(roundReach, diameter);

/** Distance for a rectangular opening, m: as a slot by its smaller side, or as the round one about it where that is less. */
export const slotDistance = (length: number, width: number): number =>
  Math.min(lookUp(slotReach, Math.min(length, width)), roundDistance(Math.hypot(length, width)));

/** Distance from the screw that hopper outlet and feed opening together ask for, m: the narrower of them rules. */
export const feedDistance = ({ feedOpening }: Barrel, { outletDiameter }: Hopper): number =>
  Math.min(slotDistance(feedOpening.length, feedOpening.width), roundDistance(outletDiameter));
