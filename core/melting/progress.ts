/** Melting of the granulate from feed opening to the end of the screw. */

import type { MeltStart } from '../flow/channel.ts';
import type { Stations } from '../geometry/types.ts';
import { enthalpyOf, warmthOf } from '../heat/enthalpy.ts';
import { conductionStep } from './conductionStep.ts';
import { filmWeight } from './filmCriterion.ts';
import { channelArea, filmStep } from './filmStep.ts';
import type { Granulate, MeltingCase, MeltingChoice, MeltProgress, Step, Stretch } from './types.ts';

/** Share of the mass from which melt is said to be there. Own choice. */
const firstMelt = 0.01;

/** The results being filled. */
type Filling = { -readonly [K in keyof MeltProgress]: MeltProgress[K] };

/**
 * Marches over the stations.
 * Each stretch is computed as granules heated by conduction, with a film besides as far as it suits the place, or as
 * melt; see filmWeight for what decides, conductionStep and filmStep for the models and their ranges. Heat content,
 * exchange and temperature fit together: the heat content rises by exchange x (wall or core - temperature) + film power +
 * dissipation, per axial length.
 */
export function meltProgress(c: MeltingCase, choice: MeltingChoice = 'suited'): MeltProgress {
  const { stations, design } = c;
  const state = feedState(c);
  const out = emptyProgress(c, state);
  const opening = design.barrel.feedOpening.start;
  if (state.complete) out.start = startAt(stations, opening);
  for (let i = 0; i + 1 < stations.count; i++) {
    let from = Math.max(stations.z[i], opening);
    while (from < stations.z[i + 1]) {
      const at = stretchOf(c, i, from, state.complete ? stations.z[i + 1] : stopBefore(c, i, from));
      const before = { ...state };
      note(out, c, at, before, state, stepOver(c, at, state, choice));
      from = at.from + at.length;
    }
    put(out, c, i + 1, state);
  }
  return out;
}

function stepOver(c: MeltingCase, at: Stretch, state: Granulate, choice: MeltingChoice): Step {
  if (state.complete) return conductionStep(c, at, state);
  const weight = filmWeight(c, at, choice);
  if (state.filmFrom === 0 && weight > 0) state.filmFrom = channelArea(c, at);
  return state.filmFrom > 0 ? filmStep(c, at, state, weight) : conductionStep(c, at, state);
}

/** Melt from a place on. */
function startAt(stations: Stations, z: number): MeltStart {
  const reach = Math.max(0, stations.z.findIndex((at) => at > z) - 1);
  return { reach, share: (stations.z[reach + 1] - z) / (stations.z[reach + 1] - stations.z[reach]) };
}

/** Where the stretch from a place ends: with its reach, or before where a film might begin. */
function stopBefore({ design, stations, walls }: MeltingCase, i: number, from: number): number {
  const { start, length } = design.barrel.feedOpening;
  const [begin, end] = [stations.z[i], stations.z[i + 1]];
  const { melting } = design.material;
  const [before, after] = [walls.barrel[i], walls.barrel[i + 1]];
  const hot =
    before < melting && after > melting ? begin + ((end - begin) * (melting - before)) / (after - before) : end;
  const least = from + 1e-6 * (end - begin);
  return Math.min(...[start + length, hot, end].filter((z) => z > least), end);
}

function stretchOf({ stations, walls }: MeltingCase, i: number, from: number, to: number): Stretch {
  const share = ((from + to) / 2 - stations.z[i]) / (stations.z[i + 1] - stations.z[i]);
  const middle = (values: Float64Array) => values[i] + share * (values[i + 1] - values[i]);
  return {
    reach: i,
    from,
    length: to - from,
    depth: middle(stations.depth),
    barrelRadius: middle(stations.barrelRadius),
    rootRadius: middle(stations.rootRadius),
    wall: middle(walls.barrel),
    core: middle(walls.screw),
  };
}

function feedState({ design }: MeltingCase): Granulate {
  const { material, process } = design;
  const temperature = process.feedTemperature;
  const fused = temperature >= material.melting ? 1 : 0;
  return {
    enthalpy: enthalpyOf(material, { temperature, fused }),
    molten: fused,
    solid: Math.min(temperature, material.melting),
    film: 0,
    bed: 1 - fused,
    filmFrom: 0,
    complete: fused === 1,
  };
}

function emptyProgress(c: MeltingCase, state: Granulate): Filling {
  const { count } = c.stations;
  const floats = (size: number, value = 0) => new Float64Array(size).fill(value);
  const out: Filling = {
    temperature: floats(count),
    enthalpy: floats(count),
    solid: floats(count),
    molten: floats(count),
    bed: floats(count),
    film: floats(count),
    start: { reach: count - 1, share: 0 },
    meltsFrom: null,
    softensAt: null,
    exchange: { wall: floats(count - 1), core: floats(count - 1) },
    filmPower: floats(count - 1),
    model: new Uint8Array(count - 1),
  };
  put(out, c, 0, state);
  return out;
}

/** Writes the state behind a reach. */
function put(out: Filling, c: MeltingCase, station: number, state: Granulate): void {
  out.temperature[station] = warmthOf(c.design.material, state.enthalpy).temperature;
  out.enthalpy[station] = state.enthalpy;
  out.solid[station] = state.solid;
  out.molten[station] = state.molten;
  out.bed[station] = state.bed;
  out.film[station] = state.film;
}

/** Adds a stretch to the figures of its reach. */
function note(
  out: Filling,
  c: MeltingCase,
  { reach, from, length }: Stretch,
  before: Granulate,
  state: Granulate,
  step: Step,
): void {
  const { material } = c.design;
  const share = length / (c.stations.z[reach + 1] - c.stations.z[reach]);
  out.exchange.wall[reach] += step.wall * share;
  out.exchange.core[reach] += step.core * share;
  out.filmPower[reach] += step.filmPower * share;
  out.model[reach] = step.model;
  if (step.done !== null) out.start = startAt(c.stations, from + step.done * length);
  // linear within the stretch, and never behind the end of melting
  const crossing = (was: number, is: number, level: number) =>
    is < level ? null : from + length * Math.min(step.done ?? 1, was < level ? (level - was) / (is - was) : 0);
  const mean = (at: Granulate) => warmthOf(material, at.enthalpy).temperature;
  // by heat where the mean itself comes to melting: before, its melt tells nothing of how near it was
  const byHeat = before.molten === 0 && state.enthalpy > firstMelt * material.heatOfFusion;
  out.meltsFrom ??= byHeat
    ? crossing(before.enthalpy, state.enthalpy, firstMelt * material.heatOfFusion)
    : crossing(before.molten, state.molten, firstMelt);
  const soft = crossing(mean(before), mean(state), material.softening);
  if (soft !== null || out.meltsFrom !== null)
    out.softensAt ??= Math.min(soft ?? Number.POSITIVE_INFINITY, out.meltsFrom ?? Number.POSITIVE_INFINITY);
}
