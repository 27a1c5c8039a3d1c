/** Stored millimetres, degrees and rpm to SI, field by field; nothing is judged here. */

import type { Project, Revision, SectionInput } from '../project/schema.ts';
import { toSi } from '../units.ts';
import type {
  Barrel,
  DesignCalibration,
  Drive,
  Hopper,
  Nozzle,
  PrintDemand,
  Process,
  Screw,
  ScrewSection,
  ScrewTip,
  Zone,
} from './types.ts';

const mm = (value: number): number => toSi(value, 'mm');
const kelvin = (value: number): number => toSi(value, '°C');
const radians = (value: number): number => toSi(value, '°');

/** A field that may be left out: converted where it is there, null where not. */
const ifKnown = <T, U>(value: T | undefined, convert: (value: T) => U): U | null =>
  value === undefined ? null : convert(value);

function sectionOf(s: SectionInput): ScrewSection {
  const shared = {
    length: mm(s.lengthMm),
    rootDiameterStart: mm(s.rootDiameterStartMm),
    rootDiameterEnd: mm(s.rootDiameterEndMm),
  };
  if (s.kind === 'plain') return { kind: 'plain', ...shared };
  return {
    kind: 'flighted',
    ...shared,
    leadStart: mm(s.leadStartMm),
    leadEnd: mm(s.leadEndMm),
    starts: s.starts,
    flightWidth: mm(s.flightWidthMm),
    flankAngle: radians(s.flankAngleDeg),
    rootFillet: mm(s.rootFilletMm),
  };
}

function tipOf(tip: Revision['screw']['tip']): ScrewTip {
  const angles = { flat: Math.PI, hemisphere: 0 };
  return {
    kind: tip.kind,
    includedAngle: tip.kind === 'cone' ? radians(tip.includedAngleDeg) : angles[tip.kind],
    pinDiameter: mm(tip.pinDiameterMm),
    pinLength: mm(tip.pinLengthMm),
  };
}

/** Screw in SI. */
export function screwOf({ screw }: Revision): Screw {
  return {
    hand: screw.hand,
    radialClearance: mm(screw.radialClearanceMm),
    sections: screw.sections.map(sectionOf),
    tip: tipOf(screw.tip),
    shankDiameter: mm(screw.shank.diameterMm),
    shankLength: mm(screw.shank.lengthMm),
    shankFillet: ifKnown(screw.shank.filletMm, mm),
    steel: {
      name: screw.steel.name,
      yieldStress: toSi(screw.steel.yieldMPa, 'MPa'),
      young: toSi(screw.steel.youngGPa, 'GPa'),
      conductivity: screw.steel.conductivityWPerMK,
      expansion: toSi(screw.steel.expansionPerMK, 'µm/(m·K)'),
    },
  };
}

function zoneOf(zone: Revision['barrel']['zones'][number]): Zone {
  const place = { name: zone.name, start: mm(zone.startMm), end: mm(zone.endMm) };
  switch (zone.kind) {
    case 'heated':
      return { kind: 'heated', ...place, setTemperature: kelvin(zone.setTempC), maxPower: zone.maxPowerW };
    case 'cooled':
      return { kind: 'cooled', ...place, coolantTemperature: kelvin(zone.coolantTempC) };
    default:
      return { kind: 'insulated', ...place };
  }
}

/** Barrel in SI, zones in order of place. */
export function barrelOf({ barrel }: Revision): Barrel {
  const { heatBreak, feedOpening } = barrel;
  return {
    boreDiameter: mm(barrel.boreDiameterMm),
    outerDiameter: mm(barrel.outerDiameterMm),
    length: mm(barrel.lengthMm),
    conductivity: barrel.conductivityWPerMK,
    heatCapacity: ifKnown(barrel.heatCapacityMJPerM3K, (value) => toSi(value, 'MJ/(m³·K)')),
    pressureLimit: ifKnown(barrel.pressureLimitMPa, (value) => toSi(value, 'MPa')),
    feedOpening: { start: mm(feedOpening.startMm), length: mm(feedOpening.lengthMm), width: mm(feedOpening.widthMm) },
    zones: barrel.zones.map(zoneOf).sort((a, b) => a.start - b.start),
    heatBreak: heatBreak && {
      start: mm(heatBreak.startMm),
      length: mm(heatBreak.lengthMm),
      wall: mm(heatBreak.wallMm),
      conductivity: heatBreak.conductivityWPerMK,
    },
  };
}

/** Nozzle in SI. */
export function nozzleOf({ nozzle }: Revision): Nozzle {
  return {
    segments: nozzle.segments.map((s) => ({
      name: s.name,
      length: mm(s.lengthMm),
      startDiameter: mm(s.startDiameterMm),
      endDiameter: mm(s.endDiameterMm),
    })),
    outerDiameter: mm(nozzle.outerDiameterMm),
    setTemperature: kelvin(nozzle.setTempC),
    maxPower: nozzle.maxPowerW,
  };
}

/** Hopper in SI. */
export function hopperOf({ hopper }: Revision): Hopper {
  return {
    outletDiameter: mm(hopper.outletDiameterMm),
    wallHalfAngle: radians(hopper.wallHalfAngleDeg),
    height: mm(hopper.heightMm),
    wallFriction: hopper.wallFriction,
    gap: mm(hopper.gapMm),
    agitation: hopper.agitation,
  };
}

/** Drive in SI: rev/s, N m. */
export function driveOf({ drive }: Revision): Drive {
  return {
    motorCurve: drive.motorCurve.map((p) => ({ speed: toSi(p.speedRpm, 'rpm'), torque: p.torqueNm })),
    gearRatio: drive.gearRatio,
    gearEfficiency: drive.gearEfficiency,
    usableTorqueShare: drive.usableTorqueShare,
    fullStepsPerTurn: drive.fullStepsPerTurn,
    microsteps: drive.microsteps,
    bearing: ifKnown(drive.bearing, ({ kind, staticLoadN, dynamicLoadN }) => ({
      kind,
      staticLoad: staticLoadN,
      dynamicLoad: dynamicLoadN ?? null,
    })),
  };
}

/** Process in SI: rev/s, kg/s, K, Pa. */
export function processOf({ process }: Project): Process {
  return {
    screwSpeed: toSi(process.screwSpeedRpm, 'rpm'),
    starvedRate: process.feed.kind === 'starved' ? toSi(process.feed.rateGPerMin, 'g/min') : null,
    ambient: kelvin(process.ambientC),
    feedTemperature: kelvin(process.feedC),
    backPressure: toSi(process.backPressureMPa, 'MPa'),
    acceptableDeltaE: process.acceptableDeltaE,
  };
}

/** Print demand in SI. */
export function printOf({ print }: Project): PrintDemand {
  return {
    lineWidth: mm(print.lineWidthMm),
    layerHeight: mm(print.layerHeightMm),
    speed: toSi(print.speedMmPerS, 'mm/s'),
    wallThickness: mm(print.wallThicknessMm),
    travelShare: print.travelShare,
    idleShare: print.idleShare,
    nozzleHeight: mm(print.nozzleHeightMm),
    bedTemperature: ifKnown(print.bedC, kelvin),
    chamberTemperature: ifKnown(print.chamberC, kelvin),
    coolingCoefficient: ifKnown(print.coolingWPerM2K, (value) => toSi(value, 'W/(m²·K)')),
    filamentDiameter: ifKnown(print.filamentDiameterMm, mm),
  };
}

/** The calibration a revision names, or null; its factors have no units. */
export function calibrationOf({ calibrations }: Project, { calibrationId }: Revision): DesignCalibration | null {
  const stored = calibrations?.find(({ id }) => id === calibrationId);
  if (!stored) return null;
  const { id, name, date, materialId, trialIds, factors } = stored;
  return {
    id,
    name,
    date: date ?? null,
    materialId,
    trials: trialIds,
    feed: factors.feed,
    viscosity: factors.viscosity,
    wallFriction: factors.wallFriction,
    colourRate: factors.colourRate,
  };
}
