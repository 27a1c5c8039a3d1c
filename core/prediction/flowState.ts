/** Temperatures, pressures and power of a machine at one speed and one flow. */

import type { DesignMaterial } from '../design/types.ts';
import { type ChannelMarch, marchChannel } from '../flow/channel.ts';
import { type HeadDrop, headDrop } from '../flow/headDrop.ts';
import type { HeadElement } from '../flow/headPieces.ts';
import type { ViscosityLaw } from '../material/viscosityLaw.ts';
import { meltProgress } from '../melting/progress.ts';
import type { MeltProgress } from '../melting/types.ts';
import type { Machine } from './machine.ts';

/** How far above the highest safe temperature a viscosity is still evaluated, K: keeps runaway guesses finite. */
const beyondSafe = 100;

/** Everything that happens at a speed and a flow. */
export interface FlowState {
  /** rev/s */
  readonly screwSpeed: number;
  /** m³/s */
  readonly volumeFlow: number;
  readonly melt: MeltProgress;
  readonly march: ChannelMarch;
  readonly head: HeadDrop;
  /** Pa above ambient at the last station */
  readonly headPressure: number;
}

/** Temperature at which the viscosity is taken: never below melting (findings tell), never far above what is safe. */
export const flowingTemperature = (material: DesignMaterial, temperature: number): number =>
  Math.min(Math.max(temperature, material.melting), material.maxSafe + beyondSafe);

/**
 * Law of the melt in an element of the head: the screw's melt temperature in the barrel, the nozzle's temperature beyond
 * it.
 */
function headLaw(machine: Machine, meltEnd: number): (element: HeadElement, pressure: number) => ViscosityLaw {
  const { material } = machine.design;
  return (element, pressure) =>
    material.viscosityLaw(
      flowingTemperature(material, element.segment < 0 ? meltEnd : machine.walls.nozzleTemperature),
      pressure,
    );
}

/**
 * Evaluates a speed and a flow.
 * @param screwSpeed rev/s; @param volumeFlow melt, m³/s, > 0
 * @param dissipation W/m per reach, from a neighbouring state
 */
export function evaluateFlow(
  machine: Machine,
  screwSpeed: number,
  volumeFlow: number,
  dissipation: Float64Array,
): FlowState {
  const { design, stations, channel, head, wallAt } = machine;
  const { material, process } = design;
  const massFlow = volumeFlow * material.meltDensity;
  const melt = meltProgress({ design, stations, walls: wallAt, screwSpeed, massFlow, dissipation });
  const meltEnd = melt.temperature[stations.count - 1];
  const drop = headDrop(head, headLaw(machine, meltEnd), screwSpeed, volumeFlow, process.backPressure);
  const headPressure = process.backPressure + drop.total;
  const lawAt = (i: number, pressure: number) =>
    material.viscosityLaw(flowingTemperature(material, (melt.temperature[i] + melt.temperature[i + 1]) / 2), pressure);
  const march = marchChannel(channel, lawAt, melt.start, screwSpeed, volumeFlow, headPressure);
  return { screwSpeed, volumeFlow, melt, march, head: drop, headPressure };
}

/** Heat made in the melt per axial length, W/m, per reach: the screw's power less what goes into pressure. */
export function dissipationOf(state: FlowState): Float64Array {
  return Float64Array.from(state.march.flows, (flow, i) => {
    if (!flow) return 0;
    const made = flow.channelPower + flow.landPower - state.volumeFlow * flow.gradient;
    return Math.max(0, made) * state.march.fill[i];
  });
}

/** Slope of the head's pressure over flow at a state, Pa s/m³, by a central difference. */
export function headResistance(machine: Machine, state: FlowState): number {
  const { head, stations } = machine;
  const lawAt = headLaw(machine, state.melt.temperature[stations.count - 1]);
  const drop = (share: number) =>
    headDrop(head, lawAt, state.screwSpeed, share * state.volumeFlow, machine.design.process.backPressure).total;
  return (drop(1.02) - drop(0.98)) / (0.04 * state.volumeFlow);
}
