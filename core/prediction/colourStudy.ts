/**
 * Colour of one design at other print speeds and other set temperatures: whole predictions, one per place, so that a
 * worker can tell how far it is and be stopped between two.
 */

import { type ColourSweep, keptStretch, type SweepPoint } from '../age/colourSweep.ts';
import type { Design, Zone } from '../design/types.ts';
import { interpolateLinear } from '../math/interpolate.ts';
import { createFieldCache, type FieldCache } from '../path/fieldCache.ts';
import { lineArea } from '../print/bead.ts';
import { formatQuantity } from '../units.ts';
import { predict } from './predict.ts';
import { speedFor } from './printStage.ts';
import type { Prediction, PredictionOptions } from './types.ts';

/** How every prediction of a study is made. */
export interface StudyWay {
  readonly fields: PredictionOptions['fields'];
  /** solved fields, kept by the caller */
  readonly cache?: FieldCache;
}

/** The colour at one place of a study. */
export interface StudyRun {
  /** what was asked: print speed, m/s, or the nozzle's set temperature, K */
  readonly asked: number;
  /** rev/s; null where none was found */
  readonly screwSpeed: number | null;
  /** mean stay of the melt, s; null where nothing flows */
  readonly stay: number | null;
  /** colour there; its `at` is the print speed that is truly fed (m/s), or the set temperature (K) */
  readonly point: SweepPoint | null;
  /** why there is no colour, or null */
  readonly reason: string | null;
}

/** Print speeds of a chart, as shares of the set one; own choice. */
const speedShares = [0.2, 0.35, 0.5, 0.75, 1, 1.5, 2, 3] as const;

/** Shifts of all set temperatures, K; own choice: what an operator would try. */
export const temperatureShifts: readonly number[] = [-20, -10, 10, 20, 30];

/** A flow further off than this from what is asked is corrected once. */
const flowTolerance = 0.005;

const areaOf = ({ print }: Design): number => lineArea(print.lineWidth, print.layerHeight);

/** The prediction as the design is set, with the curve that finds screw speeds. */
export const studyBase = (design: Design, { fields, cache }: StudyWay): Prediction =>
  predict(design, { fields, curvePoints: 16 }, undefined, cache ?? createFieldCache());

function pointOf({ colour }: Prediction, at: number): SweepPoint | null {
  const { dE00Mean, dE00Worst, labMean, srgb, range } = colour;
  if (dE00Mean === null || dE00Worst === null || labMean === null || srgb === null) return null;
  const { dE00MeanLow, dE00MeanHigh } = range ?? { dE00MeanLow: dE00Mean, dE00MeanHigh: dE00Mean };
  return { at, dE00Mean, dE00Worst, labMean, srgb, dE00MeanLow, dE00MeanHigh };
}

function runOf(prediction: Prediction, asked: number, at: number): StudyRun {
  const { output, residence, colour } = prediction;
  if (!output.flows) return { ...nothingAt(asked, 'Nothing comes out.'), screwSpeed: output.screwSpeed };
  const point = pointOf(prediction, at);
  const reason = point ? null : (colour.reason ?? 'The colour cannot be said.');
  return { asked, screwSpeed: output.screwSpeed, stay: residence.mean, point, reason };
}

const nothingAt = (asked: number, reason: string): StudyRun => ({
  ...{ asked, screwSpeed: null, stay: null, point: null },
  reason,
});

/** The design as it is set, as a run of the sweep over print speed: it sits at the print speed its output feeds. */
export const setRun = (design: Design, base: Prediction): StudyRun =>
  runOf(base, design.print.speed, base.print.highestSpeed);

/** Print speeds (m/s, rising) worth asking for, as far as the drive feeds them. */
export function studySpeeds(design: Design, base: Prediction): number[] {
  const all = speedShares.map((share) => share * design.print.speed);
  return all.filter((speed) => neededSpeed(design, base, speed) !== null);
}

/** Screw speed that feeds a print speed (m/s), rev/s; null where the drive has none. A feeder leaves it as it is set. */
function neededSpeed(design: Design, base: Prediction, printSpeed: number): number | null {
  if (design.process.starvedRate !== null) return design.process.screwSpeed;
  const { volumeFlow, screwSpeed } = base.output;
  const supply = { volumeFlow, screwSpeed, headVolume: 0, headResistance: 0 };
  const demand = areaOf(design) * printSpeed;
  const speed = speedFor(design, demand, supply, base.curve);
  if (speed !== null && speed > 0) return speed;
  // between the last speed of the curve that turns and the first that stalls, the set speed may still turn
  return demand <= volumeFlow ? (screwSpeed * demand) / volumeFlow : null;
}

/**
 * Highest print speed that the drive can feed, m/s, to the fineness of the curve; null where a feeder sets the output.
 * Torque ends it where the drive stalls.
 */
export function mostPrintSpeed(design: Design, { curve, output }: Prediction): number | null {
  if (design.process.starvedRate !== null) return null;
  let most = output.volumeFlow;
  for (let i = 0; i < curve.screwSpeed.length && curve.torque[i] <= curve.torqueAvailable[i]; i++)
    most = Math.max(most, curve.volumeFlow[i]);
  return most / areaOf(design);
}

/** The design run so that a line at a print speed is fed: by the screw's speed, or by the feeder where there is one. */
function runAt(design: Design, printSpeed: number, screwSpeed: number): Design {
  const { process, print, material } = design;
  const starvedRate = process.starvedRate === null ? null : areaOf(design) * printSpeed * material.meltDensity;
  return { ...design, process: { ...process, screwSpeed, starvedRate }, print: { ...print, speed: printSpeed } };
}

/**
 * Colour at a print speed: the screw (or the feeder) is set so that the line is fed, everything else stays.
 * @param base prediction of the design as set, see studyBase
 * @param printSpeed m/s, > 0
 * @returns a steady state without pauses; no colour, with the reason, where this speed cannot be fed
 */
export function colourAtPrintSpeed(design: Design, base: Prediction, printSpeed: number, way: StudyWay): StudyRun {
  const demand = areaOf(design) * printSpeed;
  const cache = way.cache ?? createFieldCache();
  const options = { fields: way.fields, curvePoints: 0 };
  const first = neededSpeed(design, base, printSpeed);
  if (first === null) {
    const most = formatQuantity(mostPrintSpeed(design, base) ?? 0, 'mm/s', 2);
    return nothingAt(printSpeed, `No speed of this drive feeds it; the most is about ${most}.`);
  }
  let prediction = predict(runAt(design, printSpeed, first), options, undefined, cache);
  const off = prediction.output.volumeFlow / demand;
  if (design.process.starvedRate === null && off > 0 && Math.abs(off - 1) > flowTolerance)
    prediction = predict(runAt(design, printSpeed, first / off), options, undefined, cache);
  if (prediction.output.flows && prediction.output.volumeFlow < demand * (1 - 4 * flowTolerance)) {
    const most = formatQuantity(prediction.print.highestSpeed, 'mm/s', 3);
    return nothingAt(printSpeed, `The machine carries ${most} only (${prediction.limit}).`);
  }
  return runOf(prediction, printSpeed, prediction.print.highestSpeed);
}

const shiftedZone = (zone: Zone, kelvins: number): Zone =>
  zone.kind === 'heated' ? { ...zone, setTemperature: zone.setTemperature + kelvins } : zone;

/**
 * Colour with all heated zones and the nozzle set hotter or colder, screw speed and feed as they are.
 * @param kelvins shift of every set temperature
 * @returns `asked` and `at` are the nozzle's set temperature, K
 */
export function colourAtShift(design: Design, kelvins: number, { fields, cache }: StudyWay): StudyRun {
  const { barrel, nozzle } = design;
  const setTemperature = nozzle.setTemperature + kelvins;
  const zones = barrel.zones.map((zone) => shiftedZone(zone, kelvins));
  const shifted: Design = { ...design, barrel: { ...barrel, zones }, nozzle: { ...nozzle, setTemperature } };
  const prediction = predict(shifted, { fields, curvePoints: 0 }, undefined, cache ?? createFieldCache());
  return runOf(prediction, setTemperature, setTemperature);
}

function sweepOf(design: Design, runs: readonly StudyRun[], assumptions: readonly string[]): ColourSweep {
  const points = runs.flatMap(({ point }) => point ?? []).sort((a, b) => a.at - b.at);
  const acceptable = design.process.acceptableDeltaE;
  const kept = (value: (point: SweepPoint) => number) =>
    keptStretch(
      points.map((point) => [point.at, value(point)] as const),
      acceptable,
    );
  return {
    points,
    acceptable,
    keptMean: kept((point) => point.dE00Mean),
    keptWorst: kept((point) => point.dE00Worst),
    reason: points.length > 0 ? null : (runs[0]?.reason ?? 'The colour cannot be said at any of these places.'),
    assumptions,
  };
}

/** Runs over print speed as a sweep; `at` in m/s. */
export const speedSweepOf = (design: Design, runs: readonly StudyRun[]): ColourSweep =>
  sweepOf(design, runs, [
    design.process.starvedRate === null
      ? 'The screw turns so that its output feeds the line; each speed is a steady state of its own.'
      : 'The feeder gives what the line takes, the screw keeps its speed; each speed is a steady state of its own.',
    'Walls, melting and residence are predicted anew at each speed.',
  ]);

/** Runs over set temperature as a sweep; `at` is the nozzle's set temperature, K. */
export const temperatureSweepOf = (design: Design, runs: readonly StudyRun[]): ColourSweep =>
  sweepOf(design, runs, [
    'All heated zones and the nozzle are shifted alike; screw speed and feed stay.',
    'Walls, melting, output and residence are predicted anew at each temperature.',
  ]);

/** Colour at a mean flow. */
export interface PausedColour {
  /** m/s: steady print speed of the same mean flow */
  readonly speed: number;
  readonly dE00Mean: number;
  readonly dE00Worst: number;
}

/**
 * Colour with the print's pauses: travel and idle times let the melt wait, as a slower steady print does.
 * @param sweep over print speed
 * @param printSpeed m/s while a line is laid
 * @returns read off the sweep by straight lines; null where the sweep does not reach so far
 */
export function withPauses({ print }: Design, { points }: ColourSweep, printSpeed: number): PausedColour | null {
  const speed = printSpeed * Math.max(0, 1 - print.travelShare - print.idleShare);
  const at = points.map((point) => point.at);
  if (at.length < 2 || speed < at[0] || speed > at[at.length - 1]) return null;
  const read = (value: (point: SweepPoint) => number) => interpolateLinear(at, points.map(value), speed);
  return { speed, dE00Mean: read((point) => point.dE00Mean), dE00Worst: read((point) => point.dE00Worst) };
}
