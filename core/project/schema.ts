/** Shape of a saved project: JSON, units in the field names, unknown fields kept. */

import { z } from 'zod';
import { calibrationSchema, trialSchema } from './benchSchema.ts';
import { materialSchema } from './materialSchema.ts';

export { type Calibration, type Trial, trialSchema } from './benchSchema.ts';

/** Name that every project file carries. */
export const projectFormat = 'augerwright-project';
/** Version this program writes; older ones are migrated, newer ones refused. */
export const projectVersion = 1;

const mm = (min: number, max: number) => z.number().min(min).max(max);
const name = z.string().min(1).max(120);

const flightedSection = z.looseObject({
  kind: z.literal('flighted'),
  name: name.optional(),
  lengthMm: mm(0.5, 2000),
  /** axial advance of one flight in one turn at the section's start and end */
  leadStartMm: mm(1, 400),
  leadEndMm: mm(1, 400),
  rootDiameterStartMm: mm(1, 200),
  rootDiameterEndMm: mm(1, 200),
  starts: z.int().min(1).max(6),
  /** axial width of the flight's land at its tip */
  flightWidthMm: mm(0, 60),
  /** angle of each flank from the plane normal to the axis; 0 = square, larger = V-shaped */
  flankAngleDeg: mm(0, 60),
  rootFilletMm: mm(0, 50),
});

const plainSection = z.looseObject({
  kind: z.literal('plain'),
  name: name.optional(),
  lengthMm: mm(0.5, 2000),
  rootDiameterStartMm: mm(0.5, 200),
  rootDiameterEndMm: mm(0.5, 200),
});

/** One stretch of the screw, from the feed end on. */
const sectionSchema = z.discriminatedUnion('kind', [flightedSection, plainSection]);

/** End of the screw; `pin` is a plain cylinder ahead of the tip's body. */
const tipSchema = z.discriminatedUnion('kind', [
  z.looseObject({ kind: z.literal('flat'), pinDiameterMm: mm(0, 100), pinLengthMm: mm(0, 200) }),
  z.looseObject({
    kind: z.literal('cone'),
    includedAngleDeg: mm(10, 170),
    pinDiameterMm: mm(0, 100),
    pinLengthMm: mm(0, 200),
  }),
  z.looseObject({ kind: z.literal('hemisphere'), pinDiameterMm: mm(0, 100), pinLengthMm: mm(0, 200) }),
]);

/** The screw: z = 0 at the start of its first section, where the bore begins. */
export const screwSchema = z.looseObject({
  hand: z.enum(['right', 'left']),
  /** barrel bore radius minus flight radius */
  radialClearanceMm: mm(0, 5),
  sections: z.array(sectionSchema).min(1).max(40),
  tip: tipSchema,
  /** fillet between shank and screw; absent = not known, taken as sharp */
  shank: z.looseObject({ diameterMm: mm(1, 200), lengthMm: mm(0, 500), filletMm: mm(0, 50).optional() }),
  steel: z.looseObject({
    name,
    yieldMPa: mm(5, 3000),
    youngGPa: mm(0.5, 700),
    conductivityWPerMK: mm(0.1, 500),
    expansionPerMK: mm(0, 200),
  }),
});

/** A stretch of the barrel's length with its own heating or cooling. */
const zoneSchema = z.discriminatedUnion('kind', [
  z.looseObject({
    kind: z.literal('heated'),
    name,
    startMm: mm(0, 3000),
    endMm: mm(0, 3000),
    setTempC: mm(-20, 480),
    maxPowerW: mm(0, 20000),
  }),
  z.looseObject({ kind: z.literal('insulated'), name, startMm: mm(0, 3000), endMm: mm(0, 3000) }),
  z.looseObject({
    kind: z.literal('cooled'),
    name,
    startMm: mm(0, 3000),
    endMm: mm(0, 3000),
    coolantTempC: mm(-20, 200),
  }),
]);

/** The barrel: bore from z = 0 to its length. */
export const barrelSchema = z.looseObject({
  boreDiameterMm: mm(3, 200),
  outerDiameterMm: mm(4, 500),
  lengthMm: mm(5, 3000),
  conductivityWPerMK: mm(0.1, 500),
  /** heat capacity by volume; absent = not known, taken as steel */
  heatCapacityMJPerM3K: mm(0.5, 10).optional(),
  /** highest pressure that barrel, nozzle and joints are allowed; absent = not known */
  pressureLimitMPa: mm(0.1, 500).optional(),
  feedOpening: z.looseObject({ startMm: mm(0, 3000), lengthMm: mm(0.5, 500), widthMm: mm(0.5, 500) }),
  zones: z.array(zoneSchema).min(1).max(20),
  heatBreak: z
    .looseObject({
      startMm: mm(0, 3000),
      lengthMm: mm(0.5, 500),
      wallMm: mm(0.1, 50),
      conductivityWPerMK: mm(0.1, 500),
    })
    .nullable(),
});

/** The bore after the barrel, as straight pieces in the direction of flow; length 0 is a flat shoulder or ledge. */
export const nozzleSchema = z.looseObject({
  segments: z
    .array(z.looseObject({ name, lengthMm: mm(0, 300), startDiameterMm: mm(0.05, 300), endDiameterMm: mm(0.05, 300) }))
    .min(1)
    .max(30),
  outerDiameterMm: mm(1, 500),
  setTempC: mm(-20, 480),
  maxPowerW: mm(0, 20000),
});

/** The hopper above the feed opening. */
const hopperSchema = z.looseObject({
  outletDiameterMm: mm(1, 1000),
  wallHalfAngleDeg: mm(0, 80),
  heightMm: mm(1, 3000),
  wallFriction: z.number().min(0).max(1.5),
  /** widest gap through which grains could trickle out */
  gapMm: mm(0, 50),
  agitation: z.enum(['none', 'stirrer', 'vibration']),
});

/** Motor, gear and stepping. */
export const driveSchema = z.looseObject({
  /** pull-out torque at motor speed, rising speed */
  motorCurve: z
    .array(z.looseObject({ speedRpm: mm(0, 30000), torqueNm: mm(0, 1000) }))
    .min(2)
    .max(60),
  gearRatio: z.number().min(0.1).max(1000),
  gearEfficiency: z.number().min(0.05).max(1),
  /** share of the available torque that may be used continuously */
  usableTorqueShare: z.number().min(0.05).max(1),
  fullStepsPerTurn: z.int().min(1).max(10000),
  microsteps: z.int().min(1).max(1024),
  /** axial bearing that takes the thrust; absent = not known */
  bearing: z
    .looseObject({
      kind: z.enum(['ball', 'roller']),
      staticLoadN: mm(1, 1e7),
      dynamicLoadN: mm(1, 1e7).optional(),
    })
    .optional(),
});

/** One state of the machine, branched from another. */
export const revisionSchema = z.looseObject({
  id: z
    .string()
    .regex(/^[A-Za-z0-9][A-Za-z0-9._-]*$/)
    .max(40),
  name,
  note: z.string().max(4000).optional(),
  date: z.iso.date().optional(),
  locked: z.boolean().optional(),
  parent: z.string().max(40).nullable().optional(),
  materialId: z.string().max(60),
  /** calibration of the project that this revision is predicted with; absent = none */
  calibrationId: z.string().max(60).optional(),
  screw: screwSchema,
  barrel: barrelSchema,
  nozzle: nozzleSchema,
  hopper: hopperSchema,
  drive: driveSchema,
});

/** How the machine is run. */
export const processSchema = z.looseObject({
  screwSpeedRpm: mm(0.01, 3000),
  /** flood: the hopper keeps the feed full; starved: a feeder meters this rate */
  feed: z.discriminatedUnion('kind', [
    z.looseObject({ kind: z.literal('flood') }),
    z.looseObject({ kind: z.literal('starved'), rateGPerMin: mm(0.0001, 1e5) }),
  ]),
  ambientC: mm(-30, 80),
  feedC: mm(-30, 200),
  /** pressure where the melt leaves, above ambient */
  backPressureMPa: mm(0, 200),
  acceptableDeltaE: mm(0.1, 100),
});

/** What the print asks for. */
export const printSchema = z.looseObject({
  lineWidthMm: mm(0.05, 100),
  layerHeightMm: mm(0.01, 50),
  speedMmPerS: mm(0.01, 2000),
  wallThicknessMm: mm(0.05, 500),
  travelShare: z.number().min(0).max(0.95),
  idleShare: z.number().min(0).max(0.95),
  nozzleHeightMm: mm(0.01, 200),
  /** surroundings of the laid line; absent = not known */
  bedC: mm(-20, 300).optional(),
  chamberC: mm(-20, 300).optional(),
  /** heat transfer from the laid line to the air */
  coolingWPerM2K: mm(1, 1000).optional(),
  /** virtual filament of the controller; absent = 1.128 mm, of which 1 mm is 1 mm³ */
  filamentDiameterMm: mm(0.1, 10).optional(),
});

/** A range on any number of the file; the path starts at the revision, 'material', 'process' or 'print'. */
const doubtSchema = z.looseObject({
  path: z.string().min(1).max(200),
  low: z.number(),
  high: z.number(),
});

/** The whole file. */
export const projectSchema = z.looseObject({
  format: z.literal(projectFormat),
  version: z.literal(projectVersion),
  name,
  note: z.string().max(8000).optional(),
  /** True for examples whose machine and figures are invented; said wherever they are shown. */
  invented: z.boolean(),
  activeRevision: z.string().max(40),
  revisions: z.array(revisionSchema).min(1).max(200),
  materials: z.array(materialSchema).min(1).max(60),
  process: processSchema,
  print: printSchema,
  benchLog: z.array(trialSchema).max(5000),
  calibrations: z.array(calibrationSchema).max(200).optional(),
  doubts: z.array(doubtSchema).max(500).optional(),
});

/** A project as stored. */
export type Project = z.infer<typeof projectSchema>;
/** A revision as stored. */
export type Revision = z.infer<typeof revisionSchema>;
/** A section as stored. */
export type SectionInput = z.infer<typeof sectionSchema>;
