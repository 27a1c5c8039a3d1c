/** Filled melts. */

import { assertNever } from '../result.ts';
import type { ViscosityLaw } from './viscosityLaw.ts';

/**
 * Viscosity of a filled melt over that of the melt alone: (1 - phi/phiMax)^-2.
 * @param volumeFraction phi, 0 to below `maxPacking`
 * @param maxPacking phiMax, 0 to 1
 * @returns dimensionless, >= 1
 * Compact particles, no yield stress; fibres and damp flour thicken more. Source: Maron and Pierce 1956.
 */
export const maronPierce = (volumeFraction: number, maxPacking: number): number =>
  (1 - volumeFraction / maxPacking) ** -2;

/**
 * The law whose viscosity is `factor` times the given one's at every shear rate.
 * @param law isothermal law
 * @param factor dimensionless, > 0
 */
export function thickened(law: ViscosityLaw, factor: number): ViscosityLaw {
  switch (law.model) {
    case 'newtonian':
      return { ...law, viscosity: law.viscosity * factor };
    case 'powerLaw':
      return { ...law, consistency: law.consistency * factor };
    case 'carreauYasuda':
      return {
        ...law,
        zeroShearViscosity: law.zeroShearViscosity * factor,
        infiniteShearViscosity: law.infiniteShearViscosity * factor,
      };
    case 'cross':
      return {
        ...law,
        zeroShearViscosity: law.zeroShearViscosity * factor,
        criticalStress: law.criticalStress * factor,
      };
    default:
      return assertNever(law);
  }
}
