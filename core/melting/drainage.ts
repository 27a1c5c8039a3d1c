/** Whether thin melt sinks into the bed instead of standing on it as a film. */

import { gravity } from '../math/constants.ts';

/** Bed and melt. */
export interface DrainingBed {
  /** m */
  readonly grain: number;
  /** share of solid in the bed, 0 to 1 */
  readonly packing: number;
  /** m, depth of the bed */
  readonly depth: number;
  /** kg/m³ */
  readonly meltDensity: number;
  /** N/m, or null where unknown */
  readonly surfaceTension: number | null;
}

/** Surface tension of melts where none is known, N/m: common practice, 0.02 to 0.04 for organic melts. */
const usualTension = 0.03;

/** Pores never close or open wholly. */
const [tightest, loosest] = [0.05, 0.95];

/**
 * Speed at which melt sinks into a bed of dry grains, m/s.
 * @param viscosity of the melt at rest, Pa s
 * Permeability d² e³/(180 (1 - e)²) (Kozeny 1927, Carman 1937); driven by weight and by suction of wetted pores, surface
 * tension times wall area over pore volume, along the depth. Assumes melt that wets; own arithmetic for the suction.
 */
export function drainSpeed(bed: DrainingBed, viscosity: number): number {
  const pores = Math.min(loosest, Math.max(tightest, 1 - bed.packing));
  const solid = 1 - pores;
  const permeability = (bed.grain ** 2 * pores ** 3) / (180 * solid ** 2);
  const suction = ((bed.surfaceTension ?? usualTension) * 6 * solid) / (bed.grain * pores * bed.depth);
  return (permeability / viscosity) * (bed.meltDensity * gravity + suction);
}
