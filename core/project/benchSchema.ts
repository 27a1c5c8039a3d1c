/** Shape of the bench log: trials, and what they say of the model. */

import { z } from 'zod';

const mm = (min: number, max: number) => z.number().min(min).max(max);
const name = z.string().min(1).max(120);

/** One weighed run on the bench. */
export const trialSchema = z.looseObject({
  id: z.string().min(1).max(60),
  date: z.iso.date(),
  revisionId: z.string().max(40),
  materialId: z.string().max(60),
  lot: z.string().max(120).optional(),
  screwSpeedRpm: mm(0, 3000),
  setTempsC: z.array(mm(-20, 480)).max(30),
  seconds: z.number().min(0.1).max(1e6),
  grams: z.number().min(0).max(1e6),
  torqueNm: mm(0, 10000).optional(),
  currentA: z.number().min(0).max(1000).optional(),
  photo: z.string().max(400).optional(),
  lab: z.tuple([z.number().min(0).max(100), z.number().min(-128).max(128), z.number().min(-128).max(128)]).optional(),
  note: z.string().max(4000).optional(),
  /** left out of calibration, and why */
  excluded: z.boolean().optional(),
  excludedWhy: z.string().max(400).optional(),
});

/** A factor found from trials, with its 95 % limits; `fitted` is false where it was held at 1. */
const factorSchema = z.looseObject({
  value: z.number().min(0.01).max(100),
  low: z.number().min(0).max(1e4),
  high: z.number().min(0).max(1e4),
  fitted: z.boolean(),
});

/** What a set of trials says about the model's named factors. */
export const calibrationSchema = z.looseObject({
  id: z.string().min(1).max(60),
  name,
  date: z.iso.date().optional(),
  materialId: z.string().max(60),
  trialIds: z.array(z.string().max(60)).max(5000),
  /** what the factors were found for: the formulas alone, or with solved fields; not known where absent */
  fields: z.enum(['formula', 'solved']).optional(),
  factors: z.looseObject({
    /** on the feed capacity */
    feed: factorSchema,
    /** on the viscosity */
    viscosity: factorSchema,
    /** on the friction of granules on the barrel */
    wallFriction: factorSchema,
    /** on the rate of the law that drives the colour */
    colourRate: factorSchema,
  }),
  /** root mean square of ln(measured / predicted): before, after, and leaving each trial out in turn */
  error: z.looseObject({
    before: z.number().min(0),
    after: z.number().min(0),
    leaveOneOut: z.number().min(0).nullable(),
  }),
});

/** A bench trial as stored. */
export type Trial = z.infer<typeof trialSchema>;
/** A calibration as stored. */
export type Calibration = z.infer<typeof calibrationSchema>;
