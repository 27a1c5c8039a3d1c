/** Shear rate of a law at a given stress: the inverse of viscosityAt. */

import { type CarreauYasudaLaw, type ViscosityLaw, viscosityAt } from '../material/viscosityLaw.ts';
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
  /** d(slope)/d ln(rate); 0 where it is not known */
  bend: number;
}

/** Sets all of a point to its rate: the powers that its parts share are taken once. */
function evaluate(law: ViscosityLaw, point: CurvePoint): void {
  const { rate } = point;
  switch (law.model) {
    case 'newtonian':
      point.stress = law.viscosity * rate;
      point.slope = 1;
      point.bend = 0;
      return;
    case 'powerLaw': {
      const square = rate * rate;
      const share = square / (square + law.regularisingRate ** 2);
      point.stress = viscosityAt(law, rate) * rate;
      point.slope = 1 + (law.index - 1) * share;
      point.bend = 2 * (law.index - 1) * share * (1 - share);
      return;
    }
    case 'cross': {
      const viscosity = viscosityAt(law, rate);
      const share = viscosity / law.zeroShearViscosity;
      point.stress = viscosity * rate;
      point.slope = law.index + (1 - law.index) * share;
      point.bend = -((1 - law.index) ** 2) * share * (1 - share);
      return;
    }
    case 'carreauYasuda':
      evaluateCarreau(law, point);
      return;
    default:
      assertNever(law);
  }
}

function evaluateCarreau(law: CarreauYasudaLaw, point: CurvePoint): void {
  const { zeroShearViscosity, infiniteShearViscosity, index, transition } = law;
  const x = (law.timeConstant * point.rate) ** transition;
  const thinning = (zeroShearViscosity - infiniteShearViscosity) * (1 + x) ** ((index - 1) / transition);
  const viscosity = infiniteShearViscosity + thinning;
  const share = x / (1 + x);
  const part = thinning / viscosity;
  const fall = part * (index - 1) * share;
  point.stress = viscosity * point.rate;
  point.slope = 1 + fall;
  point.bend = fall * ((index - 1) * share - fall) + part * (index - 1) * transition * share * (1 - share);
}

/** d ln(rate) for a d ln(stress), by the inverse series at a point: slope, and bend where the step is short. */
function inverseStep({ slope, bend }: CurvePoint, change: number): number {
  const plain = change / slope;
  const second = (bend * plain * plain) / (2 * slope);
  // far away only the tangent is sure: the curve is concave
  return Math.abs(second) < 0.1 * Math.abs(plain) ? plain - second : plain;
}

/**
 * Moves a point of the flow curve to another stress.
 * @param law isothermal law whose stress grows with the rate
 * @param stress Pa, > 0
 * @param point in: a known point (rate and slope > 0), also of a similar law; out: the point at the stress, rate to a
 * relative error of about 1e-8
 * Method: steps of ln(rate) by the inverse series in ln(stress); by its first term alone, which is Newton's step, where
 * the second is not small. The curve is concave for shear-thinning laws, so that Newton converges from any start.
 */
export function moveToStress(law: ViscosityLaw, stress: number, point: CurvePoint): void {
  point.rate *= Math.exp(bounded(inverseStep(point, Math.log(stress / point.stress))));
  for (let pass = 0; pass < 60; pass++) {
    evaluate(law, point);
    const off = stress / point.stress - 1;
    if (Math.abs(off) < 2e-3) {
      // ln(1 + off) by its series: what is left of either series is some 1e-9
      const step = inverseStep(point, off * (1 - off / 2 + (off * off) / 3));
      point.rate *= 1 + step + (step * step) / 2 + (step * step * step) / 6;
      point.slope += point.bend * step;
      break;
    }
    point.rate *= Math.exp(bounded(inverseStep(point, Math.log(1 + off))));
  }
  point.stress = stress;
}

/** Steps of ln(rate) are kept within twelve decades. */
const bounded = (step: number): number => Math.max(-27.6, Math.min(27.6, step));
