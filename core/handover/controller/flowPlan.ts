/** The steps of a flow test: which speeds, how long, how much should come; shared by G-code and weighing sheet. */

import type { Prediction } from '../../prediction/types.ts';
import type { FirmwareNumbers } from '../../print/types.ts';
import { fail, type Issue, ok, type Result } from '../../result.ts';
import { formatNumber } from '../../units.ts';
import { numberOf } from '../check.ts';
import type { HandoverOption, HandoverSubject, HandoverValues } from '../types.ts';
import { flowAt, flowLimit } from './flowLimits.ts';
import { type Heater, heatersOf } from './heaters.ts';

const number = (
  id: string,
  label: string,
  help: string,
  unit: string,
  range: readonly [number, number],
  start: number,
) => ({ id, label, help, unit, kind: 'number', least: range[0], most: range[1], start }) as const;

/** Options of the plan. */
export const planOptions: readonly HandoverOption[] = [
  number('speeds', 'Speeds', 'So many evenly spaced speeds, the lowest first.', '', [2, 8], 4),
  number(
    'highest',
    'Highest speed',
    '0 = the set speed, or less where torque or pressure bound it.',
    'rpm',
    [0, 1000],
    0,
  ),
  number('collect', 'Weigh for', 'Time for which each step is caught and weighed.', 's', [10, 600], 60),
  number(
    'soak',
    'Soak',
    'Wait after the heaters are hot, so that the core and the granulate follow.',
    'min',
    [1, 180],
    20,
  ),
];

/** One weighed step. */
interface FlowStep {
  readonly rpm: number;
  /** run before weighing, and weighed, s */
  readonly settle: number;
  readonly collect: number;
  /** predicted to come while weighed, g */
  readonly grams: number;
}

/** The test. */
export interface FlowPlan {
  readonly heaters: readonly Heater[];
  /** s; never less than predicted from hot heaters until the screw may turn, and what was asked for */
  readonly soak: number;
  readonly soakAsked: number;
  readonly purge: { readonly rpm: number; readonly seconds: number };
  readonly steps: readonly FlowStep[];
  /** motor microsteps per turn of the screw, and per mm of the virtual filament */
  readonly stepsPerTurn: number;
  readonly stepsPerMm: number;
  /** virtual filament of this test and of the print settings, mm */
  readonly filamentDiameter: number;
  readonly printDiameter: number;
  /** highest speed that is allowed, and what bounds it */
  readonly highestRpm: number;
  readonly bound: string;
  /** times that were cut short of what the residence asks for, a sentence each */
  readonly cuts: readonly string[];
}

/** Old melt is out after so many mean residence times; common practice. */
const purgeTimes = 3;
const shortestSettle = 15;
const longestSettle = 900;
const longestPurge = 1800;

/** Feed that the fastest step stays below, mm/s: many controllers allow 25 and slow down silently; own choice. */
const highestFeed = 10;

/** Digits of a setting that is told twice: both places show the same number. */
const settingDigits = 6;

/** A speed (rpm) as a feed of the plan's virtual filament, mm/min. */
export const feedOf = (
  { stepsPerTurn, stepsPerMm }: Pick<FlowPlan, 'stepsPerTurn' | 'stepsPerMm'>,
  rpm: number,
): number => (rpm * stepsPerTurn) / stepsPerMm;

/** Fastest feed of a plan, mm/s. */
export const fastestFeed = (plan: FlowPlan): number => Math.max(...plan.steps.map(({ rpm }) => feedOf(plan, rpm))) / 60;

/** Virtual filament of the test: the print's own, or one so thick that the fastest step stays below `highestFeed`. */
function virtualFilament({ stepsPerScrewTurn, stepsPerLength, filamentDiameter }: FirmwareNumbers, topRpm: number) {
  const printDiameter = 1000 * filamentDiameter;
  const ofPrint = (stepsPerLength ?? 0) / 1000;
  const feed = feedOf({ stepsPerTurn: stepsPerScrewTurn, stepsPerMm: ofPrint }, topRpm) / 60;
  const thicker = Math.ceil(10 * printDiameter * Math.sqrt(feed / highestFeed)) / 10;
  const diameter = feed <= highestFeed ? printDiameter : thicker;
  const stepsPerMm = Number((ofPrint * (diameter / printDiameter) ** 2).toPrecision(settingDigits));
  return { filamentDiameter: diameter, printDiameter, stepsPerMm };
}

/** Times that the residence asks for but the test does not take. */
function cutsOf(dwell: number, { steps, purge }: Pick<FlowPlan, 'steps' | 'purge'>): readonly string[] {
  const minutes = (seconds: number): string => `${formatNumber(seconds / 60, 2)} min`;
  const settling = steps
    .filter(({ rpm }) => dwell / rpm > longestSettle)
    .map(({ rpm }) => `${rpm} rpm (${minutes(dwell / rpm)})`);
  const purging = (purgeTimes * dwell) / purge.rpm;
  const settled = `Settling is cut at ${minutes(longestSettle)}, though a mean residence time is longer at ${settling.join(', ')}: these masses may not be steady yet.`;
  const purged = `The purge is cut at ${minutes(longestPurge)}, though ${purgeTimes} mean residence times take ${minutes(purging)}: old melt may still come.`;
  return [...(settling.length > 0 ? [settled] : []), ...(purging > longestPurge ? [purged] : [])];
}

/** The soak (s): as asked, or longer where the prediction wants it, so that no cold screw is turned. */
function soakOf(prediction: Prediction, asked: number): number {
  const { warmUp } = prediction;
  return warmUp === null ? asked : Math.max(asked, Math.ceil(warmUp.mayTurn - warmUp.ready));
}

/** A speed as it is written everywhere: rounded down to three digits, so that it stays within the limit. */
function writtenRpm(rpm: number): number {
  const digit = 10 ** (Math.floor(Math.log10(rpm)) - 2);
  return Number((Math.floor(rpm / digit + 1e-9) * digit).toPrecision(3));
}

const clamp = (value: number, least: number, most: number): number => Math.ceil(Math.min(Math.max(value, least), most));

const tooFast = (wanted: number, most: number, reason: string): Issue => ({
  path: ['options', 'highest'],
  code: 'flow-test-speed',
  message: 'The trial would run faster than this test may.',
  value: `${wanted} rpm`,
  allowed: `0 to ${formatNumber(most, 4)} rpm (bound by: ${reason})`,
  remedy: 'Ask for less.',
});

/**
 * Plans the steps for a predicted design.
 * @returns issues where the design may not be run, or more speed is wanted than torque and pressure leave
 */
export function flowPlan({ design, prediction }: HandoverSubject, values: HandoverValues): Result<FlowPlan> {
  if (prediction === null) throw new Error('a flow test needs a prediction');
  const limit = flowLimit(design, prediction);
  if (!limit.ok) return limit;
  const { firmware } = prediction.print;
  const most = writtenRpm(60 * limit.value.highest);
  const wanted = numberOf(values, 'highest');
  if (wanted > most) return fail(tooFast(wanted, most, limit.value.reason));
  const top = wanted > 0 ? wanted : Math.min(most, 60 * prediction.output.screwSpeed);
  const count = Math.round(numberOf(values, 'speeds'));
  const dwell = 60 * prediction.output.screwSpeed * prediction.residence.mean;
  const density = prediction.output.massFlow / prediction.output.volumeFlow;
  const collect = Math.round(numberOf(values, 'collect'));
  const steps = Array.from({ length: count }, (_, i): FlowStep => {
    const rpm = writtenRpm((top * (i + 1)) / count);
    const grams = 1000 * density * flowAt(prediction, rpm / 60) * collect;
    return { rpm, settle: clamp(dwell / rpm, shortestSettle, longestSettle), collect, grams };
  });
  const purgeRpm = steps[Math.floor((count - 1) / 2)].rpm;
  const purge = { rpm: purgeRpm, seconds: clamp((purgeTimes * dwell) / purgeRpm, 30, longestPurge) };
  const soakAsked = Math.round(60 * numberOf(values, 'soak'));
  return ok({
    heaters: heatersOf(design),
    soak: soakOf(prediction, soakAsked),
    soakAsked,
    purge,
    steps,
    stepsPerTurn: firmware.stepsPerScrewTurn,
    ...virtualFilament(firmware, steps[count - 1].rpm),
    highestRpm: most,
    bound: limit.value.reason,
    cuts: cutsOf(dwell, { steps, purge }),
  });
}
