/** Samples gathered: quantiles, bands, influences. May be asked at any time, also before all samples are in. */

import { strengthsOf } from './influence.ts';
import { howToMeasure } from './labels.ts';
import { doubtOutputs } from './outputs.ts';
import type { DoubtPlan } from './sample.ts';
import { quantile, sortedFinite } from './statistics.ts';
import type {
  DoubtInput,
  DoubtSummary,
  NextMeasurement,
  OutputDoubt,
  OutputInfluences,
  SampleResult,
} from './types.ts';

const note =
  'Strength is the standardised coefficient of a regression on ranks (with few samples the rank correlation): it sees ' +
  'effects that rise or fall throughout. Bands hold what the stated ranges do, each taken as a triangle about its value ' +
  'and independent of the others; what no range is stated for is taken as known.';

const formulaWords =
  'All samples go by formulas: solved fields may shift the figures, but hardly the width of the bands.';
const scaledWords = 'All samples go by formulas; the bands of the figures are scaled to the figures shown.';

/** One column over the samples that gave results. */
const column = (results: readonly SampleResult[], of: (result: SampleResult) => number): Float64Array =>
  Float64Array.from(results, of);

/** By what a band is scaled so that it lies about the figure that is shown; 1 where that has no meaning. */
function shownOver(shown: number | undefined, nominal: number): number {
  const ratio = (shown ?? nominal) / nominal;
  return Number.isFinite(ratio) && ratio > 0 ? ratio : 1;
}

function outputDoubt(
  index: number,
  nominal: SampleResult,
  results: readonly SampleResult[],
  shown: ArrayLike<number> | undefined,
): OutputDoubt {
  const { id, label, unit } = doubtOutputs[index];
  const formula = nominal.outputs[index] ?? Number.NaN;
  const ratio = shownOver(shown?.[index], formula);
  const known = sortedFinite(column(results, ({ outputs }) => outputs[index] * ratio));
  return {
    id,
    label,
    unit,
    nominal: formula * ratio,
    q05: quantile(known, 0.05),
    q50: quantile(known, 0.5),
    q95: quantile(known, 0.95),
    known: known.length,
  };
}

function influencesOn(
  index: number,
  inputs: readonly DoubtInput[],
  results: readonly SampleResult[],
): OutputInfluences {
  const { id, label } = doubtOutputs[index];
  const usable = results.filter(({ outputs }) => Number.isFinite(outputs[index]));
  const { method, strength, noiseFloor, explained } = strengthsOf(
    inputs.map((_, input) => column(usable, ({ values }) => values[input])),
    column(usable, ({ outputs }) => outputs[index]),
  );
  const ranked = inputs
    .map((input, i) => ({
      path: input.path,
      label: input.label,
      strength: strength[i],
      aboveNoise: Math.abs(strength[i]) > noiseFloor,
    }))
    .filter((one) => Number.isFinite(one.strength))
    .sort((p, q) => Math.abs(q.strength) - Math.abs(p.strength));
  return { output: id, label, method, noiseFloor, explained, ranked };
}

/** Relative width of the band, so that outputs of different units can be weighed against each other; at most 1. */
function widthOf({ q05, q50, q95 }: OutputDoubt): number {
  const width = (q95 - q05) / Math.max(Math.abs(q50), Math.abs(q95), 1e-30);
  return Number.isFinite(width) ? Math.min(1, width) : 0;
}

/** Inputs by their share of the spread of all outputs, each output weighing by the width of its band. */
function nextMeasurements(outputs: readonly OutputDoubt[], influences: readonly OutputInfluences[]): NextMeasurement[] {
  const found = new Map<string, { label: string; weight: number; outputs: string[] }>();
  influences.forEach(({ ranked, label }, i) => {
    const above = ranked.filter(({ aboveNoise }) => aboveNoise);
    const whole = above.reduce((sum, { strength }) => sum + strength ** 2, 0);
    for (const one of above) {
      const entry = found.get(one.path) ?? { label: one.label, weight: 0, outputs: [] };
      const share = one.strength ** 2 / whole;
      entry.weight += share * widthOf(outputs[i]);
      if (share > 0.1) entry.outputs.push(label);
      found.set(one.path, entry);
    }
  });
  const total = [...found.values()].reduce((sum, { weight }) => sum + weight, 0);
  return [...found]
    .map(([path, { label, weight, outputs: moved }]) => ({
      path,
      label,
      share: total > 0 ? weight / total : 0,
      outputs: moved,
      how: howToMeasure(path),
    }))
    .sort((p, q) => q.share - p.share)
    .slice(0, 5);
}

function bandsOf(nominal: SampleResult, results: readonly SampleResult[]): DoubtSummary['curve'] {
  const same = results.filter(({ curve }) => curve.length === nominal.curve.length);
  const sorted = Array.from(nominal.curve, (_, i) => sortedFinite(column(same, ({ curve }) => curve[i])));
  const band = (share: number) => Float64Array.from(sorted, (values) => quantile(values, share));
  return { speed: nominal.speed, nominal: nominal.curve, q05: band(0.05), q50: band(0.5), q95: band(0.95) };
}

function failureCounts(results: readonly SampleResult[]): DoubtSummary['failures'] {
  const counts = new Map<string, number>();
  for (const { failure } of results) if (failure !== null) counts.set(failure, (counts.get(failure) ?? 0) + 1);
  return [...counts].map(([reason, count]) => ({ reason, count })).sort((p, q) => q.count - p.count);
}

/**
 * The study's answer from the samples that are there.
 * @param plan what was drawn
 * @param nominal sample -1
 * @param results other samples, any order and number; the answer does not depend on their order
 * @param shown figures as displayed, in the order of doubtOutputs, SI, such as those of solved fields: bands of the outputs
 * are scaled by their ratio to the nominal ones; the curve is not
 * @returns quantiles 5, 50 and 95 % over the samples that gave a number, failures counted beside them; NaN where no
 * sample gave one. With fewer than about 60 samples the outer quantiles rest on two or three of them.
 */
export function summariseDoubt(
  plan: DoubtPlan,
  nominal: SampleResult,
  results: readonly SampleResult[],
  shown?: ArrayLike<number>,
): DoubtSummary {
  const ordered = [...results].sort((p, q) => p.index - q.index);
  const good = ordered.filter(({ failure }) => failure === null);
  const outputs = doubtOutputs.map((_, i) => outputDoubt(i, nominal, good, shown));
  const influences = doubtOutputs.map((_, i) => influencesOn(i, plan.inputs, good));
  return {
    fields: 'formula',
    samples: plan.samples,
    done: ordered.length,
    failed: ordered.length - good.length,
    failures: failureCounts(ordered),
    outputs,
    curve: bandsOf(nominal, good),
    influences,
    measureNext: nextMeasurements(outputs, influences),
    note: `${note} ${shown ? scaledWords : formulaWords}`,
  };
}
