/** The steps of a flow test: which speeds, how long, how much should come; shared by G-code and weighing sheet. */

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
  number('highest', 'Highest speed', '0 = the set speed, or what torque and pressure leave.', 'rpm', [0, 1000], 0),
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
export interface FlowStep {
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
  /** s */
  readonly soak: number;
  readonly purge: { readonly rpm: number; readonly seconds: number };
  readonly steps: readonly FlowStep[];
  /** motor microsteps per turn of the screw, and per mm of the virtual filament */
  readonly stepsPerTurn: number;
  readonly stepsPerMm: number;
  /** mm */
  readonly filamentDiameter: number;
  readonly highestRpm: number;
  readonly bound: string;
}

/** Old melt is out after so many mean residence times; common practice. */
const purgeTimes = 3;
const shortestSettle = 15;
const longestSettle = 900;
const longestPurge = 1800;

/** A speed as it is written everywhere: rounded down to three digits, so that it stays within the limit. */
function writtenRpm(rpm: number): number {
  const digit = 10 ** (Math.floor(Math.log10(rpm)) - 2);
  return Number((Math.floor(rpm / digit + 1e-9) * digit).toPrecision(3));
}

const clamp = (value: number, least: number, most: number): number => Math.ceil(Math.min(Math.max(value, least), most));

const tooFast = (wanted: number, most: number, reason: string): Issue => ({
  path: ['options', 'highest'],
  code: 'flow-test-speed',
  message: 'The trial would ask for more than torque and pressure leave.',
  value: `${wanted} rpm`,
  allowed: `0 to ${formatNumber(most, 4)} rpm (${reason})`,
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
  return ok({
    heaters: heatersOf(design),
    soak: Math.round(60 * numberOf(values, 'soak')),
    purge: { rpm: purgeRpm, seconds: clamp((purgeTimes * dwell) / purgeRpm, 30, longestPurge) },
    steps,
    stepsPerTurn: firmware.stepsPerScrewTurn,
    stepsPerMm: (firmware.stepsPerLength ?? 0) / 1000,
    filamentDiameter: 1000 * firmware.filamentDiameter,
    highestRpm: most,
    bound: limit.value.reason,
  });
}
