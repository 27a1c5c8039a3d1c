/** Another viscosity law or temperature shift for a material, started so that it goes on from the law it had. */

import type { Sourced } from '../project/materialSchema.ts';
import { assertNever } from '../result.ts';
import { middlingShift, otherShift } from './switchShift.ts';
import { carreauFrom, crossFrom, newtonianFrom, oldLaw, powerLawFrom } from './switchStart.ts';
import {
  type Agreement,
  agreedRate,
  agreementOf,
  baseViscosity,
  type lawLimits,
  middlingViscosity,
  type Rheology,
  type RheologyModel,
  type ShiftKind,
  type Switched,
  startValue,
} from './switchTypes.ts';

/** Relative difference of viscosities that is left alone, so that values with a source stay untouched. */
const alike = 1e-5;

/** The law with its level multiplied: all viscosities are `factor` times the old ones at equal shear rate. */
function levelled(rheology: Rheology, factor: number, source: string): Rheology {
  const times = (name: keyof typeof lawLimits, { value }: Sourced) => startValue(name, value * factor, source);
  switch (rheology.model) {
    case 'newtonian':
      return { ...rheology, viscosityPaS: times('viscosityPaS', rheology.viscosityPaS) };
    case 'powerLaw':
      return { ...rheology, consistencyPaSn: times('consistencyPaSn', rheology.consistencyPaSn) };
    case 'carreauYasuda':
      return {
        ...rheology,
        zeroShearViscosityPaS: times('zeroShearViscosityPaS', rheology.zeroShearViscosityPaS),
        infiniteShearViscosityPaS: times('infiniteShearViscosityPaS', rheology.infiniteShearViscosityPaS),
      };
    case 'crossWlf':
      return {
        ...rheology,
        d1PaS: times('d1PaS', rheology.d1PaS),
        criticalStressPa: times('criticalStressPa', rheology.criticalStressPa),
      };
    case 'unknown':
      return rheology;
    default:
      return assertNever(rheology);
  }
}

/** No law, with what is known of its move with temperature. */
const withoutLaw = (rheology: Rheology): Rheology => ({
  model: 'unknown',
  reason: 'no law is given; enter one or fit measured viscosities',
  shift: rheology.model === 'crossWlf' ? { kind: 'none' } : rheology.shift,
});

/** A middling melt where no law is known, so that there is something to start from. */
function middlingMelt(material: Switched, at: Agreement): Switched {
  const { rheology } = material;
  if (rheology.model !== 'unknown') return material;
  const viscosityPaS = startValue('viscosityPaS', middlingViscosity, at.source);
  const shift = rheology.shift.kind === 'none' ? middlingShift(at) : rheology.shift;
  const level: Rheology = { model: 'newtonian', viscosityPaS, shift };
  return { ...material, rheology: agreeing(level, middlingViscosity, at) };
}

/** The law moved to the viscosity (Pa s) of the old one at the point of agreement. */
function agreeing(rheology: Rheology, viscosity: number, at: Agreement): Rheology {
  const factor = viscosity / baseViscosity(rheology, at.temperature, agreedRate);
  return Math.abs(factor - 1) <= alike ? rheology : levelled(rheology, factor, at.source);
}

/**
 * Another viscosity law. What means the same in both laws is kept with its source (index of Carreau-Yasuda and Cross,
 * temperature shift); the rest is started from the old law and marked as estimated.
 * @param material stored material
 * @param model name of the new law; the old one's gives the old law back
 * @returns rheology with the old viscosity, to 1e-5, at the middle of the window, 100 1/s and no pressure, as far as
 *   the limits of the file format allow. A filler multiplies both alike. Elsewhere the two laws differ, except that
 *   Cross to Carreau-Yasuda keeps the whole flow curve at that temperature. An unknown law starts from a middling melt,
 *   and turning to it forgets the law.
 */
export function switchModel(material: Switched, model: RheologyModel): Rheology {
  if (material.rheology.model === model) return material.rheology;
  const at = agreementOf(material);
  if (model === 'unknown') return withoutLaw(material.rheology);
  const old = oldLaw(middlingMelt(material, at), at);
  const starts = { newtonian: newtonianFrom, powerLaw: powerLawFrom, carreauYasuda: carreauFrom, crossWlf: crossFrom };
  return agreeing(starts[model](old), old.viscosity, at);
}

/**
 * Another temperature shift for a law that has one; Cross-WLF carries its own and is given back as it is.
 * @param material stored material
 * @param kind name of the new shift
 * @returns rheology with the old viscosity at the middle of the window and 100 1/s, see `switchModel`
 */
export function switchShift(material: Switched, kind: ShiftKind): Rheology {
  const { rheology } = material;
  if (rheology.model === 'crossWlf' || rheology.shift.kind === kind) return rheology;
  const at = agreementOf(material);
  if (rheology.model === 'unknown') return { ...rheology, shift: kind === 'none' ? { kind } : middlingShift(at, kind) };
  const { viscosity } = oldLaw(material, at);
  const shifted = { ...rheology, shift: otherShift(rheology, kind, at) };
  if (shifted.model !== 'carreauYasuda' || kind !== 'none') return agreeing(shifted, viscosity, at);
  // Without a shift the bend must stand where the old shift had put it (superposition).
  const law = oldLaw(material, at).law;
  const moved = law.model === 'carreauYasuda' ? law.timeConstant : shifted.timeConstantS.value;
  const same = Math.abs(moved / shifted.timeConstantS.value - 1) <= alike;
  const timeConstantS = same ? shifted.timeConstantS : startValue('timeConstantS', moved, at.source);
  return agreeing({ ...shifted, timeConstantS }, viscosity, at);
}
