/** Names, units and help of what a material may have besides its basic values. Texts only. */

import type { LawKind } from '../../core/index.ts';
import type { FieldSpec } from '../fields/spec.ts';

/** Where a viscosity law is stated. */
export const shiftReferenceField: FieldSpec = {
  key: 'rheology.shift.referenceC',
  label: 'Stated at',
  unit: '°C',
  help: 'Temperature at which the law’s values hold.',
  step: 1,
};

/** Where the viscosity law was fitted or checked. */
export const rheologyRangeFields: readonly FieldSpec[] = [
  {
    key: 'rheologyRange.fromC',
    label: 'Law holds from',
    unit: '°C',
    help: 'Lowest temperature it was fitted at.',
    step: 1,
  },
  {
    key: 'rheologyRange.toC',
    label: 'Law holds to',
    unit: '°C',
    help: 'Highest temperature it was fitted at.',
    step: 1,
  },
  {
    key: 'rheologyRange.shearFromPerS',
    label: 'From shear rate',
    unit: '1/s',
    help: 'Slowest shear it was fitted at.',
  },
  {
    key: 'rheologyRange.shearToPerS',
    label: 'To shear rate',
    unit: '1/s',
    help: 'Fastest shear it was fitted at.',
    step: 1,
  },
];

/** Solid filler in the melt. */
export const fillerFields: readonly FieldSpec[] = [
  {
    key: 'filler.volumeFraction',
    label: 'Filler by volume',
    unit: 'ratio',
    help: 'Share of the melt’s volume that is solid filler, 0 to 0.6. The viscosity values above are those without filler.',
    step: 0.01,
  },
  {
    key: 'filler.maxPacking',
    label: 'Densest packing',
    unit: 'ratio',
    help: 'Share at which the filler would jam: about 0.64 for round grains, less for fibres.',
    step: 0.01,
  },
];

const activation = (key: string, label = 'Activation'): FieldSpec => ({
  key,
  label,
  unit: 'kJ/mol',
  help: 'How strongly the change quickens with temperature.',
});

const rate = (help: string): FieldSpec => ({
  key: 'rateAtReferencePerS',
  label: 'Rate at reference',
  unit: '1/s',
  help,
});

const stepFields = (step: 'first' | 'second', word: string): readonly FieldSpec[] => [
  {
    key: `${step}.rateAtReferencePerS`,
    label: `${word} step, rate`,
    unit: '1/s',
    help: 'Speed of this step at the reference temperature.',
  },
  activation(`${step}.activationKJPerMol`, `${word} step, activation`),
  {
    key: `${step}.solidYield`,
    label: `${word} step, solid left`,
    unit: 'ratio',
    help: 'Mass of solid that comes out of this step per mass that goes in; the rest leaves as gas.',
    step: 0.01,
  },
];

/** Sourced values of a degradation law, by its kind. */
export const degradationFields: Readonly<Record<LawKind, readonly FieldSpec[]>> = {
  order: [
    rate('Speed of the change at the reference temperature, in the unit of what is seen.'),
    activation('activationKJPerMol'),
  ],
  scission: [
    rate('Chain breaks per repeat unit and second at the reference temperature.'),
    activation('activationKJPerMol'),
    {
      key: 'repeatUnitMassKgPerMol',
      label: 'Repeat unit, kg/mol',
      unit: 'ratio',
      help: 'Molar mass of the unit that repeats along the chain, such as 0.028 for polyethylene.',
      step: 0.001,
    },
    {
      key: 'initialMolarMassKgPerMol',
      label: 'Fresh chains, kg/mol',
      unit: 'ratio',
      help: 'Number average of the molar mass of fresh granulate. With it, the loss is told as a share.',
      step: 1,
    },
  ],
  twoStep: [...stepFields('first', 'First'), ...stepFields('second', 'Second')],
  lag: [
    rate('Steepest rise of the extent, at the reference temperature.'),
    activation('activationKJPerMol'),
    {
      key: 'lagAtReferenceS',
      label: 'Lag at reference',
      unit: 's',
      help: 'Time in which nothing is seen yet, at the reference temperature. Heat shortens it.',
      step: 1,
    },
  ],
};

/** The order of a law that goes by order. */
export const orderField: FieldSpec = {
  key: 'order',
  label: 'Order',
  unit: 'ratio',
  help: '0 grows evenly with time; 1 slows as what can change is used up.',
  step: 1,
};

/** Bare values of every degradation law. */
export const lawFields: readonly FieldSpec[] = [
  { key: 'referenceC', label: 'Rate stated at', unit: '°C', help: 'Temperature of the rate above.', step: 1 },
  { key: 'validFromC', label: 'Measured from', unit: '°C', help: 'Lowest temperature of the measurements.', step: 1 },
  { key: 'validToC', label: 'Measured to', unit: '°C', help: 'Highest temperature of the measurements.', step: 1 },
];

/** One measured colour. */
export const anchorFields: readonly FieldSpec[] = [
  {
    key: 'extent',
    label: 'Extent',
    unit: 'ratio',
    help: 'How far the change has gone, in its own unit. Must rise. For order 0 it is the rate at the temperature of the strand times the time it was held: 600 s at 0.0002 1/s come to 0.12.',
  },
  { key: 'lightness', label: 'L*', unit: 'ratio', help: 'Lightness, 0 black to 100 white (CIELAB).', step: 1 },
  { key: 'a', label: 'a*', unit: 'ratio', help: 'Green (negative) to red (positive).', step: 1 },
  { key: 'b', label: 'b*', unit: 'ratio', help: 'Blue (negative) to yellow (positive).', step: 1 },
];
