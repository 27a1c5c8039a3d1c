/** Published problems with a known limited optimum, as stand-ins for a prediction. */

import type { Evaluated, SearchChange, SeekSpec } from '../../../core/search/types.ts';

/** Source: Hock and Schittkowski, Test Examples for Nonlinear Programming Codes, 1981; from memory. */
export interface Problem {
  readonly spec: SeekSpec;
  readonly best: readonly number[];
  readonly value: number;
  evaluate(changes: readonly SearchChange[]): Evaluated;
}

const at = (changes: readonly SearchChange[], input: string): number =>
  changes.find((change) => change.input === input)?.value ?? 0;

/** A design whose figures a test states. */
export const stated = (changes: readonly SearchChange[], figures: Evaluated['figures']): Evaluated => ({
  changes,
  figures,
  findings: 0,
  limit: 'pumping',
  hole: null,
  fields: 'formula',
});

const input = (name: string, value: number, high: number, step: number) => ({
  input: name,
  label: name,
  unit: '',
  value,
  low: 0,
  high,
  step,
});

/** Problem 24: least ((x1-3)² - 9) x2³ / (27 √3) under three linear limits; -1 at (3, √3). */
export const problem24: Problem = {
  spec: {
    inputs: [input('x1', 1, 6, 0.01), input('x2', 0.5, 3, 0.01)],
    objective: { figure: 't95', sense: 'least' },
    limits: [
      { figure: 'margin', sense: 'atLeast', bound: 0 },
      { figure: 'torque', sense: 'atMost', bound: 6 },
    ],
    budget: 500,
  },
  best: [3, Math.sqrt(3)],
  value: -1,
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

/** Problem 35: a convex quadratic of three variables under one linear limit; 1/9 at (4/3, 7/9, 4/9). */
export const problem35: Problem = {
  spec: {
    inputs: [input('x1', 0.5, 3, 0.01), input('x2', 0.5, 3, 0.01), input('x3', 0.5, 3, 0.01)],
    objective: { figure: 't95', sense: 'least' },
    limits: [{ figure: 'torque', sense: 'atMost', bound: 3 }],
    budget: 700,
  },
  best: [4 / 3, 7 / 9, 4 / 9],
  value: 1 / 9,
  evaluate(changes) {
    const [x, y, z] = [at(changes, 'x1'), at(changes, 'x2'), at(changes, 'x3')];
    const value = 9 - 8 * x - 6 * y - 4 * z + 2 * x * x + 2 * y * y + z * z + 2 * x * y + 2 * x * z;
    return stated(changes, { t95: value, torque: x + y + 2 * z });
  },
};

/** The present design of a problem. */
export const baseOf = ({ spec, evaluate }: Problem): Evaluated =>
  evaluate(spec.inputs.map(({ input: name, value }) => ({ input: name, value })));
