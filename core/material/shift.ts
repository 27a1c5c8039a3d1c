/** Temperature shift of a viscosity law stated at one temperature. */

import { rateConstant } from '../age/arrhenius.ts';
import { assertNever } from '../result.ts';

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
