/** From a stored rheology to isothermal viscosity laws. */

import type { Material } from '../project/materialSchema.ts';
import { assertNever } from '../result.ts';
import { toSi } from '../units.ts';
import { maronPierce, thickened } from './filler.ts';
import { shiftFactor, type TemperatureShift } from './shift.ts';
import type { ViscosityLaw } from './viscosityLaw.ts';
import { wlfViscosity } from './wlf.ts';

type Rheology = Material['rheology'];
type StoredShift = Extract<Rheology, { model: 'newtonian' }>['shift'];

/** Shear rate, 1/s, under which a power law is held level: real melts turn Newtonian at rest. */
export const powerLawFloorRate = 1e-3;

function shiftOf(stored: StoredShift): TemperatureShift {
  switch (stored.kind) {
    case 'none':
      return { kind: 'none' };
    case 'arrhenius':
      return {
        kind: 'arrhenius',
        reference: toSi(stored.referenceC, '°C'),
        activation: toSi(stored.activationKJPerMol.value, 'kJ/mol'),
      };
    case 'exponential':
      return {
        kind: 'exponential',
        reference: toSi(stored.referenceC, '°C'),
        coefficient: stored.coefficientPerK.value,
      };
    default:
      return assertNever(stored);
  }
}

/** Temperature (K) and pressure (Pa) to the law of the melt without filler. */
function baseLaw(rheology: Rheology): (temperature: number, pressure: number) => ViscosityLaw {
  if (rheology.model === 'crossWlf') {
    const wlf = {
      d1: rheology.d1PaS.value,
      d2: rheology.d2K.value,
      d3: rheology.d3KPerPa.value,
      a1: rheology.a1.value,
      a2: rheology.a2K.value,
    };
    return (temperature, pressure) => ({
      model: 'cross',
      zeroShearViscosity: wlfViscosity(wlf, temperature, pressure),
      criticalStress: rheology.criticalStressPa.value,
      index: rheology.index.value,
    });
  }
  const shift = shiftOf(rheology.shift);
  return (temperature) => shiftedLaw(rheology, shiftFactor(shift, temperature));
}

/**
 * Law at shift factor aT. Carreau-Yasuda obeys superposition, eta = aT f(aT g) (Ferry 1980). A power law's
 * consistency is multiplied by aT, as such fits are made at equal shear rate.
 */
function shiftedLaw(rheology: Exclude<Rheology, { model: 'crossWlf' }>, aT: number): ViscosityLaw {
  switch (rheology.model) {
    case 'newtonian':
      return { model: 'newtonian', viscosity: rheology.viscosityPaS.value * aT };
    case 'powerLaw':
      return {
        model: 'powerLaw',
        consistency: rheology.consistencyPaSn.value * aT,
        index: rheology.index.value,
        regularisingRate: powerLawFloorRate,
      };
    case 'carreauYasuda':
      return {
        model: 'carreauYasuda',
        zeroShearViscosity: rheology.zeroShearViscosityPaS.value * aT,
        infiniteShearViscosity: rheology.infiniteShearViscosityPaS.value * aT,
        timeConstant: rheology.timeConstantS.value * aT,
        transition: rheology.transition.value,
        index: rheology.index.value,
      };
    default:
      return assertNever(rheology);
  }
}

/**
 * Viscosity laws of a material, filler included.
 * @param material stored material
 * @returns function of temperature (K, > 0) and pressure (Pa above ambient, >= 0) giving the isothermal law
 */
export function viscosityLawOf(
  material: Pick<Material, 'rheology' | 'filler'>,
): (temperature: number, pressure: number) => ViscosityLaw {
  const base = baseLaw(material.rheology);
  const { filler } = material;
  if (!filler) return base;
  const factor = maronPierce(filler.volumeFraction.value, filler.maxPacking.value);
  return (temperature, pressure) => thickened(base(temperature, pressure), factor);
}
