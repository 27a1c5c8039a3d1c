/** Mean temperature of granules and melt along the screw, and where melting is complete. */

import type { Design, DesignMaterial } from '../design/types.ts';
import type { MeltStart } from '../flow/channel.ts';
import type { Stations } from '../geometry/types.ts';
import { slabNusselt } from './coefficients.ts';
import type { HeatContent } from './enthalpy.ts';

/** Granules and melt along the stations. */
export interface MeltTemperatures {
  /** K, per station */
  readonly temperature: Float64Array;
  /** 0 to 1 per station: share of the heat of fusion taken up once at melting */
  readonly molten: Float64Array;
  /** where melting is complete; reach = last station index where it never is */
  readonly start: MeltStart;
  /** first z where the mean temperature passes the softening point, m, or null */
  readonly softensAt: number | null;
}

/** Warmth that moves on. */
interface Progress {
  temperature: number;
  /** share of fusion done */
  fused: number;
}

/**
 * Heats the granulate from feed opening to the end of the screw.
 * @param walls barrel and screw temperatures at the stations, K
 * @param massFlow kg/s, > 0
 * @param dissipation heat made in the melt per axial length, W/m, per reach
 * Model: m c dT/dz = h_b pi D (T_b - T) + h_s pi D_root (T_s - T) + dissipation, h from conduction into a slab heated
 * from both faces; loose granules conduct by their share of solid. Fusion is taken up at the melting temperature.
 */
export function meltTemperatures(
  design: Design,
  stations: Stations,
  walls: { readonly barrel: Float64Array; readonly screw: Float64Array },
  massFlow: number,
  dissipation: Float64Array,
): MeltTemperatures {
  const { material, process, barrel } = design;
  const temperature = new Float64Array(stations.count).fill(process.feedTemperature);
  const molten = new Float64Array(stations.count);
  const state: Progress = { temperature: process.feedTemperature, fused: 0 };
  let start: MeltStart | null = null;
  let softensAt: number | null = null;
  for (let i = 0; i + 1 < stations.count; i++) {
    const length = stations.z[i + 1] - Math.max(stations.z[i], barrel.feedOpening.start);
    const done = length > 0 ? heatAlong(design, stations, i, walls, massFlow, dissipation[i], length, state) : null;
    if (done !== null) start = { reach: i, share: 1 - done };
    if (softensAt === null && state.temperature >= material.softening) softensAt = stations.z[i + 1];
    temperature[i + 1] = state.temperature;
    molten[i + 1] = state.temperature >= material.melting - 1e-6 ? state.fused : 0;
  }
  return { temperature, molten, start: start ?? { reach: stations.count - 1, share: 0 }, softensAt };
}

function heatAlong(
  design: Design,
  stations: Stations,
  i: number,
  walls: { readonly barrel: Float64Array; readonly screw: Float64Array },
  massFlow: number,
  dissipation: number,
  length: number,
  state: Progress,
): number | null {
  const { material } = design;
  const middle = (array: Float64Array) => (array[i] + array[i + 1]) / 2;
  const coefficient = (slabNusselt * material.conductivity) / middle(stations.depth);
  const barrelSide = coefficient * 2 * Math.PI * middle(stations.barrelRadius);
  const screwSide = coefficient * 2 * Math.PI * middle(stations.rootRadius);
  const exchange = barrelSide + screwSide;
  const warm = (barrelSide * middle(walls.barrel) + screwSide * middle(walls.screw)) / exchange;
  const solid = { target: warm, pull: (exchange * looseShare(material)) / massFlow };
  const melt = { target: warm + dissipation / exchange, pull: exchange / massFlow };
  return advance(material, state, solid, melt, length);
}

/** Loose granules conduct by their share of solid. */
export const looseShare = (material: DesignMaterial): number => material.bulkDensity / material.solidDensity;

/** What pulls the temperature: K, and exchange per mass flow, J/(kg K m). */
interface Pull {
  readonly target: number;
  readonly pull: number;
}

/**
 * Moves the state a length on towards the target of the solid, and of the melt from where melting is complete.
 * @returns share of the length after which melting was complete, or null where that did not happen in it
 */
function advance(content: HeatContent, state: Progress, loose: Pull, melt: Pull, length: number): number | null {
  const { melting, heatOfFusion } = content;
  const solid = state.fused < 1;
  const capacity = solid ? content.heatCapacitySolid : content.heatCapacityMelt;
  const { target, pull } = solid ? loose : melt;
  const next = target + (state.temperature - target) * Math.exp((-pull * length) / capacity);
  if (!solid) {
    state.temperature = next;
    return null;
  }
  // time is length: to melting along the exponential, then evenly through fusion
  const toMelting = lengthTo(melting, state.temperature, target, pull / capacity);
  if (toMelting >= length) {
    state.temperature = next;
    return null;
  }
  const toFuse = ((1 - state.fused) * heatOfFusion) / (pull * (target - melting));
  if (toMelting + toFuse >= length) {
    state.fused += (pull * (target - melting) * (length - toMelting)) / heatOfFusion;
    state.temperature = melting;
    return null;
  }
  const done = toMelting + toFuse;
  state.fused = 1;
  const rest = Math.exp((-melt.pull * (length - done)) / content.heatCapacityMelt);
  state.temperature = melt.target + (melting - melt.target) * rest;
  return done / length;
}

/** Length after which an exponential approach to the target passes a temperature; Infinity where it never does. */
function lengthTo(temperature: number, from: number, target: number, rate: number): number {
  if (target <= temperature) return Number.POSITIVE_INFINITY;
  return from >= temperature ? 0 : Math.log((target - from) / (target - temperature)) / rate;
}
