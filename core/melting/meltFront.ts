/** Where melting ends, between which models, and how the flights end against it. */

import type { Stations } from '../geometry/types.ts';
import { meltProgress } from './progress.ts';
import type { MeltingCase, MeltingChoice, MeltProgress } from './types.ts';

/** End of melting, m, or null where it lies beyond the screw. */
export function meltEnd(stations: Stations, { start }: Pick<MeltProgress, 'start'>): number | null {
  if (start.reach >= stations.count - 1) return null;
  const [from, to] = [stations.z[start.reach], stations.z[start.reach + 1]];
  return to - start.share * (to - from);
}

/** End of melting by each model, m; null where it lies beyond the screw. */
export interface MeltingRange {
  readonly suited: number | null;
  readonly conduction: number | null;
  readonly film: number | null;
  /** the nearest and the farthest of them */
  readonly earliest: number | null;
  readonly latest: number | null;
}

/** Computes a case by each model: the doubt about the end of melting. */
export function meltingRange(c: MeltingCase): MeltingRange {
  const end = (choice: MeltingChoice) => meltEnd(c.stations, meltProgress(c, choice));
  const ends = { suited: end('suited'), conduction: end('conduction'), film: end('film') };
  const known = Object.values(ends).filter((value): value is number => value !== null);
  return {
    ...ends,
    earliest: known.length > 0 ? Math.min(...known) : null,
    latest: known.length === 3 ? Math.max(...known) : null,
  };
}

/** How the flights end against the melt front. */
export interface Engagement {
  /** where the last flight ends, m; null where the screw has none */
  readonly flightEnd: number | null;
  /** end of melting, m; null where it lies beyond the screw */
  readonly front: number | null;
  /**
   * flight that turns in melt alone, m; negative by the gap where flights end before the melt front, and by the way to
   * the screw's end where the front lies beyond it: such a flight pushes granules and not melt
   */
  readonly beyond: number;
  /** share of the mass still solid where the last flight ends, 0 to 1; 1 without a flight */
  readonly unmelted: number;
}

/**
 * Engagement of flights and melt front, with any length of plain screw behind the last flight.
 * Share interpolated within the reach of the front alone; the last flight ends at a station.
 */
export function engagementOf(stations: Stations, progress: MeltProgress): Engagement {
  const front = meltEnd(stations, progress);
  const last = stations.flighted.lastIndexOf(1);
  if (last < 0) return { flightEnd: null, front, beyond: 0, unmelted: 1 };
  const flightEnd = stations.z[last];
  return {
    flightEnd,
    front,
    beyond: flightEnd - (front ?? stations.z[stations.count - 1]),
    unmelted: 1 - progress.molten[last],
  };
}
