/** From a stored rheology to isothermal viscosity laws. */

import type { Material } from '../project/materialSchema.ts';
import { assertNever } from '../result.ts';
import { toSi } from '../units.ts';
import { maronPierce, thickened } from './filler.ts';
import { shifted, shiftFactor, type TemperatureShift } from './shift.ts';
import { powerLawFloorRate, type ViscosityLaw } from './viscosityLaw.ts';
import { wlfViscosity } from './wlf.ts';

type Rheology = Material['rheology'];
type StoredShift = Extract<Rheology, { model: 'newtonian' }>['shift'];
type Levelled = Exclude<Rheology, { model: 'crossWlf' } | { model: 'unknown' }>;

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

/** Law of the melt at the reference temperature of its shift. */
function levelLaw(rheology: Levelled): ViscosityLaw {
  switch (rheology.model) {
    case 'newtonian':
      return { model: 'newtonian', viscosity: rheology.viscosityPaS.value };
    case 'powerLaw':
      return {
        model: 'powerLaw',
        consistency: rheology.consistencyPaSn.value,
        index: rheology.index.value,
        regularisingRate: powerLawFloorRate,
      };
    case 'carreauYasuda':
      return {
        model: 'carreauYasuda',
        zeroShearViscosity: rheology.zeroShearViscosityPaS.value,
        infiniteShearViscosity: rheology.infiniteShearViscosityPaS.value,
        timeConstant: rheology.timeConstantS.value,
        transition: rheology.transition.value,
        index: rheology.index.value,
      };
    default:
      return assertNever(rheology);
  }
}

/** Temperature (K) and pressure (Pa) to the law of the melt without filler. */
function baseLaw(rheology: Rheology): (temperature: number, pressure: number) => ViscosityLaw {
  if (rheology.model === 'unknown') throw new RangeError('The viscosity is not known.');
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
  const level = levelLaw(rheology);
  return (temperature) => shifted(level, shiftFactor(shift, temperature));
}

/** Whether a material says how thick its melt is. */
export const hasViscosity = ({ rheology }: Pick<Material, 'rheology'>): boolean => rheology.model !== 'unknown';

/**
 * Viscosity laws of a material, filler included.
 * @param material stored material
 * @returns function of temperature (K, > 0) and pressure (Pa above ambient, >= 0) giving the isothermal law
 * @throws RangeError where the viscosity is not known: ask `hasViscosity` first
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
