/** Melt, wall and pressure along the screw as plain arrays over the stations. */

import type { SolidsState } from '../feed/solidsTypes.ts';
import { type FlowState, flowingTemperature } from './flowState.ts';
import type { Machine } from './machine.ts';
import type { AxialState, NozzleDrop } from './types.ts';

/**
 * Profiles at the working point. Reach values are shown at the station where the reach ends.
 * @param solids granules ahead of the melt
 */
export function axialStage(machine: Machine, state: FlowState, solids: SolidsState): AxialState {
  const { count } = machine.stations;
  const { march, melt } = state;
  const fill = new Float64Array(count);
  const shearRate = new Float64Array(count);
  const viscosity = new Float64Array(count);
  for (let i = 1; i < count; i++) {
    const reach = march.flows[i - 1] ?? march.flows[i] ?? null;
    fill[i] = march.flows[i - 1] ? march.fill[i - 1] : (march.fill[i] ?? 0);
    shearRate[i] = reach?.shearRate ?? 0;
    viscosity[i] = reach?.viscosity ?? 0;
  }
  return {
    wallTemperature: machine.wallAt.barrel,
    screwTemperature: machine.wallAt.screw,
    meltTemperature: melt.temperature,
    solidTemperature: melt.solid,
    moltenShare: melt.molten,
    bed: melt.bed,
    film: melt.film,
    meltingModel: melt.model,
    pressure: march.pressure.map((value, i) => Math.max(value, solids.pressure[i])),
    fill,
    filling: fillingOf(state, solids, fill),
    molten: Uint8Array.from(melt.molten, (share) => (share >= 1 ? 1 : 0)),
    shearRate,
    viscosity,
  };
}

/**
 * Granules and melt together. Between the first melt and the end of melting the channel goes over from the filling of
 * the granules to that of the melt, by the molten share.
 */
function fillingOf({ melt, march }: FlowState, solids: SolidsState, fill: Float64Array): Float64Array {
  const granules = solids.fill.findLast((value) => value > 0) ?? 0;
  const first = march.flows.findIndex((flow) => flow !== null);
  const liquid = first < 0 ? granules : march.fill[first];
  return fill.map((value, i) => {
    if (value > 0 || solids.fill[i] > 0) return Math.max(value, solids.fill[i]);
    const share = melt.molten[i];
    return share > 0 && share < 1 ? granules + share * (liquid - granules) : 0;
  });
}

/** Pressure drop of each piece of the head; pieces of one segment (ring, cone, step) are added up. */
export function nozzleStage(machine: Machine, state: FlowState): NozzleDrop[] {
  const { material } = machine.design;
  const drops: { name: string; segment: number; pressureDrop: number; wallShearRate: number }[] = [];
  for (const { element, pressureDrop, wallShearRate } of state.head.elements) {
    const last = drops[drops.length - 1];
    if (last && last.segment === element.segment) {
      last.pressureDrop += pressureDrop;
      last.wallShearRate = Math.max(last.wallShearRate, wallShearRate);
    } else drops.push({ name: element.name, segment: element.segment, pressureDrop, wallShearRate });
  }
  const meltEnd = state.melt.temperature[machine.stations.count - 1];
  return drops.map(({ name, segment, pressureDrop, wallShearRate }) => ({
    name,
    pressureDrop,
    wallShearRate,
    temperature: flowingTemperature(material, segment < 0 ? meltEnd : machine.walls.nozzleTemperature),
  }));
}
