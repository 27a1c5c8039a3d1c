/** Whether a material's values make physical sense together. */

import type { Material, Sourced } from '../project/materialSchema.ts';
import type { Issue } from '../result.ts';
import { toSi } from '../units.ts';
import { viscosityLawOf } from './rheology.ts';
import { viscosityAt } from './viscosityLaw.ts';

type Path = readonly (string | number)[];

/** Melts are lighter than their solids; a few per cent the other way is left to odd materials. */
const densestMelt = 1.05;

interface Rule {
  readonly holds: boolean;
  readonly field: readonly (string | number)[];
  readonly code: string;
  readonly message: string;
  readonly value: string;
  readonly allowed: string;
  readonly remedy: string;
}

interface Named {
  readonly field: readonly string[];
  readonly words: string;
  readonly quantity: Sourced;
  readonly unit: string;
}

/** `low` must stay below (or at, where `equal`) `high`. */
function inOrder(low: Named, high: Named, equal: boolean): Rule {
  const limit = `${high.quantity.value} ${high.unit}`;
  return {
    holds: equal ? low.quantity.value <= high.quantity.value : low.quantity.value < high.quantity.value,
    field: [...low.field, 'value'],
    code: 'values-out-of-order',
    message: `The ${low.words} must be ${equal ? 'at most' : 'below'} the ${high.words}.`,
    value: `${low.quantity.value} ${low.unit}`,
    allowed: `${equal ? 'at most' : 'below'} ${limit}`,
    remedy: `Correct the ${low.words} or the ${high.words}.`,
  };
}

function orderRules(m: Material): readonly Rule[] {
  const celsius = (field: keyof Material & string, words: string, quantity: Sourced): Named => ({
    field: [field],
    words,
    quantity,
    unit: '°C',
  });
  const grain = (field: 'd10Mm' | 'd50Mm' | 'd90Mm', words: string): Named => ({
    field: ['grain', field],
    words,
    quantity: m.grain[field],
    unit: 'mm',
  });
  const low = celsius('windowLowC', 'low end of the processing window', m.windowLowC);
  const high = celsius('windowHighC', 'high end of the processing window', m.windowHighC);
  const solid: Named = {
    field: ['solidDensityKgM3'],
    words: 'solid density',
    quantity: m.solidDensityKgM3,
    unit: 'kg/m³',
  };
  const bulk: Named = { field: ['bulkDensityKgM3'], words: 'bulk density', quantity: m.bulkDensityKgM3, unit: 'kg/m³' };
  return [
    inOrder(low, high, false),
    inOrder(high, celsius('maxSafeC', 'highest safe temperature', m.maxSafeC), true),
    inOrder(
      celsius('softeningC', 'softening temperature', m.softeningC),
      celsius('meltingC', 'melting temperature', m.meltingC),
      true,
    ),
    inOrder(grain('d10Mm', '10 % grain size'), grain('d50Mm', 'median grain size'), true),
    inOrder(grain('d50Mm', 'median grain size'), grain('d90Mm', '90 % grain size'), true),
    inOrder(bulk, solid, false),
  ];
}

function densityRule(m: Material): Rule {
  const limit = Number((m.solidDensityKgM3.value * densestMelt).toPrecision(5));
  return {
    holds: m.meltDensityKgM3.value <= limit,
    field: ['meltDensityKgM3', 'value'],
    code: 'melt-too-dense',
    message: 'The melt is denser than the solid.',
    value: `${m.meltDensityKgM3.value} kg/m³`,
    allowed: `at most ${limit} kg/m³`,
    remedy: 'Correct the melt density or the solid density.',
  };
}

function fillerRules(m: Material): readonly Rule[] {
  if (!m.filler) return [];
  const { volumeFraction, maxPacking } = m.filler;
  const fraction: Named = {
    field: ['filler', 'volumeFraction'],
    words: 'filler share',
    quantity: volumeFraction,
    unit: '',
  };
  return [
    inOrder(
      fraction,
      { field: ['filler', 'maxPacking'], words: 'densest packing', quantity: maxPacking, unit: '' },
      false,
    ),
  ];
}

function plateauRules(m: Material): readonly Rule[] {
  if (m.rheology.model !== 'carreauYasuda') return [];
  const fast: Named = {
    field: ['rheology', 'infiniteShearViscosityPaS'],
    words: 'viscosity at endless shear rate',
    quantity: m.rheology.infiniteShearViscosityPaS,
    unit: 'Pa·s',
  };
  const rest: Named = {
    field: ['rheology', 'zeroShearViscosityPaS'],
    words: 'viscosity at rest',
    quantity: m.rheology.zeroShearViscosityPaS,
    unit: 'Pa·s',
  };
  return [inOrder(fast, rest, false)];
}

/** Shear rate at which the fall with temperature is judged, 1/s. */
const probeRate = 10;

/** The viscosity must be a number above 0 over the window and must not rise with temperature. */
function viscosityRule(m: Material): Rule {
  const law = viscosityLawOf(m);
  const at = (celsius: number): number => viscosityAt(law(toSi(celsius, '°C'), 0), probeRate);
  const low = at(m.windowLowC.value);
  const high = at(m.windowHighC.value);
  return {
    holds: Number.isFinite(low) && high > 0 && high <= low * (1 + 1e-9),
    field: ['rheology'],
    code: 'viscosity-against-temperature',
    message: `The viscosity at ${probeRate} 1/s must be a positive number that does not rise over the processing window.`,
    value: `${low.toPrecision(3)} Pa·s at ${m.windowLowC.value} °C, ${high.toPrecision(3)} Pa·s at ${m.windowHighC.value} °C`,
    allowed: 'above 0 and falling with temperature',
    remedy: 'Check the constants and units of the viscosity law.',
  };
}

/**
 * Checks the physical sense of a material whose shape already fits the schema.
 * @param material stored material
 * @param path path of the material in its document
 * @returns one issue per fault
 */
export function materialIssues(material: Material, path: Path = []): readonly Issue[] {
  const rules = [...orderRules(material), densityRule(material), ...fillerRules(material), ...plateauRules(material)];
  const broken = rules.filter((rule) => !rule.holds);
  const viscosity = broken.length === 0 ? [viscosityRule(material)].filter((rule) => !rule.holds) : [];
  return [...broken, ...viscosity].map(({ holds: _, field, ...issue }) => ({ path: [...path, ...field], ...issue }));
}
