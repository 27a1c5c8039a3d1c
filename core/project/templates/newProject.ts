/** A first project from the few things that cannot be guessed; everything else follows rules that are told. */

import type { Material } from '../materialSchema.ts';
import { type Project, projectFormat, projectVersion, type Revision } from '../schema.ts';
import { newBarrel, newDrive, newHopper, newNozzle, newPrint, newProcess } from './newParts.ts';
import { neat, screwRoom } from './room.ts';
import { templateScrew } from './screwTemplates.ts';

/** What is asked. */
export interface NewProjectAsk {
  readonly name: string;
  readonly boreMm: number;
  /** length of the barrel that heaters cover */
  readonly heatedMm: number;
  readonly orificeMm: number;
  readonly material: Material;
  /** pull-out torque of the motor near standstill, before the gear */
  readonly torqueNm: number;
  /** motor turns per screw turn */
  readonly gearRatio: number;
  /** year-month-day, for the revision */
  readonly date: string;
}

/** Limits of the numbers that are asked: within them every new project is a valid design. */
export const askRanges = {
  boreMm: { least: 5, most: 80, whole: false },
  /** over the bore */
  heated: { least: 3, most: 30 },
  /** over the bore */
  orifice: { least: 0.01, most: 0.5 },
  torqueNm: { least: 0.01, most: 500, whole: false },
  gearRatio: { least: 0.1, most: 1000, whole: false },
} as const;

/** Steel of the screw, values from memory. */
const steel = {
  name: 'heat-treatable steel, hardened and tempered',
  yieldMPa: 650,
  youngGPa: 210,
  conductivityWPerMK: 42,
  expansionPerMK: 11.5,
};

/** Clearance over the bore on one side, and the least that small shops hold; own choice. */
const clearanceShare = 0.005;
const leastClearanceMm = 0.05;

const clearanceOf = (boreMm: number): number =>
  Math.max(leastClearanceMm, Math.round(clearanceShare * boreMm * 100) / 100);

function revisionOf(ask: NewProjectAsk): Revision {
  const { boreMm, material } = ask;
  const barrel = newBarrel(ask);
  const nozzle = newNozzle(ask);
  const tip = { kind: 'cone' as const, includedAngleDeg: 60, pinDiameterMm: 0, pinLengthMm: 0 };
  const shank = { diameterMm: neat(0.7 * boreMm), lengthMm: neat(2 * boreMm), filletMm: neat(0.05 * boreMm) };
  const clearance = clearanceOf(boreMm);
  const bare: Revision = {
    id: 'A',
    name: 'First screw',
    date: ask.date,
    locked: false,
    parent: null,
    materialId: material.id,
    screw: { hand: 'right', radialClearanceMm: clearance, sections: [], tip, shank, steel },
    barrel,
    nozzle,
    hopper: newHopper(ask),
    drive: newDrive(ask),
  };
  // The cone of the tip runs beside the cone of the entry, so the screw may reach the end of the barrel.
  const endMm = Number((barrel.lengthMm - neat(0.1 * boreMm)).toFixed(3));
  const fitting = { totalMm: endMm, lastRootMm: boreMm, endsPlain: false };
  const screw = templateScrew('tapered', { ...screwRoom(bare, material, false), fitting });
  return { ...bare, screw: { ...bare.screw, sections: screw.sections, tip: screw.tip } };
}

/**
 * The project.
 * @param ask numbers within askRanges
 */
export function newProject(ask: NewProjectAsk): Project {
  return {
    format: projectFormat,
    version: projectVersion,
    name: ask.name,
    invented: false,
    activeRevision: 'A',
    revisions: [revisionOf(ask)],
    materials: [ask.material],
    process: newProcess(),
    print: newPrint(ask),
    benchLog: [],
  };
}
