/** Heat creep: how near the granules under the feed opening are to sticking, running and at a hot standstill. */

import type { Design } from '../design/types.ts';
import type { ColdEnd } from './coldEnd.ts';
import type { WallTemperatures } from './wallTemperature.ts';

/** The cold end in one state of the machine. Temperatures K, places m. */
export interface CreepState {
  /** hottest of each under the feed opening; granules by their mean over the section */
  readonly wall: number;
  readonly core: number;
  readonly granules: number;
  /** softening temperature less the hottest of them, K; negative: granules stick in the throat */
  readonly margin: number;
  /** first place where wall or screw core reach softening: granules that touch them stick; null where nowhere */
  readonly sticksAt: number | null;
  /** first place where the mean of the granules reaches softening; null where nowhere */
  readonly softensAt: number | null;
  /** watts that creep into the cold end */
  readonly coldEnd: ColdEnd;
  /** share of the heaters' watts lost through the barrel's wall or heat break, 0 to 1 */
  readonly lostShare: number;
}

/** Both states, and the worse of their margins. */
export interface HeatCreep {
  readonly running: CreepState;
  /** screw stopped, heaters on, for as long as it takes to settle */
  readonly standing: CreepState;
  /** K */
  readonly margin: number;
  readonly worse: 'running' | 'standing';
}

/**
 * Heat creep of a design.
 * @param running walls at the working point
 * @param standing walls at standstill (load null)
 * Standing granules take the mean of wall and core beside them. Softening is that of the material, a range in truth.
 */
export function heatCreep(design: Design, running: WallTemperatures, standing: WallTemperatures): HeatCreep {
  const states = { running: creepOf(design, running), standing: creepOf(design, standing) };
  const worse = states.standing.margin <= states.running.margin ? 'standing' : 'running';
  return { ...states, margin: states[worse].margin, worse };
}

/** Heat creep of one state. */
export function creepOf(design: Design, walls: WallTemperatures): CreepState {
  const { feedOpening } = design.barrel;
  const { softening } = design.material;
  const { z, barrel, screw, content, coldEnd, flows } = walls;
  const under = (values: Float64Array) => hottestIn(z, values, feedOpening.start, feedOpening.length);
  const [wall, core, granules] = [under(barrel), under(screw), under(content)];
  const touching = barrel.map((value, i) => Math.max(value, screw[i]));
  return {
    wall,
    core,
    granules,
    margin: softening - Math.max(wall, core, granules),
    sticksAt: firstAt(z, touching, softening),
    softensAt: firstAt(z, content, softening),
    coldEnd,
    lostShare: flows.heaters > 0 ? Math.min(1, Math.max(0, coldEnd.wall) / flows.heaters) : 0,
  };
}

/** Highest value between two places; that of the nearest cell where none lies between. */
function hottestIn(z: Float64Array, values: Float64Array, start: number, length: number): number {
  const middle = start + length / 2;
  let nearest = 0;
  let most = Number.NEGATIVE_INFINITY;
  z.forEach((at, i) => {
    if (Math.abs(at - middle) < Math.abs(z[nearest] - middle)) nearest = i;
    if (at >= start && at <= start + length) most = Math.max(most, values[i]);
  });
  return Math.max(most, values[nearest]);
}

/** First place where values reach a level, by linear interpolation between cells, m. */
function firstAt(z: Float64Array, values: Float64Array, level: number): number | null {
  const i = values.findIndex((value) => value >= level);
  if (i <= 0) return i < 0 ? null : z[0];
  return z[i - 1] + ((z[i] - z[i - 1]) * (level - values[i - 1])) / (values[i] - values[i - 1]);
}
