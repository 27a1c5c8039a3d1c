/** Arrhenius rate constants stated at a reference temperature. */

/** Molar gas constant, J/(mol K), exact since the SI of 2019 (BIPM, SI Brochure, 9th edition). */
const gasConstant = 8.314462618;

/**
 * Rate constant at a temperature: k = kRef exp[-Ea/R (1/T - 1/Tref)].
 * @param rateAtReference kRef, any unit per second
 * @param activation Ea, J/mol
 * @param referenceTemperature Tref, K, > 0
 * @param temperature T, K, > 0
 * @returns rate constant, unit of `rateAtReference`
 * Holds as far as one activation energy describes the reaction; callers report where it was measured.
 * Source: Arrhenius 1889, in the reference-temperature form that uncouples kRef from Ea.
 */
export function rateConstant(
  rateAtReference: number,
  activation: number,
  referenceTemperature: number,
  temperature: number,
): number {
  return rateAtReference * Math.exp((activation / gasConstant) * (1 / referenceTemperature - 1 / temperature));
}

/**
 * Activation energy that joins two rates: Ea = R ln(k2/k1) / (1/T1 - 1/T2).
 * @param first rate (any unit, > 0) and temperature (K)
 * @param second rate in the same unit and another temperature (K)
 * @returns J/mol; not finite where the temperatures are equal
 */
export function activationBetween(
  first: { readonly rate: number; readonly temperature: number },
  second: { readonly rate: number; readonly temperature: number },
): number {
  const span = 1 / first.temperature - 1 / second.temperature;
  return (gasConstant * Math.log(second.rate / first.rate)) / span;
}
