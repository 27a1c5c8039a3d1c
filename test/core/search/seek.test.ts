import { describe, expect, test } from 'vitest';
import {
  baseOf,
  type SearchProblem as Problem,
  problem24,
  problem35,
  stated,
} from '../../../core/checks/searchProblems.ts';
import { meritOf, penalised } from '../../../core/search/merit.ts';
import { seekResult } from '../../../core/search/result.ts';
import { seekGoal } from '../../../core/search/seek.ts';
import { sensitivityCandidates, sensitivityRows } from '../../../core/search/sensitivity.ts';
import type { Evaluated, SeekSpec } from '../../../core/search/types.ts';

/** Runs a search; `order` is in what order a batch is evaluated, which must not matter. */
function run(problem: Problem, spec: SeekSpec = problem.spec, order: 'forwards' | 'backwards' = 'forwards') {
  const base = baseOf(problem);
  const seek = seekGoal(spec, base);
  const found: Evaluated[] = [];
  const batches: number[] = [];
  for (let next = seek.next(); !next.done; ) {
    const { candidates } = next.value;
    const at = candidates.map((_, i) => (order === 'forwards' ? i : candidates.length - 1 - i));
    const batch: Evaluated[] = [];
    for (const i of at) batch[i] = problem.evaluate(candidates[i] ?? []);
    batches.push(batch.length);
    found.push(...batch);
    next = seek.next(batch);
  }
  return { base, found, batches, result: seekResult(spec, base, found) };
}

/** The values found are checked against the published ones in core/checks/search.ts. */
describe('a search finds the limited optimum of published problems on makeable steps', () => {
  test.each([
    ['24', problem24, [3, Math.sqrt(3)]],
    ['35', problem35, [4 / 3, 7 / 9, 4 / 9]],
  ])('problem %s', (_, problem, best) => {
    const { result, found } = run(problem);
    const [first] = result.candidates;
    expect(first?.meets).toBe(true);
    first?.design.changes.forEach((change, i) => {
      expect(Math.abs(change.value - (best[i] ?? 0))).toBeLessThan(0.15);
      expect(Math.abs(change.value / 0.01 - Math.round(change.value / 0.01))).toBeLessThan(1e-6);
    });
    expect(first?.limits.some(({ state }) => state === 'binds')).toBe(true);
    expect(result.account.join(' ')).toMatch(/Limits that bind: /);
    expect(found.length).toBeLessThanOrEqual(problem.spec.budget);
    const keys = found.map(({ changes }) => JSON.stringify(changes));
    expect(new Set(keys).size).toBe(keys.length);
  });
});

test('the order in which a batch is evaluated changes nothing, and batches hold more than one design', () => {
  const forwards = run(problem24);
  const backwards = run(problem24, problem24.spec, 'backwards');
  expect(backwards.result).toEqual(forwards.result);
  expect(Math.max(...forwards.batches)).toBeGreaterThan(6);
});

test('a stopped search ranks what it has, and a budget is kept to the design', () => {
  const { base, found } = run(problem24);
  const part = seekResult(problem24.spec, base, found.slice(0, 20));
  expect(part.evaluated).toBe(20);
  expect(part.candidates.length).toBeGreaterThan(0);
  expect(run(problem24, { ...problem24.spec, budget: 37 }).found).toHaveLength(37);
});

test('candidates lie apart and are ordered: those that keep all limits first', () => {
  const { candidates } = run(problem24).result;
  expect(candidates.length).toBeGreaterThan(3);
  const meets = candidates.map(({ meets }) => meets);
  expect(meets).toEqual([...meets].sort((a, b) => Number(b) - Number(a)));
  candidates.forEach((one, i) => {
    for (const other of candidates.slice(0, i)) {
      const shares = one.design.changes.map(
        ({ value }, k) => Math.abs(value - (other.design.changes[k]?.value ?? 0)) / (k === 0 ? 6 : 3),
      );
      expect(Math.max(...shares)).toBeGreaterThanOrEqual(0.08 - 1e-9);
    }
  });
});

test('where nothing meets all limits, the nearest is said with how far it is missed', () => {
  const spec: SeekSpec = {
    ...problem24.spec,
    limits: [{ figure: 'torque', sense: 'atLeast', bound: 22 }],
    budget: 120,
  };
  const { result } = run(problem24, spec);
  // x1 + √3 x2 reaches 6 + 3 √3 = 11.2 within the bounds, about half of 22
  expect(result.meeting).toBe(0);
  expect(result.candidates[0]?.limits[0]).toMatchObject({ state: 'unmet' });
  expect(result.candidates[0]?.limits[0]?.beyond).toBeCloseTo(1 - (6 + 3 * Math.sqrt(3)) / 22, 2);
  expect(result.account.join(' ')).toMatch(/No candidate meets all limits.*missed by 49 %/s);
  expect(result.candidates[0]?.atEnd.map(({ end }) => end)).toEqual(['high', 'high']);
});

test('holes cost little and are never candidates; a search of holes alone says so', () => {
  const holed: Problem = {
    ...problem24,
    evaluate: (changes) => {
      const design = problem24.evaluate(changes);
      return (changes[0]?.value ?? 0) > 4 ? { ...design, figures: {}, hole: 'too long' } : design;
    },
  };
  const { result } = run(holed);
  expect(result.holes).toBeGreaterThan(0);
  expect(result.holes).toBeLessThan(result.evaluated / 2);
  expect(result.candidates.every(({ design }) => design.hole === null)).toBe(true);
  expect(Math.abs((result.candidates[0]?.design.figures.t95 ?? 0) + 1)).toBeLessThan(0.02);
  const none: Problem = { ...problem24, evaluate: (changes) => ({ ...stated(changes, {}), hole: 'no' }) };
  const empty = run(none, { ...none.spec, budget: 60 }).result;
  expect(empty.evaluated).toBeGreaterThan(20);
  expect(empty).toMatchObject({ holes: empty.evaluated, candidates: [] });
  expect(empty.account).toEqual(['No candidate delivers anything: all were refused or stood still.']);
});

test('the most of a figure is sought where most is wanted, and a gain within the model’s error is called that', () => {
  const spec: SeekSpec = { ...problem35.spec, objective: { figure: 'torque', sense: 'most' }, budget: 150 };
  const { result } = run(problem35, { ...spec, limits: [{ figure: 'torque', sense: 'atMost', bound: 2.1 }] });
  // base: 0.5 + 0.5 + 1 = 2; at most 2.1 is 5 % more, under the 10 % to which torque is known
  expect(result.candidates[0]?.design.figures.torque).toBeCloseTo(2.1, 5);
  expect(result.account[0]).toMatch(/^Most torque: .*smaller than the model’s error/);
});

test('a maker’s step on each input tells what moves and which limits break', () => {
  const { spec } = problem24;
  const design = problem24.evaluate([
    { input: 'x1', value: 3 },
    { input: 'x2', value: 1.73 },
  ]);
  const steps = sensitivityCandidates(spec, design);
  expect(steps.map((changes) => changes.map(({ value }) => value))).toEqual([
    [2.99, 1.73],
    [3.01, 1.73],
    [3, 1.72],
    [3, 1.74],
  ]);
  const rows = sensitivityRows(spec, design, steps.map(problem24.evaluate));
  expect(rows[0]?.sides[0]?.breaks).toEqual(['Supply over demand']);
  expect(rows[1]?.sides[1]?.breaks).toEqual(['Supply over demand', 'Torque']);
  expect(rows[1]?.sides[0]?.change).toBeCloseTo((1.72 / 1.73) ** 3 - 1, 6);
});

describe('limits far off', () => {
  const unmelted = { figure: 'unmelted', sense: 'atMost', bound: 0.005 } as const;
  const spec: SeekSpec = { ...problem24.spec, limits: [unmelted] };
  const cost = (figures: Evaluated['figures'], hole: string | null = null) =>
    penalised(meritOf(spec, 1, { ...stated([], figures), hole }));

  test('cost more the further off they are, at any distance, and a hole costs most', () => {
    const shares = [0.004, 0.006, 0.03, 0.5, 1].map((share) => cost({ t95: 1, unmelted: share }));
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(new Set(shares).size).toBe(shares.length);
    expect(cost({ t95: 1, unmelted: null })).toBeGreaterThan(cost({ t95: 1, unmelted: 1 }));
    expect(cost({}, 'refused')).toBeGreaterThan(cost({ t95: null, unmelted: null }));
  });

  test('weigh more than an objective that is many times better', () => {
    expect(cost({ t95: 0.01, unmelted: 0.006 })).toBeGreaterThan(cost({ t95: 1, unmelted: 0.004 }));
  });

  test('without a number are said to have none, and rank behind every number; an unloaded root keeps its limit', () => {
    const limits = [unmelted, { figure: 'rootMargin', sense: 'atLeast', bound: 1.5 }] as const;
    const both: SeekSpec = { ...spec, limits };
    const at = (x1: number, unmeltedShare: number | null) =>
      stated([{ input: 'x1', value: x1 }], { t95: 1, unmelted: unmeltedShare, rootMargin: null });
    const none = seekResult(both, at(1, 0.5), [at(2, null)]);
    expect(none.candidates[0]?.limits.map(({ beyond, state }) => [beyond, state])).toEqual([
      [null, 'unmet'],
      [0, 'kept'],
    ]);
    expect(none.meeting).toBe(0);
    expect(none.account.join(' ')).toMatch(
      /not molten at the last flight at most 0\.5 % cannot be told, as it has no number/,
    );
    expect(none.account.join(' ')).not.toMatch(/missed by/);
    const two = seekResult(both, at(1, 0.5), [at(2, null), at(4, 1)]);
    expect(two.candidates[0]?.design.changes[0]?.value).toBe(4);
    expect(seekResult(both, at(1, 0.5), [at(2, 0)]).meeting).toBe(1);
  });
});

test('a first candidate that is worse than the present design is called that', () => {
  const limits = [{ figure: 'torque', sense: 'atMost', bound: 3 }] as const;
  const spec: SeekSpec = { ...problem24.spec, limits };
  const at = (t95: number, torque: number) => stated([{ input: 'x1', value: t95 / 10 }], { t95, torque });
  const said = (now: Evaluated, found: Evaluated) => seekResult(spec, now, [found]).account[0];
  expect(said(at(40, 2), at(55, 2))).toMatch(
    /55 s, against 40 s now: worse than now, and the present design keeps all/,
  );
  expect(said(at(40, 4), at(55, 2))).toMatch(/worse than now, but the present design does not keep all limits\.$/);
  expect(said(at(55, 2), at(40, 2))).toMatch(/40 s, against 55 s now\.$/);
});

test('an input at the low end of its range is told', () => {
  const limits = [] as const;
  const design = stated(
    [
      { input: 'x1', value: 0 },
      { input: 'x2', value: 1 },
    ],
    { t95: 1 },
  );
  const { candidates, account } = seekResult({ ...problem24.spec, limits }, design, [design]);
  expect(candidates[0]?.atEnd).toEqual([{ input: 'x1', label: 'x1', end: 'low' }]);
  expect(account.join(' ')).toMatch(/At the end of its range: x1 at its lowest\./);
});

test('of two limits on one figure only the one that was kept can break', () => {
  const limits = [
    { figure: 'torque', sense: 'atLeast', bound: 2 },
    { figure: 'torque', sense: 'atMost', bound: 1 },
  ] as const;
  const spec: SeekSpec = { ...problem24.spec, inputs: problem24.spec.inputs.slice(0, 1), limits };
  const at = (torque: number) => stated([{ input: 'x1', value: torque }], { t95: 1, torque });
  // at most 1 was never kept, so that going from 2.5 to 2.6 breaks nothing and going to 1.9 the lower limit alone
  const [row] = sensitivityRows(spec, at(2.5), [at(1.9), at(2.6)]);
  expect(row?.sides.map(({ breaks }) => breaks)).toEqual([['Torque'], []]);
});
