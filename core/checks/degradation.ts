/** Checks of degradation: rates, extents, molar mass; colour is in a file of its own. */

import { activationBetween, rateConstant } from '../age/arrhenius.ts';
import { molarMassAfter } from '../age/kinetics.ts';
import { colourChecks } from './colour.ts';
import { extentAfter, polylactide, ramp, secondOrder, willow } from './degradationCases.ts';
import type { Check } from './types.ts';

/** All checks of the degradation. */
export const degradationChecks: readonly Check[] = [
  {
    id: 'degradation.activationFromTwoRates',
    stage: 'degradation',
    quantity: 'Activation energy from rates of 3.2e-6 at 298 K and 4.2e-5 at 398 K',
    unit: 'kJ/mol',
    expected: 25.387,
    limit: 1e-4,
    measure: 'relative',
    kind: 'published',
    source: 'Question on socratic.org (a2fab) with its answer worked out, 25 387 J/mol',
    got: () => activationBetween({ rate: 3.2e-6, temperature: 298 }, { rate: 4.2e-5, temperature: 398 }) / 1e3,
  },
  {
    id: 'degradation.rateAt600C',
    stage: 'degradation',
    quantity: 'Rate constant at 873 K from 2.91e-6 at 573 K, 183 kJ/mol',
    unit: '1/s',
    expected: 1.6,
    limit: 0.03,
    measure: 'relative',
    kind: 'published',
    source: 'Purdue chemistry topic review, kinetics, practice problem 12; printed to two digits, energy from memory',
    got: () => rateConstant(2.91e-6, 183e3, 573, 873),
  },
  {
    id: 'degradation.polylactideAt240C',
    stage: 'degradation',
    quantity: 'Molar mass of polylactide of 40 kg/mol after 7 min at 240 °C',
    unit: 'kg/mol',
    expected: 13.6,
    limit: 0.05,
    measure: 'relative',
    kind: 'fromMemory',
    source:
      'Taubner & Shishoo, J. Appl. Polym. Sci. 79 (2001); rate from their 210 °C, energy of another study, 119 kJ/mol',
    got: () => molarMassAfter(40, polylactide.repeatUnitMass, extentAfter(polylactide, [420, 240])),
  },
  {
    id: 'degradation.twoSteps',
    stage: 'degradation',
    quantity: 'Mass lost by willow, 10 min at 250 °C then 20 min at 280 °C, two steps',
    unit: '%',
    expected: 21.057341,
    limit: 1e-6,
    measure: 'relative',
    kind: 'independent',
    source: 'rate equations of Prins, Ptasinski & Janssen 2006 (abstract) integrated by scipy solve_ivp',
    got: () => 100 * extentAfter(willow, [600, 250], [1200, 280]),
  },
  {
    id: 'degradation.secondOrderRamp',
    stage: 'degradation',
    quantity: 'Extent of a second-order law on a ramp from 170 to 210 °C in 10 min',
    unit: '',
    expected: 0.29810586,
    limit: 1e-4,
    measure: 'relative',
    kind: 'independent',
    source: 'rate equation integrated by scipy solve_ivp; 1e-3 1/s at 200 °C, 90 kJ/mol',
    got: () => extentAfter(secondOrder, ...ramp(170, 210, 600, 100)),
  },
  ...colourChecks,
];
