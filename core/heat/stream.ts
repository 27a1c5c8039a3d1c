/** Granulate and melt passing the cells: what they take up in each. */

import type { Design } from '../design/types.ts';
import type { Stations } from '../geometry/types.ts';
import { interpolateLinear } from '../math/interpolate.ts';
import { looseShare, slabSides } from '../melting/conduction.ts';
import { pipeNusselt } from './coefficients.ts';
import { enthalpyOf, type HeatContent } from './enthalpy.ts';
import { type HeatCells, heatedFrom } from './heatCells.ts';

/** Flows below this count as none, kg/s: a gram in thirty years. */
const leastFlow = 1e-12;

/** What passes, and the heat made in it. */
export interface Stream {
  readonly content: HeatContent;
  /** kg/s; 0 or at least 1e-12 */
  readonly massFlow: number;
  /** specific enthalpy at the feed opening, J/kg above the solid at melting */
  readonly feed: number;
  /** conduction of loose granules over that of melt; 1 where the exchange knows of them already */
  readonly loose: number;
  /** conduction from core to wall over that of melt, per cell */
  readonly through: Float64Array;
  /** exchange of each cell with wall and screw core, W/K; of granules by their share; 0 ahead of the feed opening */
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
  /**
   * W/(m K) in each reach with wall and screw core, whatever the granulate is there; without it granulate exchanges as
   * a slab, granules at their loose share
   */
  readonly exchange?: { readonly wall: Float64Array; readonly core: Float64Array };
}

/**
 * Lays a load over the cells. Channel: exchange of the load, or conduction into a slab heated from both faces; nozzle:
 * developed laminar pipe flow. Beyond the last station: a slab in the channel of the last station.
 */
export function streamOver(design: Design, cells: HeatCells, load: Load): Stream {
  const { material, process, barrel } = design;
  const { stations, massFlow, exchange } = load;
  const wallSide = exchange ? laid(cells, stations, along(stations, exchange.wall)) : new Float64Array(cells.count);
  const coreSide = exchange ? laid(cells, stations, along(stations, exchange.core)) : new Float64Array(cells.count);
  const slabFrom = exchange ? stations.z[stations.count - 1] : barrel.feedOpening.start;
  for (let i = 0; i < cells.count; i++) {
    const at = (values: Float64Array) => interpolateLinear(stations.z, values, cells.z[i]);
    if (i >= cells.barrel) {
      wallSide[i] = pipeNusselt * Math.PI * material.conductivity * cells.length[i];
      continue;
    }
    const end = cells.z[i] + cells.length[i] / 2;
    const length = Math.min(cells.length[i], Math.max(0, end - slabFrom));
    if (!(length > 0)) continue;
    const slab = slabSides(
      material.conductivity,
      at(stations.depth),
      at(stations.barrelRadius),
      at(stations.rootRadius),
    );
    wallSide[i] += length * slab.wall;
    coreSide[i] += length * slab.core;
  }
  const solid = { temperature: process.feedTemperature, fused: process.feedTemperature >= material.melting ? 1 : 0 };
  return {
    content: material,
    massFlow: massFlow > leastFlow ? massFlow : 0,
    feed: enthalpyOf(material, solid),
    loose: exchange ? 1 : looseShare(material),
    through: cells.z.map((z) => (!exchange && z < heatedFrom(design) ? looseShare(material) : 1)),
    wallSide,
    coreSide,
    dissipation: spread(cells, load),
  };
}

/** What reaches have per length, over their length. */
const along = ({ z }: Stations, perLength: Float64Array): Float64Array =>
  perLength.map((value, i) => value * (z[i + 1] - z[i]));

/** Watts of the reaches; the head's over the nozzle by length. */
function spread(cells: HeatCells, { stations, dissipation, headDissipation }: Load): Float64Array {
  const watts = laid(cells, stations, dissipation);
  const inNozzle = cells.count - cells.barrel;
  for (let i = cells.barrel; i < cells.count; i++) watts[i] += headDissipation / inNozzle;
  return watts;
}

/** What reaches have, by the share of each that lies in a cell; none of it is lost. */
function laid(cells: HeatCells, stations: Stations, perReach: Float64Array): Float64Array {
  const inCells = new Float64Array(cells.count);
  const cell = cells.length[0];
  perReach.forEach((value, reach) => {
    const [from, to] = [stations.z[reach], stations.z[reach + 1]];
    if (!(value > 0) || !(to > from)) return;
    const last = Math.min(cells.barrel - 1, Math.floor(to / cell));
    for (let i = Math.min(last, Math.floor(from / cell)); i <= last; i++) {
      const end = i === cells.barrel - 1 ? to : Math.min(to, (i + 1) * cell);
      inCells[i] += (value * Math.max(0, end - Math.max(from, i * cell))) / (to - from);
    }
  });
  return inCells;
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
