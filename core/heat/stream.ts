/** Granulate and melt passing the cells: what they take up in each. */

import type { Design } from '../design/types.ts';
import type { Stations } from '../geometry/types.ts';
import { interpolateLinear } from '../math/interpolate.ts';
import { pipeNusselt, slabNusselt } from './coefficients.ts';
import { enthalpyOf, type HeatContent } from './enthalpy.ts';
import type { HeatCells } from './heatCells.ts';
import { looseShare } from './meltTemperature.ts';

/** What passes, and the heat made in it. */
export interface Stream {
  readonly content: HeatContent;
  /** kg/s, >= 0 */
  readonly massFlow: number;
  /** specific enthalpy at the feed opening, J/kg above the solid at melting */
  readonly feed: number;
  /** conduction of loose granules over that of melt */
  readonly loose: number;
  /** exchange of each cell with wall and screw core, W/K, once molten; 0 ahead of the feed opening */
  readonly wallSide: Float64Array;
  readonly coreSide: Float64Array;
  /** heat made in each cell, W */
  readonly dissipation: Float64Array;
}

/** Flow through the machine and where it makes heat. */
export interface Load {
  readonly stations: Stations;
  /** kg/s */
  readonly massFlow: number;
  /** W in each reach between stations */
  readonly dissipation: Float64Array;
  /** W in tip and nozzle */
  readonly headDissipation: number;
}

/**
 * Lays a load over the cells. Channel: conduction into a slab heated from both faces; nozzle: developed laminar pipe
 * flow. Beyond the last station the channel is that of the last station.
 */
export function streamOver(design: Design, cells: HeatCells, load: Load): Stream {
  const { material, process, barrel } = design;
  const { stations, massFlow } = load;
  const wallSide = new Float64Array(cells.count);
  const coreSide = new Float64Array(cells.count);
  for (let i = 0; i < cells.count; i++) {
    const at = (values: Float64Array) => interpolateLinear(stations.z, values, cells.z[i]);
    if (i >= cells.barrel) {
      wallSide[i] = pipeNusselt * Math.PI * material.conductivity * cells.length[i];
      continue;
    }
    const end = cells.z[i] + cells.length[i] / 2;
    const length = Math.min(cells.length[i], Math.max(0, end - barrel.feedOpening.start));
    const per = (slabNusselt * material.conductivity * 2 * Math.PI * length) / at(stations.depth);
    wallSide[i] = per * at(stations.barrelRadius);
    coreSide[i] = per * at(stations.rootRadius);
  }
  const solid = { temperature: process.feedTemperature, fused: process.feedTemperature >= material.melting ? 1 : 0 };
  return {
    content: material,
    massFlow,
    feed: enthalpyOf(material, solid),
    loose: looseShare(material),
    wallSide,
    coreSide,
    dissipation: spread(cells, load),
  };
}

/** Watts of the reaches, by the share of each that lies in a cell; the head's over the nozzle by length. */
function spread(cells: HeatCells, { stations, dissipation, headDissipation }: Load): Float64Array {
  const watts = new Float64Array(cells.count);
  const cell = cells.length[0];
  dissipation.forEach((value, reach) => {
    const [from, to] = [stations.z[reach], stations.z[reach + 1]];
    if (!(value > 0) || !(to > from)) return;
    const last = Math.min(cells.barrel - 1, Math.floor(to / cell));
    for (let i = Math.min(last, Math.floor(from / cell)); i <= last; i++) {
      const end = i === cells.barrel - 1 ? to : Math.min(to, (i + 1) * cell);
      watts[i] += (value * Math.max(0, end - Math.max(from, i * cell))) / (to - from);
    }
  });
  const inNozzle = cells.count - cells.barrel;
  for (let i = cells.barrel; i < cells.count; i++) watts[i] += headDissipation / inNozzle;
  return watts;
}

/**
 * Temperature of the melt behind the nozzle, K.
 * @param massFlow kg/s, > 0
 * @param before, wall temperature ahead of it and of its wall, K
 * @param made heat made in it, W
 */
export function nozzleOutlet(design: Design, massFlow: number, before: number, wall: number, made: number): number {
  const { material, nozzle } = design;
  const length = nozzle.segments.reduce((sum, segment) => sum + segment.length, 0);
  const exchange = pipeNusselt * Math.PI * material.conductivity * Math.max(length, 1e-6);
  const target = wall + made / exchange;
  return target + (before - target) * Math.exp(-exchange / (massFlow * material.heatCapacityMelt));
}
