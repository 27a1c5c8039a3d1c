/** Sizes of single grains out of d10, d50 and d90. */

import type { DesignMaterial } from '../../material/types.ts';

/** Shares drawn at the ends of the distribution: what lies beyond is not known from three sizes. */
const ends = [0.02, 0.98] as const;

/** Standard normal quantile at 0.9. */
const tenth = 1.2815515655446004;

/**
 * Standard normal quantile, |error| < 4.5e-4: Abramowitz and Stegun 1964, 26.2.23 (from memory).
 * @param share above 0 and below 1
 */
function normalQuantile(share: number): number {
  const tail = Math.sqrt(-2 * Math.log(Math.min(share, 1 - share)));
  const top = 2.515517 + tail * (0.802853 + tail * 0.010328);
  const bottom = 1 + tail * (1.432788 + tail * (0.189269 + tail * 0.001308));
  const value = tail - top / bottom;
  return share < 0.5 ? -value : value;
}

/**
 * Size below which a share of the grains lies: log-normal on either side of d50, through d10 and d90; held outside 2 to 98 %.
 * @param share 0 to 1; @returns m
 */
export function grainSizeAt({ d10, d50, d90 }: DesignMaterial['grain'], share: number): number {
  const held = Math.min(ends[1], Math.max(ends[0], share));
  const away = normalQuantile(held) / tenth;
  const end = away < 0 ? d10 : d90;
  return d50 * (end / d50) ** Math.abs(away);
}

/** Sizes of `count` grains at even shares, so that a tenth of them is above d90 whatever the count; rising, m. */
export const grainSizes = (grain: DesignMaterial['grain'], count: number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => grainSizeAt(grain, (i + 0.5) / count));
