/** Steady temperatures of barrel, nozzle and screw core, and what each heater must bring and can hold. */

import type { Design } from '../design/types.ts';
import { type ColdEnd, coldEndOf } from './coldEnd.ts';
import { warmthOf } from './enthalpy.ts';
import { flowsOf, type HeatFlows } from './flows.ts';
import { type CellCounts, defaultCells, type HeatCells, heatCells } from './heatCells.ts';
import { type Duty, givenBy, underHeater } from './heaterBodies.ts';
import { type Load, streamOver } from './stream.ts';
import { type HeldHeat, heldHeat } from './thermostats.ts';

/** A heated zone, or the nozzle. */
interface ZoneHeat {
  readonly name: string;
  readonly part: 'zone' | 'nozzle';
  /** K, wanted and mean of the wall under the heater */
  readonly setTemperature: number;
  readonly reached: number;
  /** W: given; needed if every heater had what it needs; installed */
  readonly power: number;
  readonly needed: number;
  readonly maxPower: number;
  /** holds its set temperature; gives all it has and stays below; is off and stays above */
  readonly duty: Duty;
}

/** Temperatures at cell centres along the bore, and the heat behind them. */
export interface WallTemperatures {
  /** m */
  readonly z: Float64Array;
  /** K */
  readonly barrel: Float64Array;
  readonly screw: Float64Array;
  /** mean of what fills the channel, K: granules and melt that pass, or standing content half-way between wall and core */
  readonly content: Float64Array;
  /** nozzle: z, m, and temperature, K */
  readonly nozzleZ: Float64Array;
  readonly nozzle: Float64Array;
  /** mean of the nozzle's wall, K; its set temperature where it is held */
  readonly nozzleTemperature: number;
  /** of what leaves the nozzle, K; feed temperature without throughput */
  readonly outlet: number;
  /** heated zones with the flow, then the nozzle */
  readonly zones: readonly ZoneHeat[];
  readonly flows: HeatFlows;
  /** the same if every heater had what it needs */
  readonly wantedFlows: HeatFlows;
  /** what creeps into the cold end */
  readonly coldEnd: ColdEnd;
  /** the solution itself, to start a neighbouring one from */
  readonly held: HeldHeat;
  readonly converged: boolean;
}

/**
 * Solves barrel, nozzle and screw core together with what passes.
 * @param load flow and heat made in it; null at standstill
 * @param counts cells along barrel and nozzle
 * @param near walls of a neighbouring load of the same design, to start from
 * Finite volumes along the axis, second order. Assumes: radially uniform wall; heaters of one body temperature whose
 * sensor reads the mean of the wall under them; screw core warmed through content that stands, or by what moves past it,
 * with what it hands on charged to it. Source: fin equation (Incropera & DeWitt, section 3.6) with a plug-flow
 * heat balance of the content.
 */
export function wallTemperatures(
  design: Design,
  load: Load | null = null,
  counts: CellCounts = defaultCells,
  near: WallTemperatures | null = null,
): WallTemperatures {
  const cells = heatCells(design, counts);
  const stream = load && streamOver(design, cells, load);
  const from = near && near.held.state.wall.length === cells.count ? near.held : undefined;
  const held = heldHeat(cells, stream, true, from);
  const wanted = held.duties.includes('weak') ? heldHeat(cells, stream, false, from) : held;
  const { wall, core, enthalpy } = held.state;
  const zones = zonesOf(cells, held, wanted);
  const flowing = stream !== null && stream.massFlow > 0;
  return {
    z: cells.z.subarray(0, cells.barrel),
    barrel: wall.subarray(0, cells.barrel),
    screw: core.subarray(0, cells.barrel),
    content: core
      .subarray(0, cells.barrel)
      .map((value, i) => (flowing ? warmthOf(stream.content, enthalpy[i]).temperature : (value + wall[i]) / 2)),
    nozzleZ: cells.z.subarray(cells.barrel),
    nozzle: wall.subarray(cells.barrel),
    nozzleTemperature: zones[zones.length - 1].reached,
    outlet: flowing ? warmthOf(stream.content, enthalpy[cells.count - 1]).temperature : design.process.feedTemperature,
    zones,
    flows: flowsOf(cells, stream, held.state),
    wantedFlows: flowsOf(cells, stream, wanted.state),
    coldEnd: coldEndOf(design, cells, held.state),
    held,
    converged: held.converged && wanted.converged,
  };
}

function zonesOf(cells: HeatCells, held: HeldHeat, wanted: HeldHeat): ZoneHeat[] {
  const given = ({ state }: HeldHeat, k: number) => Math.max(0, givenBy(cells.heaters[k], state.bodies[k], state.wall));
  return cells.heaters.map((heater, k) => {
    const { name, part, setTemperature, maxPower } = heater;
    const duty = held.duties[k];
    const reached = duty === 'held' ? setTemperature : underHeater(heater, held.state.wall);
    const power = duty === 'weak' ? maxPower : given(held, k);
    return { name, part, setTemperature, reached, power, needed: given(wanted, k), maxPower, duty };
  });
}
