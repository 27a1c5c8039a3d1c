/** Degradation laws a material may carry, in SI units: the order-based one and richer kinds. */

import type { DegradationLaw, Ranged } from './types.ts';

/** What every richer law carries. */
interface Measured {
  readonly id: string;
  /** what is observed, in words */
  readonly observed: string;
  /** K, range in which the law was measured */
  readonly validFrom: number;
  readonly validTo: number;
  /** K */
  readonly referenceTemperature: number;
}

/** Random chain scission: 1/Mn = 1/Mn0 + X/M0, X = integral of k dt = scissions per repeat unit. */
export interface ScissionLaw extends Measured {
  readonly kind: 'scission';
  /** scissions per repeat unit, 1/s */
  readonly rateAtReference: Ranged;
  /** J/mol */
  readonly activation: Ranged;
  /** M0, kg/mol */
  readonly repeatUnitMass: number;
  /** Mn0 of the fresh granulate, kg/mol; absent where unknown */
  readonly initialMolarMass?: Ranged;
}

/** One first-order step of a series. */
export interface Step {
  /** 1/s */
  readonly rateAtReference: Ranged;
  /** J/mol */
  readonly activation: Ranged;
  /** mass of solid product per mass of what reacts, 0 to 1 */
  readonly solidYield: number;
}

/** Two first-order steps in series, solid A to solid B to solid C, volatiles leaving; extent = lost mass share. */
export interface TwoStepLaw extends Measured {
  readonly kind: 'twoStep';
  readonly first: Step;
  readonly second: Step;
}

/**
 * Sigmoid with a lag (modified Gompertz, Zwietering et al. 1990) in temperature-reduced time; the lag shortens with
 * the same activation energy as the rate grows. Extent 0 to 1.
 */
export interface LagLaw extends Measured {
  readonly kind: 'lag';
  /** steepest rate of the extent, 1/s */
  readonly rateAtReference: Ranged;
  /** J/mol */
  readonly activation: Ranged;
  /** lag at the reference temperature, s */
  readonly lagAtReference: number;
}

/** Laws beyond the order-based one, told apart by `kind`. */
export type RichLaw = ScissionLaw | TwoStepLaw | LagLaw;

/** Any law; the order-based one has no `kind`. */
export type KineticLaw = DegradationLaw | RichLaw;
