import { describe, expect, test } from 'vitest';
import { betterForWhat, type TopicAccount } from '../../../core/compare/account.ts';
import { comparePredictions, compareTable } from '../../../core/compare/compare.ts';
import { predict } from '../../../core/prediction/predict.ts';
import type { Prediction } from '../../../core/prediction/types.ts';
import { loadDesign } from '../../helpers/projects.ts';

const base = predict(loadDesign('demo', 'C'), { curvePoints: 0 });

interface Invented {
  /** mm³/s */
  readonly flow?: number;
  readonly torqueMargin?: number | null;
  readonly t95?: number;
  readonly dE?: number | null;
  readonly over3?: number;
  readonly leastRootMm?: number;
  readonly flows?: boolean;
}

/** A prediction of an invented revision: that of the demo with the deciding numbers replaced. */
function invented(id: string, given: Invented = {}): Prediction {
  const { flow = 10, torqueMargin = 2, t95 = 200, dE = 5, over3 = 0.1, leastRootMm = 10, flows = true } = given;
  return {
    ...base,
    revisionId: id,
    output: { ...base.output, flows, volumeFlow: flow * 1e-9 },
    drive: { ...base.drive, motorMargin: torqueMargin },
    residence: { ...base.residence, t95 },
    colour: { ...base.colour, dE00Mean: dE },
    dead: { ...base.dead, fractionOver3: over3 },
    geometry: { ...base.geometry, leastRootDiameter: leastRootMm / 1000, sectionsLength: 0.15 },
  };
}

const topicOf = (predictions: readonly Prediction[], topic: string): TopicAccount => {
  const found = betterForWhat(predictions).topics.find((each) => each.topic === topic);
  if (!found) throw new Error(`no topic ${topic}`);
  return found;
};

describe('who is better for what', () => {
  test('more output, more torque reserve, less dwell, less colour, less dead melt, a stouter screw', () => {
    const better = { flow: 12, torqueMargin: 3, t95: 100, dE: 2, over3: 0.05, leastRootMm: 12 };
    const { topics } = betterForWhat([invented('A'), invented('B', better)]);
    expect(topics.map(({ topic, standing, best }) => [topic, standing, best])).toEqual(
      ['output', 'torque', 'dwell', 'colour', 'dead', 'making'].map((topic) => [topic, 'best', ['B']]),
    );
    expect(topics.map(({ lead }) => lead?.toFixed(3))).toEqual(['0.200', '0.500', '0.500', '0.600', '0.500', '0.167']);
  });

  test('the sentence names the best, its number, the lead and the next', () => {
    const { sentence } = topicOf([invented('A', { flow: 9 }), invented('B', { flow: 12 }), invented('C')], 'output');
    expect(sentence).toBe('For output B is best: 12 mm³/s, 20 % more than C (10 mm³/s).');
    const dwell = topicOf([invented('A'), invented('B', { t95: 100 })], 'dwell');
    expect(dwell.sentence).toBe('For dwell B is best: 100 s until 95 % has left, 50 % less than A (200 s).');
  });

  test('a tie at the head is a tie, and its lead is that of the weaker one', () => {
    const tied = topicOf(
      [invented('A', { flow: 12 }), invented('B', { flow: 11.8 }), invented('C', { flow: 8 })],
      'output',
    );
    expect(tied).toMatchObject({ standing: 'best', best: ['A', 'B'] });
    expect(tied.lead).toBeCloseTo(11.8 / 8 - 1, 12);
    expect(tied.sentence).toContain('A and B are alike and best');
  });

  test('where the second is as near to the next, both lead and none is called best', () => {
    const flows = [10, 9.6, 9.3].map((flow, i) => invented('ABC'.charAt(i), { flow }));
    const chain = topicOf(flows, 'output');
    expect(chain).toMatchObject({ standing: 'leading', best: [] });
    expect(chain.lead).toBeCloseTo(10 / 9.3 - 1, 12);
    expect(chain.sentence).toBe(
      "For output A and B lead; only A is beyond C by more than the model's error: 10 mm³/s, 7.5 % more than C (9.3 mm³/s).",
    );
    const { paragraph } = betterForWhat(flows);
    expect(paragraph).toContain(chain.sentence);
    expect(paragraph).not.toContain('no reason to prefer one');
  });

  test('of three at the head, the two beyond the next are named', () => {
    const flows = [10, 9.9, 9.6, 9.3].map((flow, i) => invented('ABCD'.charAt(i), { flow }));
    expect(topicOf(flows, 'output').sentence).toContain('A, B and C lead; only A and B are beyond D');
  });

  test('the order of the revisions does not matter', () => {
    const all = [invented('A', { flow: 9 }), invented('B', { flow: 12 }), invented('C', { dE: 3 })];
    const strip = (list: readonly Prediction[]) => betterForWhat(list).topics.map(({ best, lead }) => ({ best, lead }));
    expect(strip([...all].reverse())).toEqual(strip(all));
  });
});

describe('what the numbers do not decide', () => {
  test('a difference smaller than the model’s error is called that, with the error', () => {
    const close = topicOf([invented('A'), invented('B', { flow: 10.4 })], 'output');
    expect(close).toMatchObject({ standing: 'alike', best: [] });
    expect(close.sentence).toContain("smaller than the model's error of 5 %");
  });

  test('numbers that are alike still say what they count, and equal ones are said once', () => {
    const { topics } = betterForWhat([invented('A'), invented('B', { t95: 195 })]);
    const said = (wanted: string) => topics.find(({ topic }) => topic === wanted)?.sentence;
    expect(said('dwell')).toMatch(/\(B\) to .* s \(A\) until 95 % has left, smaller/);
    expect(said('torque')).toMatch(/^Torque reserve: [\d.]+ times the torque needed, the same\.$/);
  });

  test('where nothing exceeds it, that is all that is said', () => {
    const { topics, paragraph } = betterForWhat([invented('A'), invented('B', { flow: 10.3, t95: 195 })]);
    expect(topics.every(({ standing }) => standing === 'alike')).toBe(true);
    expect(paragraph).toContain('no reason to prefer one');
    expect(paragraph).not.toMatch(/is best/);
  });

  test('shifts of colour that no eye sees and traces of old melt decide nothing', () => {
    const faint = [invented('A', { dE: 0.2, over3: 0.001 }), invented('B', { dE: 0.7, over3: 0.004 })];
    expect(topicOf(faint, 'colour').sentence).toContain('less than an eye sees');
    expect(topicOf(faint, 'dead').sentence).toContain('less than 1 % of the melt');
    expect(topicOf([invented('A', { dE: 0.2 }), invented('B', { dE: 1.7 })], 'colour').best).toEqual(['A']);
  });

  test('a missing number is no number', () => {
    const blind = [invented('A', { dE: null }), invented('B')];
    expect(topicOf(blind, 'colour').standing).toBe('unknown');
    expect(betterForWhat(blind).paragraph).toContain('No two numbers to compare for colour.');
  });
});

describe('revisions without numbers', () => {
  const none = { ...invented('N', { flow: 0, flows: false, torqueMargin: null, leastRootMm: 14 }) };

  test('one that delivers nothing is said so, loses in output and is compared in making alone', () => {
    const { topics, paragraph } = betterForWhat([none, invented('A')]);
    expect(paragraph).toMatch(/^N delivers nothing/);
    expect(topics.map(({ standing }) => standing)).toEqual([
      'best',
      'unknown',
      'unknown',
      'unknown',
      'unknown',
      'best',
    ]);
    expect(topics[0]).toMatchObject({ best: ['A'], lead: null });
    expect(topics[0]?.sentence).toContain('N has 0 mm³/s');
    expect(topics[5]?.best).toEqual(['N']);
    expect(paragraph).not.toMatch(/NaN|Infinity|undefined/);
  });

  test('refused ones are named with their reason; one or none left is no comparison', () => {
    const refused = [{ id: 'R', reason: 'The root is wider than the bore.' }];
    const { topics, paragraph } = betterForWhat([invented('A')], refused);
    expect(topics).toEqual([]);
    expect(paragraph).toBe('R is refused and left out: The root is wider than the bore.');
    expect(betterForWhat([]).paragraph).toBe('');
    expect(betterForWhat([invented('A'), invented('B', { flow: 20 })], refused).paragraph).toContain('B is best');
  });
});

test('the comparison of any base carries the same answer, and the terminal prints it', () => {
  const pair = [invented('A'), invented('B', { flow: 20 })];
  const [first, second] = [comparePredictions(pair), comparePredictions(pair, 1)];
  expect(second.answer).toEqual(first.answer);
  expect(compareTable(first)).toContain(first.answer.paragraph);
});

test('another base turns the verdicts round and is named', () => {
  const pair = [invented('A'), invented('B', { flow: 20 })];
  const against = comparePredictions(pair, 1);
  const row = against.rows.find(({ id }) => id === 'volumeFlow');
  expect(row?.values.map(({ verdict }) => verdict)).toEqual(['worse', 'same']);
  expect(row?.values[0]?.change).toBeCloseTo(-0.5, 12);
  expect(against.account).toHaveLength(1);
  expect(against.account[0]).toMatch(/^A against B: .*worse in melt output 20 mm³\/s to 10 mm³\/s/);
  expect(compareTable(against).split('\n').at(-1)).toContain('against B.');
});
