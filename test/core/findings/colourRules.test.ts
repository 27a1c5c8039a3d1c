/** Findings of colour: each speaks past its limit and is silent before. */

import { describe, expect, it } from 'vitest';
import { colourRules } from '../../../core/findings/colourRules.ts';
import type { FindingContext } from '../../../core/findings/context.ts';
import { drivenPoint } from '../../../core/prediction/drivenPoint.ts';
import { createMachine } from '../../../core/prediction/machine.ts';
import { predict } from '../../../core/prediction/predict.ts';
import type { ColourPrediction, LawOutcome, MolarMassLoss, Prediction } from '../../../core/prediction/types.ts';
import { loadDesign } from '../../helpers/projects.ts';

const design = loadDesign('demo', 'C');
const prediction = predict(design, { curvePoints: 0 });
const machine = createMachine(design, 8);
const context: FindingContext = { design, machine, driven: drivenPoint(machine), prediction };
const withPrediction = (change: Partial<Prediction>): FindingContext => ({
  ...context,
  prediction: { ...prediction, ...change },
});
const withColour = (change: Partial<ColourPrediction>) =>
  withPrediction({ colour: { ...prediction.colour, ...change } });
const rule = (code: string, given: FindingContext) => {
  const found = colourRules.find((own) => own.code === code);
  if (!found) throw new Error(code);
  return found.check(given);
};

const origin: ColourPrediction['origin'] = [
  { part: 'channel', time: 70, temperature: 455, share: 0.7 },
  { part: 'nozzle', time: 12, temperature: 463, share: 0.3 },
];
const limit = design.process.acceptableDeltaE;

describe('origin', () => {
  it('names the part that gives most once the worst streak is past what is accepted', () => {
    expect(rule('colour-origin', withColour({ origin, dE00Worst: 0.99 * limit }))).toBeNull();
    const got = rule('colour-origin', withColour({ origin, dE00Worst: 1.01 * limit }));
    expect(got).toMatchObject({ where: 'channel', value: 0.7 });
    expect(got?.saw).toContain('30 % from the nozzle');
    expect(rule('colour-origin', withColour({ origin: [], dE00Worst: 2 * limit }))).toBeNull();
  });
});

describe('bleed', () => {
  const bleed = (dE00Streak: number): ColourPrediction['bleed'] => [
    {
      ...{
        part: 'tip',
        where: 'ledge',
        z: 0.16,
        volume: 1e-8,
        held: 400,
        extent: 9,
        lab: [60, 9, 30],
        srgb: '#aa8855',
      },
      ...{ dE00: 9, share: 0.01, shareLow: 0.005, dE00Mixed: 1, dE00Added: 0.1, dE00Streak, dE00StreakHigh: 20 },
    },
  ];

  it('speaks of a streak past what is accepted', () => {
    expect(rule('spot-bleeds', withColour({ bleed: bleed(0.99 * limit) }))).toBeNull();
    const got = rule('spot-bleeds', withColour({ bleed: bleed(1.01 * limit) }));
    expect(got).toMatchObject({ z: 0.16, limit });
    expect(got?.saw).toContain('0.5 % to 1 % of the stream');
    expect(rule('spot-bleeds', withColour({ bleed: [] }))).toBeNull();
  });
});

describe('molar mass', () => {
  const outcome = (shareMean: number | null, shareWorst: number | null): LawOutcome => ({
    ...{ id: 's', observed: 'scission', kind: 'scission', drivesColour: false, extentMean: 1e-4, extentWorst: 2e-4 },
    ...{ means: 'Molar mass falls.', outside: null },
    molarMass: { shareMean, shareWorst } as MolarMassLoss,
  });
  const mass = (shareMean: number | null, shareWorst: number | null) =>
    rule('molar-mass-loss', withColour({ laws: [outcome(1, 1), outcome(shareMean, shareWorst)] }));

  it('notes weak streaks, warns of a weak whole, is silent where not known', () => {
    expect(mass(0.95, 0.91)).toBeNull();
    expect(mass(0.95, 0.89)).toMatchObject({ severity: 'note', value: 0.89, limit: 0.9 });
    expect(mass(0.79, 0.6)).toMatchObject({ severity: 'warn', value: 0.79, limit: 0.8 });
    expect(mass(null, null)).toBeNull();
  });
});

describe('range of the law', () => {
  const measured = (validFrom: number, validTo: number): FindingContext => {
    const degradation = design.material.degradation.map((law) => ({ ...law, validFrom, validTo }));
    return { ...context, design: { ...design, material: { ...design.material, degradation } } };
  };

  it('names the end that is passed', () => {
    expect(rule('colour-extrapolated', measured(400, 500))).toBeNull();
    expect(rule('colour-extrapolated', measured(400, 440))).toMatchObject({ limit: 440, unit: 'K' });
    expect(rule('colour-extrapolated', measured(480, 500))).toMatchObject({ limit: 480 });
  });
});

describe('slow print', () => {
  const demand = (share: number) =>
    withPrediction({ print: { ...prediction.print, meanDemand: share * prediction.output.volumeFlow } });

  it('tells dwell and colour at the mean demand, and warns where only then it is too dark', () => {
    expect(rule('slow-print-darkens', demand(1))).toBeNull();
    expect(rule('slow-print-darkens', demand(0.9))).toBeNull();
    const got = rule('slow-print-darkens', demand(0.05));
    expect(got).toMatchObject({ severity: 'warn', limit });
    expect(got?.value as number).toBeGreaterThan(limit);
    expect(got?.saw).toContain('slow and fast layers differ');
  });

  it('has nothing to say without demand or colour', () => {
    expect(rule('slow-print-darkens', demand(0))).toBeNull();
    expect(rule('slow-print-darkens', withColour({ dE00Mean: null }))).toBeNull();
  });
});

describe('changing over', () => {
  const washout = (washout999: number) => withPrediction({ residence: { ...prediction.residence, washout999 } });

  it('tells time and grams past half an hour', () => {
    expect(rule('change-over-long', washout(1799))).toBeNull();
    const got = rule('change-over-long', washout(2400));
    expect(got).toMatchObject({ value: 2400, limit: 1800 });
    expect(got?.saw).toMatch(/40 min and .* g until/);
    expect(got?.saw).toContain('darkest known colour');
  });
});
