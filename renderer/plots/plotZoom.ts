/** Ranges of a zoomed plot. Pure. */

/** From and to, in the unit of the axis. */
export type Range = readonly [number, number];

/** Least share of the whole that may be shown. */
const least = 1e-3;

/**
 * The part of a wanted range that lies in the whole; null where that is the whole, or nearly nothing.
 * Either end may be given first.
 */
export function keptRange([a, b]: Range, [from, to]: Range): Range | null {
  const low = Math.max(from, Math.min(a, b));
  const high = Math.min(to, Math.max(a, b));
  const span = to - from;
  if (!(high - low > least * span)) return null;
  return low - from < 1e-6 * span && to - high < 1e-6 * span ? null : [low, high];
}

/** Shares of the plot's width that are shown after one step in or out, about its middle. */
export const zoomShares = { in: [0.2, 0.8], out: [-1 / 3, 4 / 3] } as const;
