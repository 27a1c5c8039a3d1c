/** Warming up in time: adaptive steps of second order with exact account of the energy. */

import { enthalpyOf } from './enthalpy.ts';
import type { HeatCells } from './heatCells.ts';
import type { Duty } from './heaterBodies.ts';
import type { Masses } from './masses.ts';
import { type WarmStage, type WarmState, warmStage } from './warmStep.ts';

/** A moment of warming up. */
export interface Moment {
  /** s from switching on */
  readonly time: number;
  readonly state: WarmState;
  readonly duties: readonly Duty[];
  /** J that each heater has taken up to now */
  readonly energy: Float64Array;
  /** J lost to ambient, coolants and drive end up to now */
  readonly lost: number;
}

/** How time is stepped. */
export interface Pace {
  /** first step, s */
  readonly first: number;
  /** greatest difference of the first-order solution that a step may have, K; the solution kept is far closer */
  readonly tolerance: number;
  /** shortest step that may be refused, s */
  readonly least: number;
}

/** Pace that the windows and commands use. */
const usualPace: Pace = { first: 0.5, tolerance: 1.5, least: 0.02 };

/** A march and whether every stage found its phases and duties. */
export interface March {
  readonly moments: readonly Moment[];
  readonly converged: boolean;
}

/** Stage length over step length of the two-stage method. */
const stage = 1 - Math.SQRT1_2;
/** Most steps of a march. */
const mostSteps = 2000;

/** All at one temperature, nothing used yet. */
export function coldMoment(cells: HeatCells, masses: Masses, temperature: number): Moment {
  const { material } = masses;
  const enthalpy = enthalpyOf(material, { temperature, fused: temperature >= material.melting ? 1 : 0 });
  return {
    time: 0,
    state: {
      wall: new Float64Array(cells.count).fill(temperature),
      core: new Float64Array(cells.count).fill(temperature),
      content: new Float64Array(masses.content.length).fill(enthalpy),
      bodies: new Float64Array(cells.heaters.length).fill(temperature),
    },
    duties: cells.heaters.map(() => 'weak'),
    energy: new Float64Array(cells.heaters.length),
    lost: 0,
  };
}

/**
 * Marches on until told to stop.
 * @param done asked after every step
 * Two-stage singly diagonal implicit Runge-Kutta, L-stable, second order (Alexander 1977, SIAM J. Numer. Anal. 14,
 * 1006); the step follows the difference to its first-order companion.
 */
export function marchWarm(
  cells: HeatCells,
  masses: Masses,
  from: Moment,
  done: (moments: readonly Moment[]) => boolean,
  pace: Pace = usualPace,
): March {
  const moments = [from];
  let step = pace.first;
  let converged = true;
  for (let tried = 0; tried < mostSteps && !done(moments); tried++) {
    const { next, error, settled } = twoStages(cells, masses, moments[moments.length - 1], step);
    const refused = (error > pace.tolerance || !settled) && step > pace.least;
    const factor = Math.min(2, Math.max(0.25, 0.9 * Math.sqrt(pace.tolerance / Math.max(error, 1e-12))));
    if (!refused) {
      moments.push(next);
      converged &&= settled;
    }
    step = Math.max(pace.least, step * (settled ? factor : 0.25));
  }
  return { moments, converged: converged && done(moments) };
}

function twoStages(cells: HeatCells, masses: Masses, now: Moment, step: number) {
  const tau = stage * step;
  const first = warmStage(cells, masses, tau, now.state, now);
  const base = beyond(now.state, first.state, (1 - stage) / stage);
  const second = warmStage(cells, masses, tau, base, first);
  const weights = [(1 - stage) * step, stage * step];
  const both = [first, second];
  const next: Moment = {
    time: now.time + step,
    state: second.state,
    duties: second.duties,
    energy: now.energy.map((used, k) => used + weights[0] * first.power[k] + weights[1] * second.power[k]),
    lost: both.reduce((sum, { state }, k) => sum + weights[k] * lossOf(cells, state), now.lost),
  };
  return { next, error: apart(now.state, first, base, second), settled: first.converged && second.converged };
}

/** Point on the line from a through b, this far beyond a in units of b - a. */
function beyond(a: WarmState, b: WarmState, far: number): WarmState {
  const on = (x: Float64Array, y: Float64Array) => x.map((value, i) => value + far * (y[i] - value));
  return {
    wall: on(a.wall, b.wall),
    core: on(a.core, b.core),
    content: on(a.content, b.content),
    bodies: on(a.bodies, b.bodies),
  };
}

/** Largest difference of the two stages' advances in metal, K. */
function apart(start: WarmState, first: WarmStage, base: WarmState, second: WarmStage): number {
  let most = 0;
  for (const part of ['wall', 'core', 'bodies'] as const) {
    const [a, b, c, d] = [start[part], first.state[part], base[part], second.state[part]];
    for (let i = 0; i < a.length; i++) most = Math.max(most, Math.abs(d[i] - c[i] - (b[i] - a[i])));
  }
  return most;
}

/** What leaves to ambient, coolants and drive end, W. */
function lossOf(cells: HeatCells, { wall, core }: WarmState): number {
  let sum = cells.driveEnd * (core[0] - cells.ambient);
  for (let i = 0; i < cells.count; i++) {
    sum += cells.toAmbient[i] * (wall[i] - cells.ambient) + cells.toCoolant[i] * (wall[i] - cells.coolant[i]);
  }
  return sum;
}
