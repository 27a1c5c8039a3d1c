/** Checks of the search: published problems with known optima, values of sweeps. */

import { onStepWithin } from '../search/steps.ts';
import { axisValues } from '../search/sweep.ts';
import { bestOf, branin, hartmann, leastOf, problem24, problem35 } from './searchProblems.ts';
import type { Check } from './types.ts';

const hock = 'W. Hock & K. Schittkowski, Test Examples for Nonlinear Programming Codes, 1981';
/** Values from 1 to 10, both counted, at equal ratios. */
const decade = (steps: number) => axisValues({ input: 'x', from: 1, to: 10, steps, scale: 'log' });

/** All checks of the search. */
export const searchChecks: readonly Check[] = [
  {
    id: 'search.branin',
    stage: 'search',
    quantity: 'Least value of Branin’s function, found in 400 designs on steps of 0.01',
    unit: '',
    expected: 0.397887,
    limit: 1e-3,
    measure: 'absolute',
    kind: 'published',
    source: 'Documentation of scikit-optimize, benchmarks; also the Virtual Library of Simulation Experiments',
    got: () => leastOf(branin),
  },
  {
    id: 'search.hartmann',
    stage: 'search',
    quantity: 'Least value of Hartmann’s function of three variables, found in 600 designs on steps of 0.001',
    unit: '',
    expected: -3.86278,
    limit: 1e-4,
    measure: 'absolute',
    kind: 'published',
    source: 'Sources of math-test-functions (a public crate), after the Virtual Library of Simulation Experiments',
    got: () => leastOf(hartmann),
  },
  {
    id: 'search.hartmannPlace',
    stage: 'search',
    quantity: 'Second variable at the least value of Hartmann’s function, steps of 0.001',
    unit: '',
    expected: 0.555649,
    limit: 2e-3,
    measure: 'absolute',
    kind: 'published',
    source: 'Sources of math-test-functions (a public crate), after the Virtual Library of Simulation Experiments',
    got: () => bestOf(hartmann).changes[1]?.value ?? Number.NaN,
  },
  {
    id: 'search.problem24',
    stage: 'search',
    quantity: 'Limited optimum of problem 24, two variables and three limits',
    unit: '',
    expected: -1,
    limit: 0.01,
    measure: 'absolute',
    kind: 'fromMemory',
    source: `${hock}, problem 24`,
    got: () => leastOf(problem24),
  },
  {
    id: 'search.problem35',
    stage: 'search',
    quantity: 'Limited optimum of problem 35, three variables and one limit',
    unit: '',
    expected: 1 / 9,
    limit: 0.01,
    measure: 'absolute',
    kind: 'fromMemory',
    source: `${hock}, problem 35`,
    got: () => leastOf(problem35),
  },
  {
    id: 'search.preferredNumbers',
    stage: 'search',
    quantity: 'Third of six sweep values from 1 to 10 at equal ratios',
    unit: '',
    expected: 2.5,
    limit: 0.01,
    measure: 'relative',
    kind: 'published',
    source: 'ISO 3, series R5 (as in BS 2045 on an engineering page): 1, 1.6, 2.5, 4, 6.3, 10, rounded within 1.3 %',
    got: () => decade(6)[2] ?? Number.NaN,
  },
  {
    id: 'search.makeableStep',
    stage: 'search',
    quantity: 'Nearest makeable diameter to 7.13 mm in steps of 0.05 mm, 7.2 mm at most',
    unit: 'mm',
    expected: 7.15,
    limit: 1e-9,
    measure: 'absolute',
    kind: 'exact',
    source: 'rounding to whole steps',
    got: () => onStepWithin(7.13, 0.05, 5, 7.2),
  },
];
