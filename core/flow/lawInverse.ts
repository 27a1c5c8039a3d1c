/** Shear rate of a law at a given stress: the inverse of viscosityAt. */

import { type ViscosityLaw, viscosityAt } from '../material/viscosityLaw.ts';
import { assertNever } from '../result.ts';

/**
 * Local index d ln(stress)/d ln(rate), analytic, where the viscosity is already known.
 * @param law isothermal law
 * @param rate shear rate, 1/s, > 0
 * @param viscosity viscosityAt(law, rate), Pa s
 * @returns dimensionless; 1 for Newtonian
 */
export function slopeAt(law: ViscosityLaw, rate: number, viscosity: number): number {
  switch (law.model) {
    case 'newtonian':
      return 1;
    case 'powerLaw': {
      const square = rate * rate;
      return 1 + ((law.index - 1) * square) / (square + law.regularisingRate ** 2);
    }
    case 'carreauYasuda': {
      const x = (law.timeConstant * rate) ** law.transition;
      return 1 + ((1 - law.infiniteShearViscosity / viscosity) * (law.index - 1) * x) / (1 + x);
    }
    case 'cross':
      return law.index + ((1 - law.index) * viscosity) / law.zeroShearViscosity;
    default:
      return assertNever(law);
  }
}

/** A point of a law's flow curve, reused as the start of the next inversion. */
export interface CurvePoint {
  /** Pa */
  stress: number;
  /** 1/s */
  rate: number;
  /** d ln(stress)/d ln(rate) */
  slope: number;
}

/**
 * Moves a point of the flow curve to another stress.
 * @param law isothermal law whose stress grows with the rate
 * @param stress Pa, > 0
 * @param point in: a known point (rate and slope > 0), also of a similar law; out: the point at the stress, rate to a
 * relative error of about 1e-8
 * Method: Newton on ln(stress) over ln(rate), which is concave for shear-thinning laws and so converges from any start.
 */
export function moveToStress(law: ViscosityLaw, stress: number, point: CurvePoint): void {
  let rate = point.rate * (stress / point.stress) ** (1 / point.slope);
  for (let pass = 0; pass < 60; pass++) {
    const viscosity = viscosityAt(law, rate);
    const ratio = stress / (viscosity * rate);
    const slope = slopeAt(law, rate, viscosity);
    point.slope = slope;
    const off = ratio - 1;
    if (Math.abs(off) < 1e-4) {
      // ln(1 + off)/slope by its series: the error left is below 1e-8
      rate *= 1 + (off * (1 - off / 2)) / slope;
      break;
    }
    rate *= Math.max(1e-12, Math.min(1e12, ratio ** (1 / slope)));
  }
  point.stress = stress;
  point.rate = rate;
}

/**
 * Shear rate at which a law carries a stress.
 * @param stress Pa, > 0; @param guess starting rate, 1/s, > 0
 * @returns 1/s, relative error about 1e-8
 */
export function shearRateAt(law: ViscosityLaw, stress: number, guess: number): number {
  const point = { stress, rate: guess, slope: 1 };
  moveToStress(law, stress, point);
  return point.rate;
}
