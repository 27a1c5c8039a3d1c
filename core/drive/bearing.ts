/** Load ratings of the thrust bearing. */

import type { BearingLoad } from './types.ts';

/** What a catalogue says of a bearing in the direction of thrust. */
export interface BearingRating {
  readonly kind: 'ball' | 'roller';
  /** N */
  readonly staticLoad: number;
  readonly dynamicLoad: number | null;
}

/** Exponent of load in the rated life: ISO 281, from memory. */
const lifeExponent = { ball: 3, roller: 10 / 3 } as const;

/**
 * Turns that nine bearings in ten outlast.
 * @param dynamicLoad rating, N; @param load N, > 0
 * @returns turns; 10⁶ (C/P)^p, ISO 281 (from memory). Holds for clean oil and turning races, not for slow or hot grease.
 */
export const ratedTurns = (dynamicLoad: number, load: number, kind: BearingRating['kind']): number =>
  1e6 * (dynamicLoad / load) ** lifeExponent[kind];

/**
 * Margins and life of a bearing.
 * @param thrust running, N; @param thrustBlocked N; @param screwSpeed rev/s
 * @returns nulls where there is no thrust, no turning or no dynamic rating
 */
export function bearingLoad(
  rating: BearingRating,
  thrust: number,
  thrustBlocked: number,
  screwSpeed: number,
): BearingLoad {
  const over = (load: number) => (load > 0 ? rating.staticLoad / load : null);
  const turns = rating.dynamicLoad !== null && thrust > 0 ? ratedTurns(rating.dynamicLoad, thrust, rating.kind) : null;
  return {
    staticMargin: over(thrust),
    staticMarginBlocked: over(thrustBlocked),
    lifeTurns: turns,
    lifeTime: turns !== null && screwSpeed > 0 ? turns / screwSpeed : null,
  };
}
