/**
 * The flow test as a plain program in widely documented G- and M-codes (open firmware documentation): M0, G4, G21, G92, G1
 * with E alone, M83, M84, M92, M104, M109, M117, M200, M220, M221, M400, T0. No axis but the extruder moves.
 */

import { formatNumber } from '../../units.ts';
import { guardLines } from './coldGuard.ts';
import { type FlowPlan, feedOf } from './flowPlan.ts';
import type { Heater } from './heaters.ts';

/** How heaters beside the nozzle are reached. */
export type HeaterWay = 'nozzle' | 'tools';

/** Longest single move: firmware may refuse longer ones (some allow 50 mm), and a stop acts after each, mm and s. */
const longestMove = 50;
const longestTime = 10;

/** The first turn is watched: no faster than this, rpm; own choice. */
const watchedRpm = 6;

/** What is told in the head. */
export interface FlowWords {
  /** where the program comes from */
  readonly origin: readonly string[];
  /** what must be minded */
  readonly cautions: readonly string[];
}

/** A command with its remark. */
const line = (code: string, remark: string): string => `${code} ; ${remark}`;

/** Turns of the screw as moves of the virtual filament. */
function moves(plan: FlowPlan, rpm: number, seconds: number): string[] {
  const perMinute = feedOf(plan, rpm);
  const whole = (perMinute * seconds) / 60;
  const count = Math.max(1, Math.ceil(whole / longestMove), Math.ceil(seconds / longestTime));
  const move = `G1 E${(whole / count).toFixed(4)} F${perMinute.toFixed(3)}`;
  return Array.from({ length: count }, () => move);
}

const toolOf = (i: number, count: number): number => (i === count - 1 ? 0 : i + 1);

/** Codes that set all heaters, or set and wait. */
function heating(
  heaters: readonly Heater[],
  way: HeaterWay,
  code: 'M104' | 'M109',
  celsius: (heater: Heater) => number,
) {
  return heaters.flatMap((heater, i) => {
    const isNozzle = i === heaters.length - 1;
    if (way === 'nozzle' && !isNozzle) return [];
    const tool = way === 'tools' ? ` T${toolOf(i, heaters.length)}` : '';
    const verb = code === 'M109' ? 'wait for' : 'set';
    return [line(`${code}${tool} S${celsius(heater)}`, `${verb} ${heater.name}`)];
  });
}

/** Heaters that the program cannot reach. */
const byHand = ({ heaters }: FlowPlan, way: HeaterWay): string[] =>
  way === 'tools' || heaters.length < 2
    ? []
    : [
        '; SET BY HAND before starting, and wait until they are hot:',
        ...heaters.slice(0, -1).map(({ name, celsius }) => `;   ${name}: ${celsius} C`),
      ];

function head(plan: FlowPlan, way: HeaterWay, { origin, cautions }: FlowWords): string[] {
  const fastest = Math.max(...plan.steps.map(({ rpm }) => rpm));
  return [
    '; FLOW TEST: turns the screw at several speeds so that the output can be weighed',
    ...origin.map((text) => `; ${text}`),
    ';',
    '; MIND:',
    ...cautions.map((text) => `;  - ${text}`),
    '; The controller must know M92 (steps) and M0 (wait for a person). Where it goes on by itself at M0,',
    ';   or the first turn is not exactly one turn the right way: switch off.',
    ';',
    `; Highest speed of this test: ${fastest} rpm; allowed: ${plan.highestRpm} rpm, bound by: ${plan.bound}.`,
    `; Lengths are of a virtual filament of ${formatNumber(plan.filamentDiameter, 7)} mm.`,
    ...byHand(plan, way),
  ];
}

/** Sets what an earlier print may have left: tool, units, overrides, volumes. */
const cleared = (way: HeaterWay): string[] => [
  ...(way === 'tools' ? [line('T0', 'the tool whose motor turns the screw')] : []),
  line('G21', 'millimetres'),
  line('M83', 'extruder moves are relative'),
  line('M220 S100', 'speed override off'),
  line('M221 S100', 'flow override off'),
  line('M200 D0', 'lengths are lengths, not volumes'),
];

/** One watched turn, then a person says whether it was one. */
function firstTurn(plan: FlowPlan): string[] {
  const rpm = Math.min(watchedRpm, plan.steps[0].rpm);
  return [
    '',
    `; First turn: exactly one, in ${formatNumber(60 / rpm, 3)} s. Mark the shaft and watch. Switch off if it labours.`,
    line('M117 One turn: watch', 'tell'),
    ...moves(plan, rpm, 60 / rpm),
    line('M400', 'wait until the moves are done'),
    line('M117 One turn, right way?', 'tell'),
    line('M0', 'go on by hand only if it was exactly one turn and the right way; else switch off'),
  ];
}

/** Heat, wait until hot, soak, then purge slowly: nothing turns before. */
function preparing(plan: FlowPlan, way: HeaterWay): string[] {
  const { purge, heaters, soak } = plan;
  return [
    ...cleared(way),
    line('M117 Heating', 'tell'),
    ...heating(heaters, way, 'M104', ({ celsius }) => celsius),
    ...heating(heaters, way, 'M109', ({ celsius }) => celsius),
    ...(byHand(plan, way).length > 0
      ? [line('M117 Set zones by hand', 'tell'), line('M0', 'go on by hand once every heater set by hand is hot')]
      : []),
    line('M117 Soaking', 'tell'),
    line(`G4 S${soak}`, `soak for ${formatNumber(soak / 60, 3)} min`),
    ...guardLines(plan.heaters),
    line(`M92 E${plan.stepsPerMm}`, 'steps per mm for this test; stays in force until the controller is reset'),
    line('G92 E0', 'count from here'),
    ...firstTurn(plan),
    '',
    `; Low speed first: ${plan.steps[0].rpm} rpm. Switch off if nothing comes within a minute or two.`,
    line('M117 Low speed', 'tell'),
    ...moves(plan, plan.steps[0].rpm, plan.steps[0].settle),
    `; Purge at ${purge.rpm} rpm for ${purge.seconds} s: until strand and colour are steady`,
    line('M117 Purging', 'tell'),
    ...moves(plan, purge.rpm, purge.seconds),
    line('M400', 'wait until the moves are done'),
  ];
}

function weighing(plan: FlowPlan, pause: number): string[] {
  return plan.steps.flatMap(({ rpm, settle, collect, grams }, i) => [
    '',
    `; Step ${i + 1} of ${plan.steps.length}: ${rpm} rpm, about ${formatNumber(grams, 3)} g in ${collect} s`,
    line(`M117 Step ${i + 1}: settling`, 'tell'),
    ...moves(plan, rpm, settle),
    line('M400', 'wait until the moves are done'),
    line(`M117 Step ${i + 1}: cut, catch now`, 'cut the strand, put the cup under'),
    ...moves(plan, rpm, collect),
    line('M400', 'wait until the moves are done'),
    line(`M117 Step ${i + 1}: cut, weigh`, 'cut the strand, weigh, write it on the sheet'),
    line(`G4 S${pause}`, 'time to weigh'),
  ]);
}

function ending(plan: FlowPlan, way: HeaterWay): string[] {
  return [
    '',
    '; End: heaters and motors off',
    line('M400', 'wait until the moves are done'),
    ...heating(plan.heaters, way, 'M104', () => 0),
    line('M84', 'motors off'),
    '; Steps per mm, overrides and a guard changed for this test stay in force: RESET THE CONTROLLER before printing.',
    line('M117 Still hot. Reset controller', 'reset gets its own steps back'),
    ...(byHand(plan, way).length > 0 ? ['; SWITCH OFF the heaters that were set by hand.'] : []),
  ];
}

/** Only what every controller's reader takes: other letters become the nearest plain ones. */
const plain = (text: string): string =>
  text
    .replace(/²/g, '2')
    .replace(/³/g, '3')
    .replace(/°/g, '')
    .replace(/ß/g, 'ss')
    .replace(/[“”„]/g, '"')
    .replace(/[’‘]/g, "'")
    .replace(/[–—]/g, '-')
    .normalize('NFKD')
    .replace(/[^\n\x20-\x7e]/g, '');

/**
 * The program's text, lines ended by LF.
 * @param pause s between steps
 */
export function flowGcode(plan: FlowPlan, way: HeaterWay, pause: number, words: FlowWords): string {
  const lines = [
    ...head(plan, way, words),
    '',
    ...preparing(plan, way),
    ...weighing(plan, pause),
    ...ending(plan, way),
  ];
  return `${plain(lines.join('\n'))}\n`;
}
