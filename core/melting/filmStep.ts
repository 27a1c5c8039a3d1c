/** One stretch of packed bed with a melt film between it and the barrel. */

import { slabNusselt } from '../heat/coefficients.ts';
import { approach, granuleShare, type Sides, slabSides } from './conduction.ts';
import { type FilmState, filmOver, filmThickness, grownFilm, relativeSpeed, solidLeft } from './dragRemoval.ts';
import { type FilmShear, filmShear } from './filmShear.ts';
import { type Granulate, type MeltingCase, meltingModel, type Step, type Stretch } from './types.ts';

/** Channel of a stretch, at its middle. */
interface FilmChannel {
  /** all channels across their run, m² */
  readonly area: number;
  /** width of all channels together at the barrel, m, and of one */
  readonly width: number;
  readonly single: number;
  /** sine of the angle between channel and circumference: axial advance per channel length */
  readonly advance: number;
  readonly helix: number;
}

/** What melts on a stretch, kg/s, and how. */
interface Melted {
  readonly mass: number;
  /** film on the barrel over its thickness, m per axial m, mean over the stretch */
  readonly grip: number;
  readonly shear: FilmShear;
  readonly film: number;
  readonly done: number | null;
}

/** Smallest heat that a kilogram is said to take up in melting, J/kg: keeps limits without fusion finite. */
const leastDemand = 1;

/** Channel area across its run at a stretch, all channels, m². */
export const channelArea = (c: MeltingCase, at: Stretch): number => channelOf(c, at).area;

function channelOf({ stations }: MeltingCase, { reach, depth, barrelRadius }: Stretch): FilmChannel {
  const middle = (values: Float64Array) => (values[reach] + values[reach + 1]) / 2;
  const starts = Math.max(1, stations.starts[reach]);
  const flighted = stations.flighted[reach] === 1;
  const helix = flighted ? middle(stations.helixBarrel) : Math.PI / 2;
  const single = flighted ? middle(stations.widthBarrel) : 2 * Math.PI * barrelRadius;
  const advance = flighted ? Math.sin(helix) : 1;
  return { area: starts * middle(stations.widthMean) * depth, width: starts * single, single, advance, helix };
}

/**
 * Moves bed, film and pool of melt along a stretch.
 * Bed and film after Tadmor & Klein 1970 with film convection and thinning (see filmShear), a film that first grows to
 * what the flight scrapes off, and a film never thicker than the conduction path of a slab, so that a screw without
 * speed or flight melts by conduction. The screw core warms the bed from below as granules; melt in the pool exchanges
 * as a slab. Heat that the film's shear returns to the barrel lessens what the barrel gives, down to none: where shear
 * heats the barrel, it stays in the melt here. Bed pressed free of pores; no break-up; second order in the stretch, the
 * share of the barrel's heat by the state at its start.
 */
export function filmStep(c: MeltingCase, at: Stretch, state: Granulate): Step {
  const { material } = c.design;
  const channel = channelOf(c, at);
  state.bed = Math.min(1, ((1 - state.molten) * state.filmFrom) / channel.area);
  const melt = slabSides(material.conductivity, at.depth, at.barrelRadius, at.rootRadius);
  const share = granuleShare(material, at.depth);
  // half before and half after the film's turn: second order
  const first = warmBed(c, at, state, melt.core * share * state.bed);
  const melted = meltedOn(c, at, state, channel);
  const wallSide = wallExchange(c, at, state, melt, melted);
  const filmed = melted.done ?? 1;
  const wall = filmed * wallSide + (1 - filmed) * melt.wall;
  const core = melt.core * (1 - filmed * state.bed * (1 - share));
  const filmPower = melted.shear.whole * melted.grip;
  const second = warmBed(c, at, state, melt.core * share * state.bed);
  advance(c, at, state, { wall, core }, filmPower + c.dissipation[at.reach] * (1 - filmed));
  settle(c, state, melted.mass / c.massFlow + first + second);
  state.film = state.complete ? 0 : melted.film;
  const done = state.complete ? filmed : null;
  return { wall, core, filmPower, model: meltingModel.film, done };
}

/** Film on the stretch: grows, then is dragged off. */
function meltedOn(c: MeltingCase, at: Stretch, state: Granulate, channel: FilmChannel): Melted {
  const { material, screw } = c.design;
  const bedSpeed = c.massFlow / (material.solidDensity * state.filmFrom);
  const barrelSpeed = 2 * Math.PI * at.barrelRadius * c.screwSpeed;
  // no more than the screw carries: a lead per turn
  const carried = barrelSpeed / Math.max(0.5, Math.cos(channel.helix));
  const speed = relativeSpeed(barrelSpeed, Math.min(bedSpeed, carried), channel.helix);
  const crossSpeed = c.stations.flighted[at.reach] === 1 ? barrelSpeed * Math.sin(channel.helix) : 0;
  const path = (at.depth / slabNusselt) * Math.sqrt(state.bed);
  const difference = Math.max(0, at.wall - material.melting);
  const cold = material.viscosityLaw(material.melting, 0);
  const hot = difference > 0 ? material.viscosityLaw(at.wall, 0) : cold;
  const width = channel.single * state.bed;
  const [from, clearance] = [state.film, screw.radialClearance];
  let thickness = from > 0 ? from : Math.max(clearance, 0.1 * path);
  for (let pass = from > 0 ? 1 : 0; ; pass++) {
    const shear = filmShear(cold, hot, speed, thickness, difference, material.conductivity);
    const film = filmOf(c, state, shear, crossSpeed, difference);
    const steady = Math.min(path, filmOver(filmThickness(film, width), clearance));
    if (pass > 1 || !(film.drive > 0)) return removed(c, at, state, { channel, film, shear, steady, bedSpeed });
    thickness = Math.max(steady, 1e-9);
  }
}

function filmOf(c: MeltingCase, state: Granulate, shear: FilmShear, crossSpeed: number, difference: number): FilmState {
  const { conductivity, melting, meltDensity, heatOfFusion, heatCapacitySolid, heatCapacityMelt } = c.design.material;
  const demand = heatOfFusion + heatCapacitySolid * (melting - state.solid) + heatCapacityMelt * shear.rise;
  const drive = conductivity * difference + shear.toBed;
  return { crossSpeed, meltDensity, drive, demand: Math.max(leastDemand, demand), carried: shear.carried };
}

interface Removal {
  readonly channel: FilmChannel;
  readonly film: FilmState;
  readonly shear: FilmShear;
  /** thickness in balance, m */
  readonly steady: number;
  readonly bedSpeed: number;
}

function removed(c: MeltingCase, at: Stretch, state: Granulate, removal: Removal): Melted {
  const { channel, film, shear, steady, bedSpeed } = removal;
  if (!(film.drive > 0) || !(steady > 0)) return { mass: 0, grip: 0, shear, film: state.film, done: null };
  const from = Math.min(state.film, steady);
  const grown = Math.min(steady, grownFilm(film, from, bedSpeed, at.length / channel.advance));
  const whole = grownFilm(film, from, bedSpeed, 1) ** 2 - from * from;
  const growing = Math.min(at.length, (channel.advance * (grown * grown - from * from)) / whole);
  const solid = c.massFlow * (1 - state.molten);
  const asFilm = Math.min(solid, film.meltDensity * bedSpeed * state.bed * channel.width * (grown - from));
  const rate = (state.bed * channel.width * film.drive) / (channel.advance * steady * film.demand);
  const left = solidLeft(solid - asFilm, rate, at.length - growing);
  const mass = solid - left;
  const done = left > 0 ? null : Math.min(1, (growing + (2 * (solid - asFilm)) / rate) / at.length);
  return { mass, grip: (mass * film.demand) / (film.drive * at.length), shear, film: grown, done };
}

/** Heat from the barrel through film and pool, per kelvin between wall and mean, W/(m K). */
function wallExchange(c: MeltingCase, at: Stretch, state: Granulate, melt: Sides, { grip, shear }: Melted): number {
  const { conductivity, melting } = c.design.material;
  const difference = at.wall - melting;
  if (!(difference > 0)) return melt.wall;
  const through = Math.max(0, conductivity * difference - (shear.whole - shear.toBed)) * grip;
  const pool = melt.wall * (1 - state.bed) * Math.max(0, at.wall - poolTemperature(c, state));
  const mean = melting + Math.min(0, state.enthalpy) / c.design.material.heatCapacitySolid;
  return (through + pool) / Math.max(at.wall - mean, difference);
}

/** Temperature of what has melted, from the heat that the solid does not hold, K. */
function poolTemperature(c: MeltingCase, { enthalpy, molten, solid }: Granulate): number {
  const { melting, heatOfFusion, heatCapacitySolid, heatCapacityMelt } = c.design.material;
  const held = (1 - molten) * heatCapacitySolid * (solid - melting) + molten * heatOfFusion;
  return molten > 0 ? Math.max(melting, melting + (enthalpy - held) / (molten * heatCapacityMelt)) : melting;
}

/**
 * Warms the bed from the core over half the stretch; what it takes beyond melting melts it.
 * @param side W/(m K)
 * @returns melted share of all mass
 */
function warmBed(c: MeltingCase, at: Stretch, state: Granulate, side: number): number {
  const { melting, heatOfFusion, heatCapacitySolid } = c.design.material;
  const capacity = c.massFlow * (1 - state.molten) * heatCapacitySolid;
  if (!(capacity > 0)) return 0;
  const length = at.length / 2;
  const rate = (side * length) / capacity;
  const next = at.core + (state.solid - at.core) * Math.exp(-rate);
  if (next <= melting) {
    state.solid = next;
    return 0;
  }
  const reached = Math.log((at.core - state.solid) / (at.core - melting)) / rate;
  state.solid = melting;
  return (side * length * (1 - reached) * (at.core - melting)) / (c.massFlow * Math.max(leastDemand, heatOfFusion));
}

function advance(c: MeltingCase, at: Stretch, state: Granulate, { wall, core }: Sides, made: number): void {
  const exchange = wall + core;
  const target = (wall * at.wall + core * at.core + made) / exchange;
  const along = (exchange * at.length) / c.massFlow;
  state.enthalpy = approach(c.design.material, state.enthalpy, target, along, along).enthalpy;
}

/** Takes the melted share over, as far as the heat reaches for it. */
function settle(c: MeltingCase, state: Granulate, melted: number): void {
  const { melting, heatOfFusion, heatCapacitySolid } = c.design.material;
  const cold = heatCapacitySolid * (melting - state.solid);
  const available = state.enthalpy + cold;
  const each = heatOfFusion + cold;
  const most = available <= 0 ? 0 : available >= each ? 1 : available / each;
  state.molten = Math.min(most, state.molten + melted, 1);
  if (state.molten < 1 - 1e-9) return;
  state.molten = 1;
  state.bed = 0;
  state.complete = true;
  state.solid = melting;
}
