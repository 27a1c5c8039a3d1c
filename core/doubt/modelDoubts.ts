/** Doubts of the model itself, as ranges of its named factors, and what each factor stands for in a material. */

import type { FactorName } from '../design/calibrate.ts';

/** Range of a factor whose nominal value is 1. */
export interface FactorDoubt {
  readonly label: string;
  readonly low: number;
  readonly high: number;
  readonly why: string;
  /** taken only where the material's own values, as below, carry no range */
  readonly onlyWithout: boolean;
}

/** Ranges of the factors; own estimates where no source is named. */
export const factorDoubts: Readonly<Record<FactorName, FactorDoubt>> = {
  feed: {
    label: 'Feed factor',
    low: 0.7,
    high: 1.5,
    why: 'A trough fills 30 to 45 % (conveyor guides), taken at 30; loose granules slip more than a plug (own estimate).',
    onlyWithout: false,
  },
  wallFriction: {
    label: 'Friction factor on the barrel',
    low: 0.7,
    high: 1.3,
    why: 'Friction is rarely known within 30 % (common practice).',
    onlyWithout: true,
  },
  viscosity: {
    label: 'Viscosity factor',
    low: 0.75,
    high: 1.3,
    why: 'Lots of one granulate differ by a quarter (common practice).',
    onlyWithout: true,
  },
  colourRate: {
    label: 'Rate factor of the colour',
    low: 0.5,
    high: 2,
    why: 'Rates of darkening differ between lots and moisture (own estimate).',
    onlyWithout: true,
  },
};

/** Whether a material's value, by its place in the material, is what a factor scales. */
export function standsFor(factor: FactorName, field: string, colourLawIndex: number): boolean {
  switch (factor) {
    case 'feed':
      return false;
    case 'wallFriction':
      return field === 'frictionOnBarrel';
    case 'viscosity':
      return /^rheology\.(viscosityPaS|consistencyPaSn|zeroShearViscosityPaS|d1PaS)$|^filler\./.test(field);
    case 'colourRate':
      return field.startsWith(`degradation[${colourLawIndex}].`) && field.endsWith('.rateAtReferencePerS');
  }
}
