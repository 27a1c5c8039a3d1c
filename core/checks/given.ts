/** Constants of published materials as the project file states them, for checks that go through the same reading. */

import { viscosityLawOf } from '../material/rheology.ts';
import { viscosityAt } from '../material/viscosityLaw.ts';
import type { Material, Sourced } from '../project/materialSchema.ts';
import { toSi } from '../units.ts';

type Rheology = Material['rheology'];

/** A value whose source stands with the check that uses it. */
const given = (value: number): Sourced => ({ value, source: 'told with the check', status: 'seen' });

/** A value of a machine or granulate made up for a check. */
export const madeUp = (value: number): Sourced => ({ value, source: 'made up for a check', status: 'invented' });

/** Viscosity of a stored law at a temperature (°C) and shear rate (1/s) without pressure, Pa s. */
export const viscosityOf = (rheology: Rheology, celsius: number, shearRate: number): number =>
  viscosityAt(viscosityLawOf({ rheology })(toSi(celsius, '°C'), 0), shearRate);

/** Cross-WLF constants of ABS. D. O. Kazmer, Injection Mold Design Engineering, Appendix A and ch. 5. */
export const kazmerAbs: Rheology = {
  model: 'crossWlf',
  d1PaS: given(1.93e13),
  d2K: given(373.15),
  d3KPerPa: given(0),
  a1: given(31.4),
  a2K: given(51.6),
  criticalStressPa: given(99_700),
  index: given(0.247),
};

/** Power law of the same ABS at 239 °C, same place. */
export const kazmerAbsPower: Rheology = {
  model: 'powerLaw',
  consistencyPaSn: given(17_070),
  index: given(0.348),
  shift: { kind: 'none' },
};

/** Power law of LDPE. N. S. Rao's design-data handbook (title inferred), eqs 1.32 and 1.40: K at 0 °C, exp(-bT). */
export const raoLdpe: Rheology = {
  model: 'powerLaw',
  consistencyPaSn: given(135_990),
  index: given(0.3286),
  shift: { kind: 'exponential', referenceC: 0, coefficientPerK: given(0.00863) },
};

/** Sucrose by the universal WLF constants: 1e12 Pa s at its glass transition, 62 °C. */
export const berkSucrose: Rheology = {
  model: 'crossWlf',
  d1PaS: given(1e12),
  d2K: given(335.15),
  d3KPerPa: given(0),
  a1: given(17.44 * Math.LN10),
  a2K: given(51.6),
  criticalStressPa: given(1e7),
  index: given(0.5),
};

/** PET with the flow activation energy of Polym. Degrad. Stab. 120 (2015) 70, abstract; its level does not matter. */
export const arrheniusPet: Rheology = {
  model: 'newtonian',
  viscosityPaS: given(300),
  shift: { kind: 'arrhenius', referenceC: 280, activationKJPerMol: given(65) },
};
