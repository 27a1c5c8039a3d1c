/** A first project from the few things that cannot be guessed; everything else follows rules that are told. */

import type { Unit } from '../../units.ts';
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

/** One value that was not asked. */
export interface Assumed {
  readonly label: string;
  /** in `unit` */
  readonly value: number;
  readonly unit: Unit | '';
  readonly rule: string;
  readonly source: 'common practice' | 'own choice' | 'from memory' | 'granulate';
}

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

/** What the project of these answers takes for granted, read back from it. */
export function assumedValues(project: Project): Assumed[] {
  const [revision] = project.revisions;
  if (!revision) return [];
  const { screw, barrel, nozzle, hopper } = revision;
  const heated = barrel.zones.find((zone) => zone.kind === 'heated');
  const root = (end: 'first' | 'last') =>
    (end === 'first' ? screw.sections[0] : screw.sections.at(-1))?.rootDiameterEndMm ?? Number.NaN;
  const mm = (label: string, value: number, rule: string, source: Assumed['source'] = 'own choice'): Assumed => ({
    label,
    value,
    unit: 'mm',
    rule,
    source,
  });
  return [
    mm('Barrel length', barrel.lengthMm, 'four bores of cooled feed and heat break, and the heated length'),
    mm('Barrel outer Ø', barrel.outerDiameterMm, 'twice the bore, 10 mm more at least', 'common practice'),
    mm('Feed opening', barrel.feedOpening.lengthMm, '1.7 bores long, so that every turn passes under it'),
    mm('Flight clearance', screw.radialClearanceMm, '0.5 % of the bore, 0.05 mm at least'),
    mm(
      'Root Ø at the feed',
      root('first'),
      '1.3 grains or 0.18 bores deep, a core of 0.4 bores at least',
      'common practice',
    ),
    mm('Root Ø at the end', root('last'), 'depth falls 2.5 times', 'common practice'),
    mm('Lead', barrel.boreDiameterMm, 'one bore', 'common practice'),
    {
      label: 'Set temperatures',
      value: nozzle.setTempC,
      unit: '°C',
      rule: 'a third, then the middle of the granulate’s working window',
      source: 'granulate',
    },
    {
      label: 'Heater power per zone',
      value: heated?.kind === 'heated' ? heated.maxPowerW : Number.NaN,
      unit: 'W',
      rule: '4 W on each cm² of the outside',
      source: 'common practice',
    },
    mm('Hopper outlet Ø', hopper.outletDiameterMm, 'as long as the feed opening'),
    {
      label: 'Screw speed',
      value: project.process.screwSpeedRpm,
      unit: 'rpm',
      rule: 'to begin with',
      source: 'own choice',
    },
    mm('Line width', project.print.lineWidthMm, '1.5 orifices, layers of 0.6 orifices', 'common practice'),
  ];
}
