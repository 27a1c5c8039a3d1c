import { expect, test } from 'vitest';
import { comparePredictions, compareTable } from '../../../core/compare/compare.ts';
import { predict } from '../../../core/prediction/predict.ts';
import type { Prediction } from '../../../core/prediction/types.ts';
import { loadDesign } from '../../helpers/projects.ts';

const base = predict(loadDesign('demo', 'C'), { curvePoints: 0 });
const withOutput = (factor: number): Prediction => ({
  ...base,
  revisionId: `x${factor}`,
  output: { ...base.output, volumeFlow: base.output.volumeFlow * factor },
});
const verdicts = (predictions: readonly Prediction[], id: string) =>
  comparePredictions(predictions)
    .rows.find((row) => row.id === id)
    ?.values.map(({ verdict }) => verdict);

test('calls differences below the model’s error by name, larger ones better or worse', () => {
  expect(verdicts([base, base, withOutput(1.03), withOutput(1.2), withOutput(0.8)], 'volumeFlow')).toEqual([
    'same',
    'same',
    'smaller than the model error',
    'better',
    'worse',
  ]);
});

test('less residence is better; a missing number is unknown', () => {
  const slower: Prediction = { ...base, residence: { ...base.residence, mean: base.residence.mean * 1.5 } };
  expect(verdicts([base, slower], 'mean')).toEqual(['same', 'worse']);
  const colourless: Prediction = { ...base, colour: { ...base.colour, dE00Mean: null } };
  expect(verdicts([base, colourless], 'dE00Mean')).toEqual(['same', 'unknown']);
  expect(verdicts([colourless, base], 'dE00Mean')).toEqual(['unknown', 'unknown']);
});

test('change is relative to the first', () => {
  const row = comparePredictions([base, withOutput(1.2)]).rows.find(({ id }) => id === 'volumeFlow');
  expect(row?.values[1].change).toBeCloseTo(0.2, 12);
});

test('the account names what gains, what loses, and says when nothing exceeds the error', () => {
  const [same] = comparePredictions([base, { ...base, revisionId: 'twin' }]).account;
  expect(same).toContain('better in nothing that exceeds the model error');
  const [more] = comparePredictions([base, withOutput(1.3)]).account;
  expect(more).toContain('melt output');
});

test('the table has a column for each revision and explains its marks', () => {
  const text = compareTable(comparePredictions([base, withOutput(1.3)]));
  expect(text.split('\n')[0]).toMatch(/C\s+x1\.3/);
  expect(text).toMatch(/Melt output .*\+/);
  expect(text).toContain('smaller than the model error');
});

test('a machine that delivers nothing is not better in anything that only a flow has', () => {
  const none: Prediction = {
    ...base,
    revisionId: 'none',
    limit: 'grainFit',
    output: { ...base.output, flows: false, volumeFlow: 0, headPressure: 0 },
    residence: { ...base.residence, mean: 0, t95: 0, t99: 0 },
    drive: { ...base.drive, torque: 0 },
  };
  for (const pair of [
    [base, none],
    [none, base],
  ]) {
    for (const id of [
      'mean',
      't95',
      't99',
      'over3',
      'dE00Mean',
      'torque',
      'headPressure',
      'blockedPressure',
      'heater',
    ]) {
      expect(verdicts(pair, id)?.[1]).toBe('unknown');
    }
  }
  const comparison = comparePredictions([base, none]);
  expect(verdicts([base, none], 'volumeFlow')?.[1]).toBe('worse');
  expect(comparison.account[0]).toContain('none delivers nothing');
  expect(comparison.account[0]).toContain('better in nothing');
  expect(compareTable(comparison)).toMatch(/limited by .*grain against channel/);
  expect(compareTable(comparison)).not.toContain('grainFit');
});

test('the account keeps ΔE00 as it is written, and counts what it does not name', () => {
  const worse: Prediction = {
    ...base,
    revisionId: 'worse',
    residence: { ...base.residence, mean: 2 * base.residence.mean, t95: 2 * base.residence.t95 },
    colour: { ...base.colour, dE00Mean: 9, dE00Worst: 12 },
    drive: { ...base.drive, torque: 2 * base.drive.torque },
  };
  const [account] = comparePredictions([base, worse]).account;
  expect(account).toContain('mean colour shift, ΔE00 ');
  expect(account).toMatch(/worse in .* and 1 more/);
});

test('every mark of the table is explained under it', () => {
  const [legend] = compareTable(comparePredictions([base, base]))
    .split('\n')
    .slice(-1);
  for (const sign of ['+ ', '- ', '~ ', '* ', '= ']) expect(legend).toContain(sign);
});

test('survives predictions without flow', () => {
  const none = predict(loadDesign('pla-pellet-misfit'), { curvePoints: 0 });
  expect(compareTable(comparePredictions([none, base]))).not.toMatch(/NaN|Infinity/);
  expect(compareTable(comparePredictions([base, none]))).not.toMatch(/NaN|Infinity/);
});
