/** Isothermal viscosity laws: what a flow solver sees of a material at one temperature and pressure. */

import { assertNever } from '../result.ts';

/** Shear rate, 1/s, under which a power law is held level: real melts turn Newtonian at rest. */
export const powerLawFloorRate = 1e-3;

/** Constant viscosity. */
interface NewtonianLaw {
  readonly model: 'newtonian';
  /** Pa s, > 0 */
  readonly viscosity: number;
}

/** eta = K (g² + g0²)^((n-1)/2); g0 regularises the limit of rest. */
interface PowerLaw {
  readonly model: 'powerLaw';
  /** K, Pa s^n, > 0 */
  readonly consistency: number;
  /** n, 0.2 to 1.5 */
  readonly index: number;
  /** g0, 1/s, >= 0 */
  readonly regularisingRate: number;
}

/** eta = etaInf + (eta0 - etaInf) [1 + (lambda g)^a]^((n-1)/a). */
export interface CarreauYasudaLaw {
  readonly model: 'carreauYasuda';
  /** eta0, Pa s */
  readonly zeroShearViscosity: number;
  /** etaInf, Pa s, >= 0 */
  readonly infiniteShearViscosity: number;
  /** lambda, s */
  readonly timeConstant: number;
  /** a, > 0 (2 for Carreau) */
  readonly transition: number;
  /** n */
  readonly index: number;
}

/** eta = eta0 / [1 + (eta0 g / tauStar)^(1-n)]. */
interface CrossLaw {
  readonly model: 'cross';
  /** eta0, Pa s */
  readonly zeroShearViscosity: number;
  /** tauStar, Pa */
  readonly criticalStress: number;
  /** n */
  readonly index: number;
}

/** Any isothermal generalised-Newtonian law. */
export type ViscosityLaw = NewtonianLaw | PowerLaw | CarreauYasudaLaw | CrossLaw;

/**
 * Viscosity of a law at a shear rate.
 * @param law isothermal law
 * @param shearRate sqrt(2 D:D) from the whole velocity gradient, 1/s, >= 0
 * @returns viscosity, Pa s
 * Sources: Ostwald 1925 / de Waele 1923 (power law); Yasuda, Armstrong & Cohen 1981; Cross 1965.
 */
export function viscosityAt(law: ViscosityLaw, shearRate: number): number {
  switch (law.model) {
    case 'newtonian':
      return law.viscosity;
    case 'powerLaw':
      return law.consistency * (shearRate * shearRate + law.regularisingRate ** 2) ** ((law.index - 1) / 2);
    case 'carreauYasuda': {
      const bracket = 1 + (law.timeConstant * shearRate) ** law.transition;
      const span = law.zeroShearViscosity - law.infiniteShearViscosity;
      return law.infiniteShearViscosity + span * bracket ** ((law.index - 1) / law.transition);
    }
    case 'cross': {
      const ratio = (law.zeroShearViscosity * shearRate) / law.criticalStress;
      return law.zeroShearViscosity / (1 + ratio ** (1 - law.index));
    }
    default:
      return assertNever(law);
  }
}

/**
 * Local power-law index d ln(eta g)/d ln g at a shear rate.
 * @param law isothermal law
 * @param shearRate 1/s, > 0
 * @returns local index, dimensionless; 1 for Newtonian
 */
export function localIndex(law: ViscosityLaw, shearRate: number): number {
  const step = 1e-4;
  const above = viscosityAt(law, shearRate * (1 + step));
  const below = viscosityAt(law, shearRate * (1 - step));
  return 1 + Math.log(above / below) / Math.log((1 + step) / (1 - step));
}
