/** Parts of a new project by rules over bore, orifice and granulate. Rules are told in newProject.ts; lengths mm. */

import type { Project, Revision } from '../schema.ts';
import type { NewProjectAsk } from './newProject.ts';
import { neat } from './room.ts';

/** Cooled feed and heat break, over the bore; own choice. */
const feedLength = 3;
const breakLength = 1;
/** Watts per square millimetre of a heated outside: 2 to 5 W/cm² is common practice for small heaters. */
const wattsPerMm2 = 0.04;

/** Where in the granulate's working window a heater is set, 0 to 1. */
function setAt({ material }: NewProjectAsk, share: number): number {
  const [low, high] = [material.windowLowC.value, material.windowHighC.value];
  return Math.round(low + share * (high - low));
}

const tens = (watts: number): number => Math.max(10, Math.round(watts / 10) * 10);

/** Barrel with a cooled feed block, a heat break and two heated zones. */
export function newBarrel(ask: NewProjectAsk): Revision['barrel'] {
  const { boreMm, heatedMm } = ask;
  const outerDiameterMm = neat(Math.max(2 * boreMm, boreMm + 10));
  const breakMm = neat(feedLength * boreMm);
  const hotMm = breakMm + neat(breakLength * boreMm);
  const middleMm = neat(hotMm + heatedMm / 2);
  const lengthMm = Number((hotMm + heatedMm).toFixed(3));
  const maxPowerW = Math.min(20_000, tens((wattsPerMm2 * Math.PI * outerDiameterMm * heatedMm) / 2));
  return {
    boreDiameterMm: boreMm,
    outerDiameterMm,
    lengthMm,
    conductivityWPerMK: 42,
    heatCapacityMJPerM3K: 3.7,
    feedOpening: { startMm: neat(0.4 * boreMm), lengthMm: neat(1.7 * boreMm), widthMm: neat(0.85 * boreMm) },
    zones: [
      { kind: 'cooled', name: 'feed block', startMm: 0, endMm: breakMm, coolantTempC: 25 },
      { kind: 'insulated', name: 'heat break', startMm: breakMm, endMm: hotMm },
      { kind: 'heated', name: 'melting zone', startMm: hotMm, endMm: middleMm, setTempC: setAt(ask, 1 / 3), maxPowerW },
      {
        kind: 'heated',
        name: 'metering zone',
        startMm: middleMm,
        endMm: lengthMm,
        setTempC: setAt(ask, 0.5),
        maxPowerW,
      },
    ],
    heatBreak: {
      startMm: breakMm,
      lengthMm: Number((hotMm - breakMm).toFixed(3)),
      wallMm: neat(Math.max(1.2, 0.1 * boreMm)),
      conductivityWPerMK: 16,
    },
  };
}

/** Length of a cone of 60 degrees between two diameters. */
const cone60 = (from: number, to: number): number => Number(((from - to) / 2 / Math.tan(Math.PI / 6)).toFixed(3));

/** Nozzle: entry of 60 degrees, bore, cone of 60 degrees, land of two orifices (common practice). */
export function newNozzle(ask: NewProjectAsk): Revision['nozzle'] {
  const { boreMm, orificeMm } = ask;
  const innerMm = Math.max(neat(0.35 * boreMm), Number((1.2 * orificeMm).toFixed(3)));
  const outerDiameterMm = neat(boreMm + Math.max(4, 0.3 * boreMm));
  return {
    segments: [
      { name: 'entry', lengthMm: cone60(boreMm, innerMm), startDiameterMm: boreMm, endDiameterMm: innerMm },
      { name: 'bore', lengthMm: neat(0.5 * boreMm), startDiameterMm: innerMm, endDiameterMm: innerMm },
      { name: 'tip cone', lengthMm: cone60(innerMm, orificeMm), startDiameterMm: innerMm, endDiameterMm: orificeMm },
      {
        name: 'land',
        lengthMm: Number((2 * orificeMm).toFixed(3)),
        startDiameterMm: orificeMm,
        endDiameterMm: orificeMm,
      },
    ],
    outerDiameterMm,
    setTempC: setAt(ask, 0.5),
    maxPowerW: tens(wattsPerMm2 * Math.PI * outerDiameterMm * boreMm),
  };
}

/** A steep hopper over the whole opening. */
export const newHopper = ({ boreMm }: NewProjectAsk): Revision['hopper'] => ({
  outletDiameterMm: neat(1.7 * boreMm),
  wallHalfAngleDeg: 25,
  heightMm: neat(8 * boreMm),
  wallFriction: 0.3,
  gapMm: 0.2,
  agitation: 'none',
});

/** Pull-out torque of a stepper over its speed, as a share of that near standstill; a common shape, own choice. */
const torqueShape: readonly (readonly [speedRpm: number, share: number])[] = [
  [0, 1],
  [60, 0.98],
  [150, 0.92],
  [300, 0.8],
  [600, 0.5],
  [900, 0.3],
];

/** Stepper and planetary gear. */
export const newDrive = ({ torqueNm, gearRatio }: NewProjectAsk): Revision['drive'] => ({
  motorCurve: torqueShape.map(([speedRpm, share]) => ({
    speedRpm,
    torqueNm: Number((share * torqueNm).toPrecision(4)),
  })),
  gearRatio,
  gearEfficiency: 0.85,
  usableTorqueShare: 0.7,
  fullStepsPerTurn: 200,
  microsteps: 16,
});

/** How it is run to begin with. */
export const newProcess = (): Project['process'] => ({
  screwSpeedRpm: 20,
  feed: { kind: 'flood' },
  ambientC: 22,
  feedC: 22,
  backPressureMPa: 0,
  acceptableDeltaE: 3,
});

/** Lines of one and a half orifices in layers of six tenths of one; walls of two lines. */
export function newPrint({ orificeMm }: NewProjectAsk): Project['print'] {
  const at = (share: number) => Number((share * orificeMm).toPrecision(3));
  return {
    lineWidthMm: at(1.5),
    layerHeightMm: at(0.6),
    speedMmPerS: 30,
    wallThicknessMm: at(3),
    travelShare: 0.1,
    idleShare: 0.05,
    nozzleHeightMm: at(0.6),
  };
}
