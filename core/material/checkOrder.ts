/** Values of a material that must stand in order: temperatures, grain sizes, densities, ranges. */

import type { Material } from '../project/materialSchema.ts';
import { inOrder, type Named, named, type Rule } from './checkTypes.ts';

function temperatureRules(m: Material): readonly Rule[] {
  const low = named(['windowLowC'], 'low end of the processing window', m.windowLowC, '°C');
  const high = named(['windowHighC'], 'high end of the processing window', m.windowHighC, '°C');
  const softening = named(['softeningC'], 'softening temperature', m.softeningC, '°C');
  const melting = named(['meltingC'], 'melting temperature', m.meltingC, '°C');
  const set =
    m.mechanical && named(['mechanical', 'setC'], 'temperature at which the print sets', m.mechanical.setC, '°C');
  return [
    inOrder(low, high, false),
    inOrder(high, named(['maxSafeC'], 'highest safe temperature', m.maxSafeC, '°C'), true),
    inOrder(softening, melting, true),
    inOrder(softening, low, true),
    inOrder(melting, high, true),
    ...(set ? [inOrder(set, high, false)] : []),
  ];
}

function grainRules({ grain }: Material): readonly Rule[] {
  const size = (field: 'd10Mm' | 'd50Mm' | 'd90Mm', words: string): Named =>
    named(['grain', field], words, grain[field], 'mm');
  const median = size('d50Mm', 'median grain size');
  return [
    inOrder(size('d10Mm', '10 % grain size'), median, true),
    inOrder(median, size('d90Mm', '90 % grain size'), true),
  ];
}

function densityRules(m: Material): readonly Rule[] {
  const solid = named(['solidDensityKgM3'], 'solid density', m.solidDensityKgM3, 'kg/m³');
  const melt: Rule = {
    holds: m.meltDensityKgM3.value <= solid.value,
    field: ['meltDensityKgM3', 'value'],
    code: 'melt-too-dense',
    message: 'The melt is denser than the solid.',
    value: `${m.meltDensityKgM3.value} kg/m³`,
    allowed: `at most ${solid.value} kg/m³`,
    remedy: 'Correct the melt density or the solid density.',
  };
  return [inOrder(named(['bulkDensityKgM3'], 'bulk density', m.bulkDensityKgM3, 'kg/m³'), solid, false), melt];
}

function fillerRules({ filler }: Material): readonly Rule[] {
  if (!filler) return [];
  const share = named(['filler', 'volumeFraction'], 'filler share', filler.volumeFraction, '');
  return [inOrder(share, named(['filler', 'maxPacking'], 'densest packing', filler.maxPacking, ''), false)];
}

function rangeRules({ rheologyRange }: Material): readonly Rule[] {
  if (!rheologyRange) return [];
  const { fromC, toC, shearFromPerS, shearToPerS } = rheologyRange;
  const at = (key: string, words: string, value: number, unit: string): Named => ({
    field: ['rheologyRange', key],
    words,
    value,
    unit,
  });
  return [
    inOrder(
      at('fromC', 'lowest temperature of the viscosity law', fromC, '°C'),
      at('toC', 'highest temperature of the viscosity law', toC, '°C'),
      true,
    ),
    inOrder(
      at('shearFromPerS', 'lowest shear rate of the viscosity law', shearFromPerS, '1/s'),
      at('shearToPerS', 'highest shear rate of the viscosity law', shearToPerS, '1/s'),
      true,
    ),
  ];
}

/** Every rule of order. */
export const orderRules = (m: Material): readonly Rule[] => [
  ...temperatureRules(m),
  ...grainRules(m),
  ...densityRules(m),
  ...fillerRules(m),
  ...rangeRules(m),
];
