/** Published data and the fits that checks make of them. */

import { fitRheology } from '../material/fit/fitRheology.ts';
import { inverseNormal, type Problem, slopes, solveLeastSquares } from '../material/fit/leastSquares.ts';

/** Least-squares problem of NIST StRD Misra1a: y = b1 (1 - exp(-b2 x)), b2 in 1e-4; 14 observations. */
const misraX = [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760];
const misraY = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78];
/** The same of DanWood: y = b1 x^b2; 6 observations. */
const woodX = [1.309, 1.471, 1.49, 1.565, 1.611, 1.68];
const woodY = [2.138, 3.421, 3.597, 4.34, 4.882, 5.66];

/** A certified data set with the farther of its two certified starts. */
interface CertifiedSet {
  readonly problem: Problem;
  readonly start: readonly number[];
}

/** Misra1a; second parameter in units of 1e-4. */
export const misra1a: CertifiedSet = {
  problem: {
    wanted: misraY,
    of: ([b1 = 0, b2 = 0]) => misraX.map((x) => b1 * -Math.expm1(-b2 * 1e-4 * x)),
    low: [1, 0.01],
    high: [5000, 1000],
  },
  start: [500, 1],
};

/** DanWood. */
export const danWood: CertifiedSet = {
  problem: {
    wanted: woodY,
    of: ([b1 = 0, b2 = 0]) => woodX.map((x) => b1 * x ** b2),
    low: [1e-3, 0],
    high: [100, 20],
  },
  start: [1, 5],
};

/** A parameter found by our least squares. */
export const fittedTo = ({ problem, start }: CertifiedSet, parameter: number): number =>
  solveLeastSquares(problem, [start]).at[parameter] ?? Number.NaN;

/** Its standard deviation, from our slopes and covariance. */
export function deviationOf({ problem, start }: CertifiedSet, parameter: number): number {
  const { at, squares } = solveLeastSquares(problem, [start]);
  const size = at.length;
  const inverse = inverseNormal(slopes(problem.of, at), size);
  return Math.sqrt(((inverse[parameter * size + parameter] ?? 0) * squares) / (problem.wanted.length - size));
}

/** True shear rates (1/s) and viscosities (Pa s) of polypropylene at 190 °C, reduced from capillary data with numpy. */
const capillary = [
  [322.797118, 258.565771],
  [645.594236, 180.66412],
  [1291.188471, 126.267945],
] as const;

/** A parameter of the power law that our fit finds in them. */
export function capillaryFit(name: 'index' | 'consistencyPaSn'): number {
  const points = capillary.map(([shearRate, viscosity]) => ({ shearRate, temperature: 463.15, viscosity }));
  const fit = fitRheology('powerLaw', points);
  if (!fit.ok) throw new Error(fit.issues.map(({ message }) => message).join(' '));
  return fit.value.parameters.find((one) => one.name === name)?.value ?? Number.NaN;
}
