/** A small model with known answers, in place of the machine: feed limits at high speed, pumping at low. */

import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { FitTrial, TrialModel } from '../../../core/bench/fitTypes.ts';
import type { Factors } from '../../../core/design/calibrate.ts';
import type { Trial } from '../../../core/project/schema.ts';

/** A trial of the synthetic machine; grams and seconds do not matter to it. */
export const syntheticTrial = (id: string, screwSpeedRpm: number, celsius: number): Trial => ({
  id,
  date: '2026-01-01',
  revisionId: 'A',
  materialId: 'm',
  screwSpeedRpm,
  setTempsC: [celsius],
  seconds: 60,
  grams: 1,
});

/** kg/s, N m and dE00: feed below pumping above about 13 rpm with all factors 1. */
export const syntheticModel: TrialModel = (factors, { screwSpeedRpm: n, setTempsC: [celsius] }) => {
  const thick = factors.viscosity * Math.exp(-0.02 * (celsius - 180));
  const feed = factors.feed * factors.wallFriction ** 0.3 * (0.4 * n - 0.003 * n * n);
  const pumping = 0.36 * n * thick ** -0.1;
  const flow = Math.min(feed, pumping);
  return {
    massFlow: flow / 6e4,
    torque: 3 * thick * n ** 0.4,
    dE00: (factors.colourRate * 60 * Math.exp(0.03 * (celsius - 180))) / flow,
    limit: feed < pumping ? 'feed' : 'pumping',
    residence: 60 / flow,
    sound: true,
  };
};

/** Normal numbers, the same for the same seed (Box and Muller 1958). */
export function normals(seed: number): () => number {
  const random = xoroshiro128plus(seed);
  const unit = () => uniformFloat64(random);
  return () => Math.sqrt(-2 * Math.log(1 - unit())) * Math.cos(2 * Math.PI * unit());
}

/** Measured trials of a machine with true factors: noise as ln, and each tenth trial wrong by a factor of 1.8. */
export function measuredTrials(truth: Factors, trials: readonly Trial[], noise: number, seed: number): FitTrial[] {
  const normal = normals(seed);
  return trials.map((trial, i) => {
    const figures = syntheticModel(truth, trial);
    const wrong = i % 10 === 3 ? 1.8 : 1;
    const seen = (value: number | null, share: number, by: number) =>
      (value ?? 1) * Math.exp(noise * share * normal()) * by;
    return {
      trial,
      measured: {
        massFlow: seen(figures?.massFlow ?? 0, 1, wrong),
        torque: seen(figures?.torque ?? 0, 3, 1 / wrong),
        dE00: seen(figures?.dE00 ?? 0, 5, wrong),
      },
    };
  });
}
