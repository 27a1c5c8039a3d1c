/** A stored material as the stages see it: SI units, kelvin, viscosity laws. */

import type { Material, Sourced } from '../project/materialSchema.ts';
import { ok, type Result } from '../result.ts';
import { toSi, type Unit } from '../units.ts';
import { materialIssues } from './checkMaterial.ts';
import { kineticLawOf } from './kineticLaw.ts';
import { ranged } from './ranged.ts';
import { viscosityLawOf } from './rheology.ts';
import type { DesignMaterial } from './types.ts';
import { unknownViscosity } from './unknownViscosity.ts';

const si = (sourced: Sourced, unit: Unit): number => toSi(sourced.value, unit);
const kelvin = (sourced: Sourced): number => si(sourced, '°C');

function mechanicalOf({ mechanical }: Material): DesignMaterial['mechanical'] {
  return mechanical === undefined
    ? null
    : {
        young: si(mechanical.youngGPa, 'GPa'),
        strength: si(mechanical.strengthMPa, 'MPa'),
        expansion: si(mechanical.expansionPerMK, 'µm/(m·K)'),
        poisson: mechanical.poisson.value,
        setTemperature: kelvin(mechanical.setC),
      };
}

function rheologyRangeOf({ rheologyRange: range }: Material): DesignMaterial['rheologyRange'] {
  return range === undefined
    ? null
    : {
        from: toSi(range.fromC, '°C'),
        to: toSi(range.toC, '°C'),
        shearFrom: range.shearFromPerS,
        shearTo: range.shearToPerS,
      };
}

/** Grain, friction and what else the feed needs. */
function granulateOf(m: Material) {
  return {
    form: m.form,
    bulkDensity: m.bulkDensityKgM3.value,
    grain: {
      d10: si(m.grain.d10Mm, 'mm'),
      d50: si(m.grain.d50Mm, 'mm'),
      d90: si(m.grain.d90Mm, 'mm'),
      aspectRatio: m.grain.aspectRatio.value,
    },
    frictionOnBarrel: ranged(m.frictionOnBarrel),
    frictionOnScrew: ranged(m.frictionOnScrew),
    angleOfRepose: m.angleOfReposeDeg === undefined ? null : si(m.angleOfReposeDeg, '°'),
    internalFriction: m.internalFrictionDeg === undefined ? null : si(m.internalFrictionDeg, '°'),
    unconfinedStrength: m.unconfinedStrengthPa?.value ?? null,
  };
}

/** Heat, temperatures and the window. */
function thermalOf(m: Material) {
  return {
    conductivity: m.conductivityWPerMK.value,
    heatCapacitySolid: m.heatCapacitySolidJPerKgK.value,
    heatCapacityMelt: m.heatCapacityMeltJPerKgK.value,
    heatOfFusion: m.heatOfFusionJPerKg.value,
    softening: kelvin(m.softeningC),
    melting: kelvin(m.meltingC),
    windowLow: kelvin(m.windowLowC),
    windowHigh: kelvin(m.windowHighC),
    maxSafe: kelvin(m.maxSafeC),
  };
}

/** Conversion without checks. */
function convert(m: Material): DesignMaterial {
  return {
    id: m.id,
    name: m.name,
    invented: m.invented,
    ...granulateOf(m),
    ...thermalOf(m),
    viscosityLaw: viscosityLawOf(m),
    rheologyRange: rheologyRangeOf(m),
    meltDensity: m.meltDensityKgM3.value,
    solidDensity: m.solidDensityKgM3.value,
    surfaceTension: m.surfaceTensionNPerM?.value ?? null,
    meltCompressibility: m.meltCompressibilityPerGPa === undefined ? null : ranged(m.meltCompressibilityPerGPa, 1e-9),
    mechanical: mechanicalOf(m),
    degradation: m.degradation.map(kineticLawOf),
    colourLaw: m.colourLaw ?? null,
    colourAnchors: m.colourAnchors.map(({ extent, lightness, a, b }) => ({ extent, lab: [lightness, a, b] as const })),
    cautions: m.cautions,
  };
}

/**
 * A stored material in SI units, its physical sense checked.
 * @param material material that fits the schema
 * @param path path of the material in its document, for the issues
 * @returns the material (kelvin, metres, Pa s), or every issue found; a material without a viscosity law has the one
 *   issue that says so, beside faults of its other values
 */
export function designMaterial(material: Material, path: readonly (string | number)[] = []): Result<DesignMaterial> {
  const issues = [...unknownViscosity(material, path), ...materialIssues(material, path)];
  return issues.length > 0 ? { ok: false, issues } : ok(convert(material));
}
