/**
 * Least distance from an opening in a guard to what lies behind it, for people of 14 and older, m.
 * After ISO 13857 as reprinted in a consultancy's table; check against the standard. Each row: openings up to, distance.
 */

/** Slots, by their width. */
export const slotReach: readonly (readonly [upTo: number, distance: number])[] = [
  [0.004, 0.002],
  [0.006, 0.01],
  [0.008, 0.02],
  [0.01, 0.08],
  [0.012, 0.1],
  [0.02, 0.12],
  [0.12, 0.85],
];

/** Round openings, by their diameter. */
export const roundReach: readonly (readonly [upTo: number, distance: number])[] = [
  [0.008, 0.005],
  [0.01, 0.02],
  [0.012, 0.08],
  [0.04, 0.12],
  [0.12, 0.85],
];
