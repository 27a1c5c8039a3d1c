/** Published problems as the fit of weighed trials sees them, and what the statistics of a study say of them. */

import type { FitModel } from '../bench/fitModel.ts';
import { robustSearch } from '../bench/leastSquares.ts';
import { photoColour, type RegionMean, regionMean } from '../bench/photoLab.ts';
import type { FactorName } from '../design/calibrate.ts';
import { strengthsOf } from '../doubt/influence.ts';
import { integrateParts } from '../math/quadrature.ts';
import { misra1a } from './fits.ts';

const names: readonly FactorName[] = ['feed', 'viscosity'];
/** Values of Misra1a that the factors multiply: near the answer, and 20 % off it. */
const base = [200, 6.6] as const;

/** Misra1a as trials with a scatter so wide that none is weighed down by more than a hundredth. */
function misraModel(): FitModel {
  const { wanted, of } = misra1a.problem;
  return {
    trials: [],
    observations: wanted.map((measured, trial) => ({ trial, kind: 'rate', measured, scatter: 5 })),
    skipped: [],
    predict: (theta) => Float64Array.from(of(base.map((value, i) => value * Math.exp(theta[i] ?? 0)))),
    evaluations: () => 0,
  };
}

/** A parameter of Misra1a as the fit of trials finds it. */
export const trialFit = (parameter: 0 | 1): number =>
  base[parameter] * Math.exp(robustSearch(misraModel(), names, [0, 0], 30).theta[parameter] ?? Number.NaN);

/** Efficiency of an estimate with normal scatter, from weight and slope of its influence. */
export function efficiency(weight: (u: number) => number, slope: (u: number) => number): number {
  const normal = (u: number) => Math.exp((-u * u) / 2) / Math.sqrt(2 * Math.PI);
  const over = (f: (u: number) => number) => 2 * integrateParts((u) => f(u) * normal(u), 0, 10, 2000);
  return over(slope) ** 2 / over((u) => (u * weight(u)) ** 2);
}

/** Intelligence and hours of television of ten people, the example of encyclopaedias. */
const quotients = [106, 86, 100, 101, 99, 103, 97, 113, 112, 110];
const hours = [7, 0, 27, 50, 28, 29, 20, 12, 6, 17];
/** Rank correlation of both. */
export const rankCorrelation = (): number => strengthsOf([quotients], hours).strength[0] ?? Number.NaN;

/** Two made-up inputs over twenty samples, and an output of both. */
const first = [3, 14, 7, 20, 1, 18, 9, 5, 12, 16, 2, 11, 19, 6, 15, 8, 4, 13, 10, 17];
const second = [12, 3, 17, 8, 15, 1, 19, 6, 10, 14, 2, 18, 5, 20, 9, 13, 7, 16, 4, 11];
/** Strength of an input on the output by regression of ranks. */
export function rankStrength(input: 0 | 1): number {
  const output = first.map((value, i) => 2 * value + 0.7 * (second[i] ?? 0) + ((value * (second[i] ?? 0)) % 7));
  return strengthsOf([first, second], output).strength[input] ?? Number.NaN;
}

const pixels = (...greys: readonly number[]): RegionMean => {
  const region = regionMean(greys.flatMap((grey) => [grey, grey, grey, 255]));
  if (!region) throw new Error('no pixels');
  return region;
};

/** L* of a strand whose pixels are half of value 100, half of 200, beside a white reference. */
export function checkeredLightness(): number {
  const found = photoColour(pixels(100, 200), pixels(255, 255));
  if (!found.ok) throw new Error('white too dark');
  return found.value.lab[0];
}
