/** Temperature shift of a viscosity law stated at one temperature. */

import { rateConstant } from '../age/arrhenius.ts';
import { assertNever } from '../result.ts';
import { thickened } from './filler.ts';
import type { ViscosityLaw } from './viscosityLaw.ts';

/** How a law moves with temperature. */
export type TemperatureShift =
  | { readonly kind: 'none' }
  /** K and J/mol */
  | { readonly kind: 'arrhenius'; readonly reference: number; readonly activation: number }
  /** K and 1/K */
  | { readonly kind: 'exponential'; readonly reference: number; readonly coefficient: number };

/**
 * Shift factor aT: viscosity at rest over that at the reference temperature.
 * @param shift kind with its constants
 * @param temperature K, > 0
 * @returns aT, 1 at the reference temperature
 * Sources: Arrhenius 1889 (aT = exp[Ea/R (1/T - 1/Tref)], semi-crystalline melts well above Tg); Reynolds 1886
 * (aT = exp[-b (T - Tref)], narrow ranges).
 */
export function shiftFactor(shift: TemperatureShift, temperature: number): number {
  switch (shift.kind) {
    case 'none':
      return 1;
    case 'arrhenius':
      return 1 / rateConstant(1, shift.activation, shift.reference, temperature);
    case 'exponential':
      return Math.exp(-shift.coefficient * (temperature - shift.reference));
    default:
      return assertNever(shift);
  }
}

/**
 * A law moved to another temperature by its shift factor.
 * @param law isothermal law at the reference temperature
 * @param aT shift factor, > 0
 * @returns Carreau-Yasuda obeys superposition, eta = aT f(aT g) (Ferry 1980); a power law's consistency is multiplied by
 *   aT, as such fits are made at equal shear rate; a Cross law keeps its critical stress
 */
export function shifted(law: ViscosityLaw, aT: number): ViscosityLaw {
  if (law.model === 'cross') return { ...law, zeroShearViscosity: law.zeroShearViscosity * aT };
  const lifted = thickened(law, aT);
  return lifted.model === 'carreauYasuda' ? { ...lifted, timeConstant: lifted.timeConstant * aT } : lifted;
}
