/** Start values of what can be added to a material: orders of magnitude of common plastics, marked as estimated. */

import type { Material, Sourced } from '../../core/index.ts';

const start = (value: number): Sourced => ({
  value,
  source: 'start value, a common order of magnitude; replace it with one of your own',
  status: 'estimated',
});

/** Optional parts of a material, as they begin. */
export const materialParts = {
  filler: { volumeFraction: start(0.1), maxPacking: start(0.6) },
  rheologyRange: {
    fromC: 180,
    toC: 220,
    shearFromPerS: 1,
    shearToPerS: 10_000,
    source: 'start value; enter where the law was fitted or checked',
  },
  angleOfReposeDeg: start(35),
  internalFrictionDeg: start(35),
  unconfinedStrengthPa: start(0),
  meltCompressibilityPerGPa: start(1),
  surfaceTensionNPerM: start(0.03),
  mechanical: {
    youngGPa: start(2),
    strengthMPa: start(40),
    expansionPerMK: start(80),
    poisson: start(0.38),
    setC: start(60),
  },
} as const satisfies Partial<Material>;

/** Name of an optional part. */
export type PartName = keyof typeof materialParts;

/** A law that hardly changes anything until it is filled in; temperatures in °C. */
export const startLaw = (id: string, validFromC: number, validToC: number): Material['degradation'][number] => ({
  id,
  observed: 'new change',
  order: 0,
  rateAtReferencePerS: start(1e-4),
  referenceC: Math.round((validFromC + validToC) / 2),
  activationKJPerMol: start(100),
  validFromC,
  validToC,
});

/** Molar mass of fresh chains, kg/mol, as it begins. */
export const startFreshMass: Sourced = start(50);

/** The first colour anchor: the fresh material, a light natural tone. */
export const startAnchor: Material['colourAnchors'][number] = { extent: 0, lightness: 80, a: 0, b: 10 };
