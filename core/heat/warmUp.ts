/** Warming up from cold with the screw standing: how long, how much, and whether the content is soft enough to turn. */

import type { Design } from '../design/types.ts';
import { interpolateLinear } from '../math/interpolate.ts';
import { enthalpyOf, warmthOf } from './enthalpy.ts';
import { type CellCounts, type HeatCells, heatCells, heatedFrom } from './heatCells.ts';
import { givenBy, underHeater } from './heaterBodies.ts';
import { type Masses, massesOf, rings } from './masses.ts';
import { type HeldHeat, heldHeat } from './thermostats.ts';
import { coldMoment, type Moment, marchWarm } from './warmMarch.ts';

/** Cells of warming up: coarser than the steady heat's, within 1 % of its time. */
export const warmCells: CellCounts = { barrel: 48, nozzle: 6 };

/** Below its set temperature by no more than this, a zone counts as warm, K. */
const warmWithin = 2;

/** What takes longer than this counts as never, s: a day. */
const longest = 86_400;

/** Points of the curves. */
const points = 101;

/** A heater while warming up. */
interface HeaterWarmUp {
  readonly name: string;
  readonly part: 'zone' | 'nozzle';
  /** K */
  readonly setTemperature: number;
  /** W */
  readonly maxPower: number;
  /** first time within 2 K below its set temperature, or above it, s; Infinity where never */
  readonly readyAfter: number;
  /** J used until the whole machine is ready, and their mean, W; until the curves end where it never is */
  readonly energy: number;
  readonly meanPower: number;
  /** W that hold the machine warm with the screw standing */
  readonly holdingPower: number;
  /** settles more than 2 K below its set temperature though it gives all it has */
  readonly tooWeak: boolean;
}

/** The place where content is watched: middle of the heated length, middle of the channel's depth. */
interface Soak {
  /** m */
  readonly z: number;
  /** s until it softens, and until it is molten through; Infinity where never */
  readonly softens: number;
  readonly melts: number;
}

/** Curves over time. K. */
interface WarmUpCurves {
  /** s */
  readonly time: Float64Array;
  /** mean wall under each heater, in the order of heaters */
  readonly zones: readonly Float64Array[];
  /** content at the soaking place */
  readonly content: Float64Array;
  /** wall under the middle of the feed opening */
  readonly throat: Float64Array;
}

/** Warming up. Times s. */
export interface WarmUp {
  /** until no heater is more than 2 K below its set temperature; Infinity where never */
  readonly ready: number;
  /** names of heaters that never get there */
  readonly tooWeak: readonly string[];
  readonly soak: Soak;
  /** until the screw may turn: ready and the content molten at the soaking place; Infinity where never */
  readonly mayTurn: number;
  /** J of all heaters until ready; until the curves end where it never is */
  readonly energy: number;
  readonly heaters: readonly HeaterWarmUp[];
  readonly curves: WarmUpCurves;
  readonly converged: boolean;
}

/**
 * Warms a design up from ambient, screw standing, coolants on.
 * @param counts cells along barrel and nozzle
 * Thermostats: full watts below the set temperature, then just what holds it (the limit of fast on-off or well-tuned
 * proportional control), sensor on the mean of the wall under the heater. Content: radial conduction with fusion, no
 * conduction along the axis, no flow. Losses as in steady heat, so the long run ends in its standstill.
 * Range: time within about a quarter, from the heat capacities of metal and heaters (common practice) alone.
 */
export function warmUp(design: Design, counts: CellCounts = warmCells): WarmUp {
  const cells = heatCells(design, counts);
  const masses = massesOf(design, cells);
  const steady = heldHeat(cells, null);
  const watch = watchOf(design, cells);
  const goals = goalsOf(design, cells, masses, steady, watch.ring);
  const reachable = goals.filter(({ settles, level }) => settles >= level);
  const cold = coldMoment(cells, masses, design.process.ambient);
  const { moments, converged } = marchWarm(cells, masses, cold, (all) => {
    const now = all[all.length - 1];
    if (now.time >= longest) return true;
    if (!reachable.every(({ of, level }) => of(now) >= level)) return false;
    const last = Math.max(0, ...reachable.map((goal) => firstTime(all, goal)));
    return now.time >= 1.1 * last && (reachable.length === goals.length || farFrom(steady, now) < 1);
  });
  return reported(cells, masses, steady, moments, goals, watch, converged && steady.converged);
}

/** A value that must rise to a level. */
interface Goal {
  readonly of: (moment: Moment) => number;
  readonly level: number;
  /** value of the long run */
  readonly settles: number;
}

/** Cells of the soaking place and of the throat. */
function watchOf(design: Design, cells: HeatCells) {
  const { zones, length, feedOpening } = design.barrel;
  const end = zones.reduce((most, zone) => (zone.kind === 'heated' ? Math.max(most, zone.end) : most), 0) || length;
  const cellAt = (z: number) => Math.min(cells.barrel - 1, Math.max(0, Math.floor(z / cells.length[0])));
  const soaking = cellAt((Math.min(heatedFrom(design), end) + end) / 2);
  return {
    z: cells.z[soaking],
    ring: soaking * rings + (rings - 1) / 2,
    throat: cellAt(feedOpening.start + feedOpening.length / 2),
  };
}

/** Every heater warm, then softening and melting of the content watched. */
function goalsOf({ material }: Design, cells: HeatCells, masses: Masses, { state }: HeldHeat, ring: number): Goal[] {
  const i = Math.floor(ring / rings);
  const fused = Math.max(0, material.softening >= material.melting ? 1 : 0);
  const middle = (state.wall[i] + state.core[i]) / 2;
  const settles = enthalpyOf(masses.material, { temperature: middle, fused: middle > material.melting ? 1 : 0 });
  const content = ({ state: at }: Moment) => at.content[ring];
  return [
    ...cells.heaters.map((heater) => ({
      of: (moment: Moment) => underHeater(heater, moment.state.wall),
      level: heater.setTemperature - warmWithin,
      settles: underHeater(heater, state.wall),
    })),
    { of: content, level: enthalpyOf(masses.material, { temperature: material.softening, fused }), settles },
    { of: content, level: masses.material.heatOfFusion, settles },
  ];
}

/** First time at which a goal is met, between the moments by straight line, s; Infinity where never. */
function firstTime(moments: readonly Moment[], { of, level }: Goal): number {
  const i = moments.findIndex((moment) => of(moment) >= level);
  if (i <= 0) return i < 0 ? Number.POSITIVE_INFINITY : 0;
  const [a, b] = [of(moments[i - 1]), of(moments[i])];
  return moments[i - 1].time + ((moments[i].time - moments[i - 1].time) * (level - a)) / (b - a);
}

/** Farthest that the wall is from where it settles, K. */
const farFrom = ({ state }: HeldHeat, now: Moment): number =>
  now.state.wall.reduce((most, value, i) => Math.max(most, Math.abs(value - state.wall[i])), 0);

function reported(
  cells: HeatCells,
  masses: Masses,
  steady: HeldHeat,
  moments: readonly Moment[],
  goals: readonly Goal[],
  watch: ReturnType<typeof watchOf>,
  converged: boolean,
): WarmUp {
  const after = goals.map((goal) => firstTime(moments, goal));
  const n = cells.heaters.length;
  const ready = Math.max(...after.slice(0, n));
  const times = moments.map(({ time }) => time);
  const until = Math.min(ready, times[times.length - 1]);
  const heaters = cells.heaters.map(({ name, part, setTemperature, maxPower }, k): HeaterWarmUp => {
    const used = moments.map(({ energy }) => energy[k]);
    const energy = interpolateLinear(times, used, until);
    const holding = Math.max(0, givenBy(cells.heaters[k], steady.state.bodies[k], steady.state.wall));
    return {
      ...{ name, part, setTemperature, maxPower, readyAfter: after[k], energy },
      meanPower: until > 0 ? energy / until : 0,
      holdingPower: Math.min(maxPower, holding),
      tooWeak: goals[k].settles < goals[k].level,
    };
  });
  return {
    ready,
    tooWeak: heaters.filter(({ readyAfter }) => readyAfter === Number.POSITIVE_INFINITY).map(({ name }) => name),
    soak: { z: watch.z, softens: after[n], melts: after[n + 1] },
    mayTurn: Math.max(ready, after[n + 1]),
    energy: heaters.reduce((sum, { energy }) => sum + energy, 0),
    heaters,
    curves: curvesOf(cells, masses, moments, watch),
    converged,
  };
}

function curvesOf(
  cells: HeatCells,
  { material }: Masses,
  moments: readonly Moment[],
  watch: ReturnType<typeof watchOf>,
): WarmUpCurves {
  const times = moments.map(({ time }) => time);
  const time = Float64Array.from({ length: points }, (_, i) => (times[times.length - 1] * i) / (points - 1));
  const curve = (of: (moment: Moment) => number) => {
    const values = moments.map(of);
    return time.map((at) => interpolateLinear(times, values, at));
  };
  return {
    time,
    zones: cells.heaters.map((heater) => curve(({ state }) => underHeater(heater, state.wall))),
    content: curve(({ state }) => warmthOf(material, state.content[watch.ring]).temperature),
    throat: curve(({ state }) => state.wall[watch.throat]),
  };
}
