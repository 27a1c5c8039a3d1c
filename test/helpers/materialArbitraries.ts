/** Generators of materials: every rheology model, every shift, with and without filler. */

import fc from 'fast-check';
import type { Material, Sourced } from '../../core/project/materialSchema.ts';
import { decimal } from './numberArbitraries.ts';
import { loadMaterial } from './projects.ts';

type Rheology = Material['rheology'];
type Shift = Extract<Rheology, { model: 'newtonian' }>['shift'];

/** A value made up for a test. */
export const madeUp = (value: number): Sourced => ({ value, source: 'made up for a test', status: 'invented' });

const sourced = (min: number, max: number, decimals: number): fc.Arbitrary<Sourced> =>
  decimal(min, max, decimals).map(madeUp);

const shift: fc.Arbitrary<Shift> = fc.oneof(
  fc.constant<Shift>({ kind: 'none' }),
  fc.record({
    kind: fc.constant('arrhenius' as const),
    referenceC: decimal(150, 230, 0),
    activationKJPerMol: sourced(10, 120, 0),
  }),
  fc.record({
    kind: fc.constant('exponential' as const),
    referenceC: decimal(150, 230, 0),
    coefficientPerK: sourced(0.001, 0.05, 3),
  }),
);

/** Any rheology of the file format with values of melts. */
export const anyRheology: fc.Arbitrary<Rheology> = fc.oneof(
  fc.record({ model: fc.constant('newtonian' as const), viscosityPaS: sourced(0.01, 5000, 2), shift }),
  fc.record({
    model: fc.constant('powerLaw' as const),
    consistencyPaSn: sourced(100, 50_000, 0),
    index: sourced(0.25, 1, 2),
    shift,
  }),
  fc.record({
    model: fc.constant('carreauYasuda' as const),
    zeroShearViscosityPaS: sourced(10, 50_000, 0),
    infiniteShearViscosityPaS: fc.constantFrom(madeUp(0), madeUp(0.5)),
    timeConstantS: sourced(0.001, 2, 3),
    transition: sourced(0.5, 2, 1),
    index: sourced(0.2, 0.9, 2),
    shift,
  }),
  fc.record({
    model: fc.constant('crossWlf' as const),
    d1PaS: sourced(1, 500, 0).map((s) => madeUp(s.value * 1e9)),
    d2K: sourced(320, 375, 2),
    d3KPerPa: fc.constantFrom(madeUp(0), madeUp(2e-7)),
    a1: sourced(18, 32, 1),
    a2K: sourced(50, 65, 1),
    criticalStressPa: sourced(10_000, 150_000, 0),
    index: sourced(0.2, 0.6, 2),
  }),
);

const anyFiller: fc.Arbitrary<Material['filler']> = fc.option(
  fc.record({ volumeFraction: sourced(0, 0.35, 2), maxPacking: sourced(0.45, 0.7, 2) }),
  { nil: undefined },
);

const anyGrain: fc.Arbitrary<Material['grain']> = decimal(0.3, 4, 2).chain((d50) =>
  fc.record({
    d10Mm: fc.constant(madeUp(d50 * 0.8)),
    d50Mm: fc.constant(madeUp(d50)),
    d90Mm: fc.constant(madeUp(d50 * 1.25)),
    aspectRatio: sourced(1, 6, 1),
  }),
);

const base = loadMaterial('pla');

/** A valid material on the base of generic PLA. */
export const anyMaterial: fc.Arbitrary<Material> = fc.tuple(anyRheology, anyFiller, anyGrain).map(
  ([rheology, filler, grain]): Material => ({
    ...base,
    id: 'generated',
    name: 'Generated',
    invented: true,
    rheology,
    ...(filler ? { filler } : {}),
    grain,
  }),
);
