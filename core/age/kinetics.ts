/** Extent of degradation along a temperature-time history. */

import type { DegradationLaw } from '../design/types.ts';
import { rateConstant } from './arrhenius.ts';
import { celsiusText } from './celsiusText.ts';
import { type Corner, type KineticLaw, type LagLaw, nominalCorner, type Step, type TwoStepLaw } from './laws.ts';
import { stepSeries } from './twoStep.ts';

/** A stretch of constant temperature. */
export interface HeatSegment {
  /** s, >= 0 */
  readonly duration: number;
  /** K, > 0 */
  readonly temperature: number;
}

/** How far a law has run, and whether it was asked outside its range. */
export interface Extent {
  /** unit of the law: observed quantity for zero order, scissions per repeat unit, else 0 to 1 */
  readonly extent: number;
  /** s spent below and above the temperatures at which the law was measured */
  readonly below: number;
  readonly above: number;
  /** null inside the range, else in words */
  readonly doubt: string | null;
}

/** Extent of d(alpha)/dt = k (1 - alpha)^n from alpha = 0 at reduced time X = integral of k dt. Order 0: X itself. */
export function extentOfOrder(order: number, reducedTime: number): number {
  if (order === 0) return reducedTime;
  if (order === 1) return -Math.expm1(-reducedTime);
  // exp/log form keeps full digits as the order nears 1; below order 1 all is used up at X = 1/(1 - n)
  const base = (order - 1) * reducedTime;
  return base <= -1 ? 1 : -Math.expm1(Math.log1p(base) / (1 - order));
}

/**
 * Extent of the modified Gompertz law, shifted and scaled so that it starts at 0 and ends at 1.
 * @param reducedTime integral of the steepest rate, dimensionless
 * @param lag steepest rate times lag, dimensionless, >= 0
 * Source: Zwietering et al. 1990, y = exp{-exp[e (lag - X) + 1]}; the start value exp[-exp(e lag + 1)] (0.066 without
 * lag, below 3e-5 from lag 0.5 on) is taken out here so that fresh granulate has extent 0.
 */
export function extentWithLag(reducedTime: number, lag: number): number {
  const raw = (x: number) => Math.exp(-Math.exp(Math.E * (lag - x) + 1));
  const start = raw(0);
  return (raw(reducedTime) - start) / (1 - start);
}

/**
 * Number-average molar mass after random scission: 1/M = 1/M0n + X/m.
 * @param initial M0n, kg/mol
 * @param repeatUnitMass m, kg/mol
 * @param extent X, scissions per repeat unit, small against 1
 * @returns kg/mol
 * Source: Kuhn 1930; the common melt-degradation form of it.
 */
export function molarMassAfter(initial: number, repeatUnitMass: number, extent: number): number {
  return 1 / (1 / initial + extent / repeatUnitMass);
}

/** Rate constant of one set of constants at a corner of their doubt ranges, 1/s. */
function rateOf(
  constants: Pick<Step, 'rateAtReference' | 'activation'>,
  referenceTemperature: number,
  temperature: number,
  corner: Corner,
): number {
  const rate = constants.rateAtReference[corner.rate];
  return rateConstant(rate, constants.activation[corner.activation], referenceTemperature, temperature);
}

/** Integral of k dt. */
function reducedTime(law: Exclude<KineticLaw, TwoStepLaw>, segments: readonly HeatSegment[], corner: Corner): number {
  return segments.reduce(
    (sum, segment) => sum + segment.duration * rateOf(law, law.referenceTemperature, segment.temperature, corner),
    0,
  );
}

function lostMass(law: TwoStepLaw, segments: readonly HeatSegment[], corner: Corner): number {
  const end = segments.reduce(
    (state, segment) =>
      stepSeries(
        state,
        {
          first: rateOf(law.first, law.referenceTemperature, segment.temperature, corner),
          second: rateOf(law.second, law.referenceTemperature, segment.temperature, corner),
          firstYield: law.first.solidYield,
          secondYield: law.second.solidYield,
        },
        segment.duration,
      ),
    { a: 1, b: 0, c: 0 },
  );
  return 1 - end.a - end.b - end.c;
}

const lagNumber = (law: LagLaw, corner: Corner) => law.rateAtReference[corner.rate] * law.lagAtReference;

/** Extent alone, as of `extentAlong` but for segments already checked: the inner step of averages over many ages. */
export function extentOfChecked(law: KineticLaw, segments: readonly HeatSegment[], corner: Corner): number {
  if (!('kind' in law)) return extentOfOrder(law.order, reducedTime(law, segments, corner));
  switch (law.kind) {
    case 'scission':
      return reducedTime(law, segments, corner);
    case 'twoStep':
      return lostMass(law, segments, corner);
    case 'lag':
      return extentWithLag(reducedTime(law, segments, corner), lagNumber(law, corner));
  }
}

/** Time outside the law's range and the words for it. */
export function rangeDoubt(
  law: Pick<DegradationLaw, 'id' | 'validFrom' | 'validTo'>,
  segments: readonly HeatSegment[],
): Pick<Extent, 'below' | 'above' | 'doubt'> {
  const timeWhere = (test: (temperature: number) => boolean) =>
    segments.reduce((sum, segment) => (test(segment.temperature) ? sum + segment.duration : sum), 0);
  const below = timeWhere((temperature) => temperature < law.validFrom);
  const above = timeWhere((temperature) => temperature > law.validTo);
  if (below === 0 && above === 0) return { below, above, doubt: null };
  const used = segments.filter((segment) => segment.duration > 0).map((segment) => segment.temperature);
  const span = `${celsiusText(Math.min(...used))} to ${celsiusText(Math.max(...used))}`;
  const measured = `${celsiusText(law.validFrom)} to ${celsiusText(law.validTo)}`;
  const doubt = `The law ${law.id} was measured from ${measured}; it is asked for ${span}, so it is extrapolated.`;
  return { below, above, doubt };
}

/**
 * Extent of a degradation law along a history of constant-temperature stretches, in order of passing.
 * @param law order-based or richer law
 * @param segments s and K
 * @param corner which end of the doubt ranges the constants take; the stated values by default
 * @returns extent in the law's unit, the time outside its measured range and the doubt in words
 * @throws RangeError for a negative or non-finite duration or a temperature that is not above 0 K
 * Exact for each law: order and lag laws depend on the integral of k dt alone, the series is solved per stretch.
 */
export function extentAlong(law: KineticLaw, segments: readonly HeatSegment[], corner: Corner = nominalCorner): Extent {
  const wrong = segments.find((s) => !(s.duration >= 0 && s.duration < Infinity && s.temperature > 0));
  if (wrong) throw new RangeError(`Not a heat segment: ${wrong.duration} s at ${wrong.temperature} K`);
  return { extent: extentOfChecked(law, segments, corner), ...rangeDoubt(law, segments) };
}
