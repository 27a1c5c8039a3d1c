/** Shape of a material inside a project file or the library: every value carries source and status. */

import { z } from 'zod';

// No code made from text: the window's content policy forbids it, and checks are no slower without.
z.config({ jitless: true });

/** Where a value comes from. `invented` is for demo data only. */
const valueStatus = z.enum(['seen', 'from memory', 'common practice', 'measured here', 'estimated', 'invented']);

/** One material value: number, optional doubt range, source and status; its unit stands in the field name. */
function sourced(min: number, max: number) {
  return z.looseObject({
    value: z.number().min(min).max(max),
    low: z.number().min(min).max(max).optional(),
    high: z.number().min(min).max(max).optional(),
    source: z.string().min(1).max(600),
    status: valueStatus,
  });
}

/** Temperature shift of a law stated at a reference temperature. */
const temperatureShift = z.discriminatedUnion('kind', [
  z.looseObject({ kind: z.literal('none') }),
  /** aT = exp[Ea/R (1/T - 1/Tref)] */
  z.looseObject({
    kind: z.literal('arrhenius'),
    referenceC: z.number().min(-50).max(450),
    activationKJPerMol: sourced(0, 400),
  }),
  /** aT = exp[-b (T - Tref)] */
  z.looseObject({
    kind: z.literal('exponential'),
    referenceC: z.number().min(-50).max(450),
    coefficientPerK: sourced(0, 0.3),
  }),
]);

const rheology = z.discriminatedUnion('model', [
  /** No law: the material can be looked at, but nothing that flows can be predicted. */
  z.looseObject({
    model: z.literal('unknown'),
    /** Why, and what to do about it. */
    reason: z.string().min(1).max(400),
    /** The move with temperature may be known where the level is not. */
    shift: temperatureShift,
  }),
  z.looseObject({ model: z.literal('newtonian'), viscosityPaS: sourced(1e-4, 1e7), shift: temperatureShift }),
  z.looseObject({
    model: z.literal('powerLaw'),
    consistencyPaSn: sourced(1e-3, 1e7),
    index: sourced(0.2, 1.5),
    shift: temperatureShift,
  }),
  z.looseObject({
    model: z.literal('carreauYasuda'),
    zeroShearViscosityPaS: sourced(1e-4, 1e8),
    infiniteShearViscosityPaS: sourced(0, 1e5),
    timeConstantS: sourced(1e-7, 1e4),
    transition: sourced(0.1, 5),
    index: sourced(0.05, 1.2),
    shift: temperatureShift,
  }),
  /** eta0 = D1 exp[-A1 (T - T*)/(A2 + T - T*)], T* = D2 + D3 p, A2 = A2t + D3 p; Cross with tauStar. */
  z.looseObject({
    model: z.literal('crossWlf'),
    d1PaS: sourced(1e-6, 1e30),
    d2K: sourced(150, 700),
    d3KPerPa: sourced(0, 1e-5),
    a1: sourced(0.1, 100),
    a2K: sourced(0.5, 500),
    criticalStressPa: sourced(1, 1e7),
    index: sourced(0.05, 1),
  }),
]);

/** Filler raises the base viscosity by (1 - phi/phiMax)^-2 (Maron and Pierce 1956). */
const filler = z.looseObject({ volumeFraction: sourced(0, 0.6), maxPacking: sourced(0.3, 0.8) });

/** What every degradation law says about itself. */
const lawHead = {
  id: z.string().min(1),
  /** What is observed, e.g. colour difference or chain scission. */
  observed: z.string().min(1),
};

/** Where every degradation law was measured; below and above it is extrapolated. */
const lawRange = { validFromC: z.number(), validToC: z.number() };

const referenceC = z.number().min(-50).max(500);

/** One first-order step of a series. */
const lawStep = z.looseObject({
  /** at the reference temperature, 1/s */
  rateAtReferencePerS: sourced(0, 1e6),
  activationKJPerMol: sourced(0, 500),
  /** mass of solid product per mass of what reacts */
  solidYield: sourced(0, 1),
});

/** Laws of a change in the melt: by order (kind absent), chain scission, two steps in series, sigmoid with a lag. */
const degradationLaw = z.discriminatedUnion('kind', [
  z.looseObject({
    kind: z.literal('order').optional(),
    ...lawHead,
    /** Zero order: extent = k t in the unit of the observed quantity; first and n-th order: extent in 0..1. */
    order: z.number().min(0).max(4),
    /** rate at the reference temperature, 1/s times the unit of the extent */
    rateAtReferencePerS: sourced(0, 1e6),
    referenceC,
    activationKJPerMol: sourced(0, 500),
    ...lawRange,
  }),
  /** 1/Mn = 1/Mn0 + X/M0 with X = integral of k dt, scissions per repeat unit. */
  z.looseObject({
    kind: z.literal('scission'),
    ...lawHead,
    /** scissions per repeat unit, 1/s */
    rateAtReferencePerS: sourced(0, 1e6),
    referenceC,
    activationKJPerMol: sourced(0, 500),
    repeatUnitMassKgPerMol: sourced(0.001, 10),
    /** number average of the fresh granulate, so that the loss can be told as a share of it */
    initialMolarMassKgPerMol: sourced(0.1, 10_000).optional(),
    ...lawRange,
  }),
  /** Solid A to solid B to solid C, volatiles leaving; the extent is the lost share of mass. */
  z.looseObject({
    kind: z.literal('twoStep'),
    ...lawHead,
    referenceC,
    first: lawStep,
    second: lawStep,
    ...lawRange,
  }),
  /** Modified Gompertz curve in temperature-reduced time; extent 0..1. */
  z.looseObject({
    kind: z.literal('lag'),
    ...lawHead,
    /** steepest rate of the extent, 1/s */
    rateAtReferencePerS: sourced(0, 1e6),
    referenceC,
    activationKJPerMol: sourced(0, 500),
    lagAtReferenceS: sourced(0, 1e9),
    ...lawRange,
  }),
]);

const colourAnchor = z.looseObject({
  extent: z.number().min(0).max(1e4),
  lightness: z.number().min(0).max(100),
  a: z.number().min(-128).max(128),
  b: z.number().min(-128).max(128),
  source: z.string().min(1).max(600).optional(),
  status: valueStatus.optional(),
});

/** Stiffness and strength of the cooled print; temperature below which stress builds up. */
const mechanical = z.looseObject({
  youngGPa: sourced(0.001, 100),
  strengthMPa: sourced(0.01, 2000),
  expansionPerMK: sourced(0, 1000),
  poisson: sourced(0, 0.499),
  /** glass transition or crystallisation temperature, where the print stops yielding to stress */
  setC: sourced(-80, 350),
});

/** Temperatures and shear rates between which the viscosity law was fitted or checked. */
const rheologyRange = z.looseObject({
  fromC: z.number().min(-50).max(450),
  toC: z.number().min(-50).max(450),
  shearFromPerS: z.number().min(0).max(1e7),
  shearToPerS: z.number().min(0).max(1e7),
  source: z.string().min(1).max(600),
  status: valueStatus.optional(),
});

/** A granulate: rheology, densities, grains, friction, heat, degradation, colour, window and cautions. */
export const materialSchema = z.looseObject({
  id: z
    .string()
    .regex(/^[a-z0-9][a-z0-9-]*$/)
    .max(60),
  name: z.string().min(1).max(120),
  note: z.string().max(4000).optional(),
  /** True where the data are invented for an example; shown wherever the material is shown. */
  invented: z.boolean(),
  form: z.enum(['pellet', 'micro-granule', 'flake', 'powder', 'crystal', 'bead']),
  rheology,
  rheologyRange: rheologyRange.optional(),
  filler: filler.optional(),
  meltDensityKgM3: sourced(200, 5000),
  solidDensityKgM3: sourced(200, 6000),
  bulkDensityKgM3: sourced(20, 4000),
  grain: z.looseObject({
    d10Mm: sourced(0.001, 20),
    d50Mm: sourced(0.001, 20),
    d90Mm: sourced(0.001, 20),
    aspectRatio: sourced(1, 20),
  }),
  frictionOnBarrel: sourced(0, 1.5),
  frictionOnScrew: sourced(0, 1.5),
  angleOfReposeDeg: sourced(10, 80).optional(),
  /** effective angle of internal friction of the granules in bulk */
  internalFrictionDeg: sourced(10, 70).optional(),
  /** strength of a free face of the granules, pressed as in the hopper; 0 = free-flowing */
  unconfinedStrengthPa: sourced(0, 1e5).optional(),
  conductivityWPerMK: sourced(0.02, 20),
  heatCapacitySolidJPerKgK: sourced(200, 6000),
  heatCapacityMeltJPerKgK: sourced(200, 6000),
  heatOfFusionJPerKg: sourced(0, 1e6),
  /** Where grains begin to stick and deform: Tg for glassy, near Tm for crystalline materials. */
  softeningC: sourced(-80, 350),
  /** Where it flows: Tm, or well above Tg. */
  meltingC: sourced(-50, 400),
  meltCompressibilityPerGPa: sourced(0.05, 20).optional(),
  surfaceTensionNPerM: sourced(0.001, 0.2).optional(),
  mechanical: mechanical.optional(),
  windowLowC: sourced(-20, 450),
  windowHighC: sourced(-20, 450),
  maxSafeC: sourced(0, 480),
  degradation: z.array(degradationLaw).max(12),
  /** Which degradation law drives the colour. */
  colourLaw: z.string().optional(),
  colourAnchors: z.array(colourAnchor).max(40),
  cautions: z.array(z.string().min(1).max(400)).max(30),
});

/** A material as stored. */
export type Material = z.infer<typeof materialSchema>;
/** A degradation law as stored; `kind` tells the laws apart, absent or 'order' for the order-based one. */
export type StoredLaw = Material['degradation'][number];
/** One sourced value as stored. */
export type Sourced = z.infer<ReturnType<typeof sourced>>;
