/** A stored material as the stages see it: SI units, kelvin, viscosity laws. */

import type { DegradationLaw, DesignMaterial, Ranged } from '../design/types.ts';
import type { Material, Sourced } from '../project/materialSchema.ts';
import { ok, type Result } from '../result.ts';
import { toSi, type Unit } from '../units.ts';
import { materialIssues } from './checkMaterial.ts';
import { viscosityLawOf } from './rheology.ts';

const si = (sourced: Sourced, unit: Unit): number => toSi(sourced.value, unit);
const kelvin = (sourced: Sourced): number => si(sourced, '°C');

/** Value and doubt range; a value without doubt stands for all three. `scale` turns the stored unit into SI. */
function ranged(sourced: Sourced, scale = 1): Ranged {
  const { value, low = value, high = value } = sourced;
  return { value: value * scale, low: low * scale, high: high * scale };
}

function degradationOf(law: Material['degradation'][number]): DegradationLaw {
  return {
    id: law.id,
    observed: law.observed,
    order: law.order,
    rateAtReference: ranged(law.rateAtReferencePerS),
    referenceTemperature: toSi(law.referenceC, '°C'),
    activation: ranged(law.activationKJPerMol, 1000),
    validFrom: toSi(law.validFromC, '°C'),
    validTo: toSi(law.validToC, '°C'),
  };
}

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
    degradation: m.degradation.map(degradationOf),
    colourLaw: m.colourLaw ?? null,
    colourAnchors: m.colourAnchors.map(({ extent, lightness, a, b }) => ({ extent, lab: [lightness, a, b] as const })),
    cautions: m.cautions,
  };
}

/**
 * A stored material in SI units, its physical sense checked.
 * @param material material that fits the schema
 * @param path path of the material in its document, for the issues
 * @returns the material (kelvin, metres, Pa s), or every issue found
 */
export function designMaterial(material: Material, path: readonly (string | number)[] = []): Result<DesignMaterial> {
  const issues = materialIssues(material, path);
  return issues.length > 0 ? { ok: false, issues } : ok(convert(material));
}
