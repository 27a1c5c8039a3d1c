/** A degradation law at one corner of its doubt ranges, made ready for many histories of the same temperatures. */

import { rateConstant } from './arrhenius.ts';
import { extentOfOrder, extentWithLag } from './extentForms.ts';
import type { Corner, KineticLaw, Step, TwoStepLaw } from './laws.ts';
import { type SeriesState, stepSeries } from './twoStep.ts';

/** A stretch of constant temperature. */
export interface HeatSegment {
  /** s, >= 0 */
  readonly duration: number;
  /** K, > 0 */
  readonly temperature: number;
}

/** How far melt has come: the reduced time X in `a` for laws that depend on it alone, else masses of three solids. */
export type AgingState = SeriesState;

/** Ages melt by a time (s), spent like a passage of known temperatures, stretched or shortened as a whole. */
type Aging = (state: AgingState, age: number) => AgingState;

/** A law ready to run. */
export interface LawRun {
  readonly fresh: AgingState;
  /** @param passage durations of any scale, not all 0 */
  readonly through: (passage: readonly HeatSegment[]) => Aging;
  /** extent of a state, unit of the law */
  readonly extentOf: (state: AgingState) => number;
}

/** Time of a passage, s. */
export const durationOf = (passage: readonly HeatSegment[]): number =>
  passage.reduce((sum, segment) => sum + segment.duration, 0);

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

/** Time-weighted mean of k over a passage, 1/s: X = mean rate times age. */
function meanRate(law: Exclude<KineticLaw, TwoStepLaw>, passage: readonly HeatSegment[], corner: Corner): number {
  const sum = passage.reduce(
    (total, { duration, temperature }) =>
      duration > 0 ? total + duration * rateOf(law, law.referenceTemperature, temperature, corner) : total,
    0,
  );
  const time = durationOf(passage);
  return time > 0 ? sum / time : 0;
}

/** Two steps are solved stretch by stretch: their order matters. */
function seriesRun(law: TwoStepLaw, corner: Corner): LawRun {
  return {
    fresh: { a: 1, b: 0, c: 0 },
    extentOf: ({ a, b, c }) => 1 - a - b - c,
    through: (passage) => {
      const time = durationOf(passage);
      const stretches = passage
        .filter(({ duration }) => duration > 0)
        .map(({ duration, temperature }) => ({
          share: duration / time,
          rates: {
            first: rateOf(law.first, law.referenceTemperature, temperature, corner),
            second: rateOf(law.second, law.referenceTemperature, temperature, corner),
            firstYield: law.first.solidYield,
            secondYield: law.second.solidYield,
          },
        }));
      return (state, age) => stretches.reduce((now, { share, rates }) => stepSeries(now, rates, share * age), state);
    },
  };
}

function extentForm(law: Exclude<KineticLaw, TwoStepLaw>): (reducedTime: number) => number {
  if (!('kind' in law)) return (reducedTime) => extentOfOrder(law.order, reducedTime);
  if (law.kind === 'scission') return (reducedTime) => reducedTime;
  // the lag shortens with the rate: a law at the quick end of its range keeps its shape in reduced time
  const lag = law.rateAtReference.value * law.lagAtReference;
  return (reducedTime) => extentWithLag(reducedTime, lag);
}

/**
 * Makes a law ready.
 * Exact for stretches of constant temperature: order, scission and lag laws depend on X = integral of k dt alone, which
 * adds up over parts in any order; two steps in series are solved stretch by stretch.
 */
export function lawRun(law: KineticLaw, corner: Corner): LawRun {
  if ('kind' in law && law.kind === 'twoStep') return seriesRun(law, corner);
  const form = extentForm(law);
  return {
    fresh: { a: 0, b: 0, c: 0 },
    extentOf: ({ a }) => form(a),
    through: (passage) => {
      const rate = meanRate(law, passage, corner);
      return (state, age) => ({ a: state.a + rate * age, b: 0, c: 0 });
    },
  };
}
