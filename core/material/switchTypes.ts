/** What switching a material's viscosity law rests on: the point of agreement, value limits, how values are marked. */

import type { Material, Sourced } from '../project/materialSchema.ts';
import { toSi } from '../units.ts';
import { viscosityLawOf } from './rheology.ts';
import { viscosityAt } from './viscosityLaw.ts';

/** A stored rheology. */
export type Rheology = Material['rheology'];
/** Name of a viscosity law. */
export type RheologyModel = Rheology['model'];
/** A stored rheology that moves with temperature by a shift factor. */
type ShiftedRheology = Exclude<Rheology, { model: 'crossWlf' }>;
/** A stored temperature shift. */
export type StoredShift = ShiftedRheology['shift'];
/** Name of a temperature shift. */
export type ShiftKind = StoredShift['kind'];

/** What a switch needs to know of a material. */
export type Switched = Pick<Material, 'rheology' | 'windowLowC' | 'windowHighC' | 'softeningC'>;

/** Viscosity at the point of agreement to start from where none is known, Pa s (common practice). */
export const middlingViscosity = 500;

/** Shear rate at which the old and the new law agree, 1/s: the order found in screw channels and heads. */
export const agreedRate = 100;

/** The point of agreement and the words for values that follow from it. */
export interface Agreement {
  /** middle of the working temperatures, °C as stored, and K */
  readonly celsius: number;
  readonly temperature: number;
  /** ends of the working temperatures, K, at least 10 K apart */
  readonly low: number;
  readonly high: number;
  /** source text of start values */
  readonly source: string;
}

const modelNames: Readonly<Record<RheologyModel, string>> = {
  newtonian: 'Newtonian',
  powerLaw: 'power',
  carreauYasuda: 'Carreau-Yasuda',
  crossWlf: 'Cross-WLF',
  unknown: 'unknown',
};

/** Point of agreement of a material. */
export function agreementOf({ rheology, windowLowC, windowHighC }: Switched): Agreement {
  const celsius = rounded((windowLowC.value + windowHighC.value) / 2);
  const temperature = toSi(celsius, '°C');
  // A window out of order is refused elsewhere; meanwhile slopes are taken over 10 K.
  const half = Math.max(5, (windowHighC.value - windowLowC.value) / 2);
  return {
    celsius,
    temperature,
    low: temperature - half,
    high: temperature + half,
    source:
      rheology.model === 'unknown'
        ? `start value: a middling melt of ${middlingViscosity} Pa·s at ${celsius} °C and ${agreedRate} 1/s; replace it by a measured law`
        : `start value: gives the viscosity of the ${modelNames[rheology.model]} law used before at ${celsius} °C and ${agreedRate} 1/s`,
  };
}

/** A number with six digits, enough to agree and short enough to read. */
export const rounded = (value: number): number => Number(value.toPrecision(6));

/** Limits that the file format puts on each constant, in its stored unit. */
export const lawLimits = {
  viscosityPaS: [1e-4, 1e7],
  consistencyPaSn: [1e-3, 1e7],
  zeroShearViscosityPaS: [1e-4, 1e8],
  infiniteShearViscosityPaS: [0, 1e5],
  timeConstantS: [1e-7, 1e4],
  transition: [0.1, 5],
  powerIndex: [0.2, 1.5],
  carreauIndex: [0.05, 1.2],
  crossIndex: [0.05, 1],
  d1PaS: [1e-6, 1e30],
  d2K: [150, 700],
  a1: [0.1, 100],
  criticalStressPa: [1, 1e7],
  activationKJPerMol: [0, 400],
  coefficientPerK: [0, 0.3],
} as const;

/** `value` within the limits of its constant, six digits. */
function within(name: keyof typeof lawLimits, value: number): number {
  const [least, most] = lawLimits[name];
  return rounded(Math.min(most, Math.max(least, value)));
}

/** A start value: within limits, marked as estimated. */
export const startValue = (name: keyof typeof lawLimits, value: number, source: string): Sourced => ({
  value: within(name, value),
  source,
  status: 'estimated',
});

/** Viscosity of a stored rheology without filler, Pa s, at a temperature (K) and shear rate (1/s), no pressure. */
export const baseViscosity = (rheology: Rheology, temperature: number, shearRate: number): number =>
  viscosityAt(viscosityLawOf({ rheology })(temperature, 0), shearRate);
