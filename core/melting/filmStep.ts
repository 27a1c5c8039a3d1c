/** One stretch of packed bed, heated by conduction and by a melt film between it and the barrel. */

import { conductionTime, type Warming, warmBed } from './bedHeat.ts';
import { approach, granuleShare, type Sides, slabSides } from './conduction.ts';
import { solidLeft } from './dragRemoval.ts';
import { channelOf, type FilmChannel, type FilmHeat, filmHeat } from './filmHeat.ts';
import { type Granulate, type MeltingCase, meltingModel, type Step, type Stretch } from './types.ts';

/** What the film melts on a stretch. */
interface Dragged {
  readonly heat: FilmHeat;
  /** kg/s */
  readonly mass: number;
  /** film on the barrel over its thickness, m per axial m, mean over the stretch, as far as it is at work */
  readonly grip: number;
  /** stretches that the film alone would need for what is left */
  readonly time: number;
}

/** Conduction of wall and core per axial length and kelvin: melt, and what of it goes into the bed, W/(m K). */
interface Conduction {
  readonly melt: Sides;
  readonly bed: Sides;
  readonly core: number;
  /** share of the channel's width from which the film has swept the bed into a pool of melt */
  readonly pool: number;
}

/** Least difference by which the heat into a cold bed is told as an exchange with the mean, K. */
const leastDifference = 1;

/** Share of the barrel's heat from which a reach is said to melt by a film. Own choice. */
const filmCounts = 0.1;

/** Channel area across its run at a stretch, all channels, m². */
export const channelArea = (c: MeltingCase, at: Stretch): number => channelOf(c, at).area;

/**
 * Moves bed, film and pool of melt along a stretch.
 * @param weight of the film, 0 to 1: with 0 the step is that of conduction
 * The bed takes heat by conduction from wall and core as granules do; the film melts it besides, as far as it brings more
 * (see filmHeat). So a film never melts later than conduction. Melt in the pool exchanges as a slab. Heat that the film's
 * shear returns to the barrel lessens what the barrel gives, down to none: where shear heats the barrel, it stays in the
 * melt here. Bed pressed free of pores; no break-up; second order in the stretch, the share of the barrel's heat by the
 * state at its start.
 */
export function filmStep(c: MeltingCase, at: Stretch, state: Granulate, weight: number): Step {
  const { material } = c.design;
  const channel = channelOf(c, at);
  state.bed = Math.min(1, ((1 - state.molten) * state.filmFrom) / channel.area);
  const slab = slabSides(material.conductivity, at.depth, at.barrelRadius, at.rootRadius);
  const granules = granuleShare(material, at.depth);
  const conducted = Math.max(0, granules * slab.wall * (at.wall - state.solid));
  const dragged = draggedOn(c, at, state, channel, weight, conducted);
  const pool = dragged.heat.share * (1 - state.bed);
  const bed = { wall: granules * slab.wall, core: granules * slab.core * (1 - pool) };
  const warming = warmingOf(at, bed);
  const filmed = Math.min(1, 1 / (1 / dragged.time + 1 / conductionTime(c, state, warming, at.length)));
  const given = exchangeOf(c, at, state, { melt: slab, bed, core: slab.core * pool, pool }, dragged);
  const wall = filmed * given.wall + (1 - filmed) * slab.wall;
  const core = filmed * given.core + (1 - filmed) * slab.core;
  const filmPower = dragged.heat.shear.whole * dragged.grip;
  melt(c, at, state, warming, dragged);
  advance(c, at, state, { wall, core }, filmPower + c.dissipation[at.reach] * (1 - filmed));
  settle(c, state);
  const { share, thickness, film } = dragged.heat;
  state.film = state.complete ? 0 : share * thickness;
  const brought = film.drive * dragged.grip;
  const byFilm = brought > filmCounts * (brought + conducted);
  const model = byFilm ? meltingModel.film : state.molten > 0 ? meltingModel.conduction : meltingModel.loose;
  return { wall, core, filmPower, model, done: state.complete ? filmed : null };
}

/** What wall and core draw a bed to. */
function warmingOf(at: Stretch, { wall, core }: Sides): Warming {
  const side = wall + core;
  return { side, target: (wall * at.wall + core * at.core) / side };
}

/** Melts by conduction over half the stretch, by the film, and by conduction again: second order. */
function melt(c: MeltingCase, at: Stretch, state: Granulate, warming: Warming, { mass }: Dragged): void {
  const add = (share: number) => {
    state.molten = Math.min(1, state.molten + share);
  };
  add(warmBed(c, state, warming, at.length / 2));
  add(mass / c.massFlow);
  add(warmBed(c, state, warming, at.length / 2));
}

/** What the film melts: the rate falls with the root of the bed, and is taken in the middle. */
function draggedOn(
  c: MeltingCase,
  at: Stretch,
  state: Granulate,
  channel: FilmChannel,
  weight: number,
  conducted: number,
): Dragged {
  const solid = c.massFlow * (1 - state.molten);
  const heatAt = (bed: number) => filmHeat(c, at, state, channel, bed, weight, conducted);
  const rateOf = ({ share, flow, film }: FilmHeat) => (share * flow) / film.demand;
  const first = heatAt(state.bed);
  const middle = solidLeft(solid, rateOf(first), at.length / 2);
  const still = !(first.share > 0 && middle > 0);
  const heat = still ? first : heatAt((state.bed * middle) / solid);
  const rate = still ? rateOf(first) : rateOf(heat) * Math.sqrt(solid / middle);
  const mass = solid - solidLeft(solid, rate, at.length);
  const grip = mass > 0 ? (mass * heat.film.demand) / (heat.film.drive * at.length) : 0;
  return { heat, mass, grip, time: rate > 0 ? (2 * solid) / (rate * at.length) : Number.POSITIVE_INFINITY };
}

/** Heat from wall and core into bed, film and pool, per kelvin between them and the mean, W/(m K). */
function exchangeOf(
  c: MeltingCase,
  at: Stretch,
  state: Granulate,
  { melt, bed, core, pool }: Conduction,
  { grip, heat: { shear } }: Dragged,
): Sides {
  const { conductivity, melting, heatCapacitySolid } = c.design.material;
  const mean = melting + Math.min(0, state.enthalpy) / heatCapacitySolid;
  // the bed may be colder than the mean
  const intoBed = (from: number) =>
    from > mean ? Math.max(1, (from - state.solid) / Math.max(from - mean, leastDifference)) : 1;
  const difference = at.wall - melting;
  const through = Math.max(0, conductivity * difference - (shear.whole - shear.toBed)) * grip;
  const pooled = melt.wall * pool * Math.max(0, at.wall - poolTemperature(c, state));
  const filmed = difference > 0 ? (through + pooled) / Math.max(at.wall - mean, difference) : 0;
  return { wall: bed.wall * intoBed(at.wall) + filmed, core: bed.core * intoBed(at.core) + core };
}

/** Temperature of what has melted, from the heat that the solid does not hold, K. */
function poolTemperature(c: MeltingCase, { enthalpy, molten, solid }: Granulate): number {
  const { melting, heatOfFusion, heatCapacitySolid, heatCapacityMelt } = c.design.material;
  const held = (1 - molten) * heatCapacitySolid * (solid - melting) + molten * heatOfFusion;
  return molten > 0 ? Math.max(melting, melting + (enthalpy - held) / (molten * heatCapacityMelt)) : melting;
}

function advance(c: MeltingCase, at: Stretch, state: Granulate, { wall, core }: Sides, made: number): void {
  const exchange = wall + core;
  const target = (wall * at.wall + core * at.core + made) / exchange;
  const along = (exchange * at.length) / c.massFlow;
  state.enthalpy = approach(c.design.material, state.enthalpy, target, along, along).enthalpy;
}

/** Holds the melted share to what the heat reaches for. */
function settle(c: MeltingCase, state: Granulate): void {
  const { melting, heatOfFusion, heatCapacitySolid } = c.design.material;
  const cold = heatCapacitySolid * (melting - state.solid);
  const available = state.enthalpy + cold;
  const each = heatOfFusion + cold;
  const most = available <= 0 ? 0 : available >= each ? 1 : available / each;
  state.molten = Math.min(most, state.molten);
  if (state.molten < 1 - 1e-9) return;
  state.molten = 1;
  state.bed = 0;
  state.complete = true;
  state.solid = melting;
}
