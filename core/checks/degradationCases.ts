/** Published laws of degradation, and the worst of the published pairs of colours. */

import type { Lab } from '../age/cielab.ts';
import { deltaE2000 } from '../age/deltaE2000.ts';
import { extentAlong, type HeatSegment } from '../age/kinetics.ts';
import type { KineticLaw, ScissionLaw, TwoStepLaw } from '../age/laws.ts';
import { ciedePairs } from './data/ciedePairs.ts';

const kelvin = (celsius: number) => celsius + 273.15;
const exactly = (value: number) => ({ value, low: value, high: value });
/** Range of a law, wide: whether it is extrapolated is no matter of these checks. */
const anywhere = { validFrom: 1, validTo: 5000 };

/** Chain scission of polylactide: rate from Taubner & Shishoo 2001 (from memory), activation 119 kJ/mol (abstract). */
export const polylactide: ScissionLaw = {
  kind: 'scission',
  id: 'polylactide',
  observed: 'chain breaks',
  rateAtReference: exactly(1.4e-6),
  referenceTemperature: kelvin(210),
  activation: exactly(119e3),
  repeatUnitMass: 0.07206,
  ...anywhere,
};

/** Rate of a step at 250 °C from its frequency factor, 1/s, and energy, J/mol. */
const rateAt250 = (factor: number, energy: number) => factor * Math.exp(-energy / 8.314462618 / kelvin(250));
/** Willow losing mass: M. J. Prins, K. J. Ptasinski & F. J. J. G. Janssen 2006, abstract; solid yields 0.79 and 0.41. */
export const willow: TwoStepLaw = {
  kind: 'twoStep',
  id: 'willow',
  observed: 'mass',
  referenceTemperature: kelvin(250),
  first: { rateAtReference: exactly(rateAt250(2.48e4, 76_000)), activation: exactly(76_000), solidYield: 0.79 },
  second: { rateAtReference: exactly(rateAt250(1.1e10, 151_700)), activation: exactly(151_700), solidYield: 0.41 },
  ...anywhere,
};

/** A second-order law of round numbers. */
export const secondOrder: KineticLaw = {
  id: 'second-order',
  observed: 'made up',
  order: 2,
  rateAtReference: exactly(1e-3),
  referenceTemperature: kelvin(200),
  activation: exactly(90e3),
  ...anywhere,
};

/** Extent after stretches of seconds at °C. */
export const extentAfter = (law: KineticLaw, ...stretches: readonly (readonly [seconds: number, celsius: number])[]) =>
  extentAlong(
    law,
    stretches.map(([duration, celsius]): HeatSegment => ({ duration, temperature: kelvin(celsius) })),
  ).extent;

/** A ramp in equal steps, as stretches. */
export const ramp = (from: number, to: number, seconds: number, steps: number) =>
  Array.from({ length: steps }, (_, i) => [seconds / steps, from + ((to - from) * (i + 0.5)) / steps] as const);

/** Largest error over the published CIEDE2000 pairs, each taken both ways round. */
export const worstOfPairs = (): number =>
  Math.max(
    ...ciedePairs.flatMap(([l1, a1, b1, l2, a2, b2, expected]) => {
      const [first, second]: readonly [Lab, Lab] = [
        [l1, a1, b1],
        [l2, a2, b2],
      ];
      return [deltaE2000(first, second), deltaE2000(second, first)].map((got) => Math.abs(got - expected));
    }),
  );
