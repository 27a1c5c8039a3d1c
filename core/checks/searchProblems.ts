/** Published problems of optimisation with known answers, as stand-ins for a prediction. */

import { seekResult } from '../search/result.ts';
import { seekGoal } from '../search/seek.ts';
import type { Evaluated, SearchChange, SeekSpec } from '../search/types.ts';

/** A problem: what is varied and wanted, and the function. */
export interface SearchProblem {
  readonly spec: SeekSpec;
  evaluate(changes: readonly SearchChange[]): Evaluated;
}

const at = (changes: readonly SearchChange[], input: string): number =>
  changes.find((change) => change.input === input)?.value ?? 0;

/** A design with figures as they are told. */
export const stated = (changes: readonly SearchChange[], figures: Evaluated['figures']): Evaluated => ({
  changes,
  figures,
  findings: 0,
  limit: 'pumping',
  hole: null,
  fields: 'formula',
});

/** An input between bounds. */
const input = (name: string, value: number, [low, high]: readonly [number, number], step: number) => ({
  input: name,
  label: name,
  unit: '',
  value,
  low,
  high,
  step,
});

const least = { figure: 't95', sense: 'least' } as const;

/** A smooth function of x1, x2, … to be made least, without limits. */
const free = (inputs: SeekSpec['inputs'], budget: number, f: (x: readonly number[]) => number): SearchProblem => ({
  spec: { inputs, objective: least, limits: [], budget },
  evaluate: (changes) => stated(changes, { t95: f(inputs.map((one) => at(changes, one.input))) }),
});

/**
 * W. Hock & K. Schittkowski, Test Examples for Nonlinear Programming Codes, 1981 (from memory), problem 24: least
 * ((x1-3)² - 9) x2³/(27 √3) under three linear limits; -1 at (3, √3).
 */
export const problem24: SearchProblem = {
  spec: {
    inputs: [input('x1', 1, [0, 6], 0.01), input('x2', 0.5, [0, 3], 0.01)],
    objective: least,
    limits: [
      { figure: 'margin', sense: 'atLeast', bound: 0 },
      { figure: 'torque', sense: 'atMost', bound: 6 },
    ],
    budget: 500,
  },
  evaluate(changes) {
    const [x1, x2] = [at(changes, 'x1'), at(changes, 'x2')];
    const root = Math.sqrt(3);
    return stated(changes, {
      t95: (((x1 - 3) ** 2 - 9) * x2 ** 3) / (27 * root),
      margin: x1 / root - x2,
      torque: x1 + root * x2,
    });
  },
};

/** The same, problem 35: a convex quadratic of three variables under one linear limit; 1/9 at (4/3, 7/9, 4/9). */
export const problem35: SearchProblem = {
  spec: {
    inputs: ['x1', 'x2', 'x3'].map((name) => input(name, 0.5, [0, 3], 0.01)),
    objective: least,
    limits: [{ figure: 'torque', sense: 'atMost', bound: 3 }],
    budget: 700,
  },
  evaluate(changes) {
    const [x, y, z] = [at(changes, 'x1'), at(changes, 'x2'), at(changes, 'x3')];
    const value = 9 - 8 * x - 6 * y - 4 * z + 2 * x * x + 2 * y * y + z * z + 2 * x * y + 2 * x * z;
    return stated(changes, { t95: value, torque: x + y + 2 * z });
  },
};

/** F. H. Branin 1972: three minima of 0.397887. */
export const branin = free(
  [input('x1', 1, [-5, 10], 0.01), input('x2', 13, [0, 15], 0.01)],
  400,
  ([x = 0, y = 0]) =>
    (y - (5.1 * x * x) / (4 * Math.PI ** 2) + (5 * x) / Math.PI - 6) ** 2 +
    10 * (1 - 1 / (8 * Math.PI)) * Math.cos(x) +
    10,
);

const hartmannRows = [
  [1, 3, 30, 0.3689, 0.117, 0.2673],
  [1.2, 0.1, 35, 0.4699, 0.4387, 0.747],
  [3, 3, 30, 0.1091, 0.8732, 0.5547],
  [3.2, 0.1, 35, 0.0381, 0.5743, 0.8828],
] as const;

/** Hartmann’s function of three variables: four minima, the least -3.86278. */
export const hartmann = free(
  ['x1', 'x2', 'x3'].map((name) => input(name, 0.5, [0, 1], 0.001)),
  600,
  ([x = 0, y = 0, z = 0]) =>
    hartmannRows.reduce(
      (sum, [c, a, b, p, q, r]) => sum - c * Math.exp(-a * (x - p) ** 2 - 10 * (y - q) ** 2 - b * (z - r) ** 2),
      0,
    ),
);

/** The present design of a problem. */
export const baseOf = ({ spec, evaluate }: SearchProblem): Evaluated =>
  evaluate(spec.inputs.map(({ input: name, value }) => ({ input: name, value })));

/** The best design that a search finds. */
export function bestOf(problem: SearchProblem): Evaluated {
  const base = baseOf(problem);
  const seek = seekGoal(problem.spec, base);
  const found: Evaluated[] = [];
  for (let next = seek.next(); !next.done; ) {
    const batch = next.value.candidates.map((changes) => problem.evaluate(changes));
    found.push(...batch);
    next = seek.next(batch);
  }
  const [first] = seekResult(problem.spec, base, found).candidates;
  if (!first?.meets) throw new Error('no candidate keeps the limits');
  return first.design;
}

/** Least value that a search finds. */
export const leastOf = (problem: SearchProblem): number => bestOf(problem).figures.t95 ?? Number.NaN;
