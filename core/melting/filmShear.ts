/** Shear in the melt film between barrel and bed: heat made, melt carried, mean temperature. */

import { localIndex, type ViscosityLaw, viscosityAt } from '../material/viscosityLaw.ts';

/** What shear does in a film of linear conduction profile. */
export interface FilmShear {
  /** heat made that flows to the bed, times the film's thickness, W/m; joins conductivity times temperature difference */
  readonly toBed: number;
  /** all heat made per area, times the film's thickness, W/m */
  readonly whole: number;
  /** mean speed of the film over half the barrel's, 1 where viscosity is the same throughout */
  readonly carried: number;
  /** flow-weighted mean temperature above melting, K */
  readonly rise: number;
}

/** Largest temperature thinning that is computed with: beyond it all shear sits at the barrel anyway. */
const steepest = 40;

/**
 * Shear of a film.
 * @param cold, hot laws of the melt at the bed's and at the barrel's temperature
 * @param speed barrel against bed, m/s, >= 0
 * @param thickness of the film, m, > 0
 * @param difference barrel above melting, K, >= 0
 * @param conductivity of the melt, W/(m K)
 * Power law of the local index with consistency falling exponentially over the linear profile: b = ln(cold/hot)/n.
 * Source: Tadmor & Klein 1970 and Tadmor & Gogos (U1, U2 and the mean film temperature, from memory), derived again here;
 * the shear's share in the mean temperature is the Newtonian one.
 */
export function filmShear(
  cold: ViscosityLaw,
  hot: ViscosityLaw,
  speed: number,
  thickness: number,
  difference: number,
  conductivity: number,
): FilmShear {
  const rate = Math.max(speed / thickness, 1e-6);
  const viscosity = viscosityAt(cold, rate);
  const index = cold.model === 'newtonian' ? 1 : localIndex(cold, rate);
  const thinning = Math.log(viscosity / viscosityAt(hot, rate)) / index;
  return thinnedShear(viscosity, index, thinning, speed, difference, conductivity);
}

/**
 * The same from viscosity (Pa s, at the bed's temperature and the mean shear rate), index and thinning b.
 * b below 0 counts as 0.
 */
export function thinnedShear(
  viscosity: number,
  index: number,
  thinning: number,
  speed: number,
  difference: number,
  conductivity: number,
): FilmShear {
  const b = Math.min(steepest, Math.max(0, thinning));
  const { slope, bed, half, mean } = shapeOf(b);
  const whole = viscosity * speed * speed * slope ** index;
  const toBed = whole * slope * bed;
  return { toBed, whole, carried: 2 * half, rise: difference * mean + toBed / (6 * conductivity) };
}

/**
 * Integrals over the film: slope = b/(e^b - 1); bed = share of heat towards the bed over slope; half = mean speed;
 * mean = flow-weighted mean of the linear temperature profile.
 */
function shapeOf(b: number): { slope: number; bed: number; half: number; mean: number } {
  // series where the differences cancel
  if (b < 1e-3) return { slope: 1 - b / 2, bed: 1 / 2 + b / 6, half: 1 / 2 - b / 12, mean: 2 / 3 + b / 36 };
  const e = Math.exp(b);
  const slope = b / (e - 1);
  const beyond = (e - 1 - b) / b;
  const half = 1 / b - 1 / (e - 1);
  const mean = ((e * (b - 1) + 1) / (b * b) - 1 / 2) / beyond;
  return { slope, bed: beyond / b, half, mean };
}
