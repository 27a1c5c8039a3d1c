/** Heat the product takes, what the screw gives and what the heaters must bring. */

import { enthalpyBetween } from '../heat/enthalpy.ts';
import { lossesOf } from '../heat/flows.ts';
import { type Load, nozzleOutlet } from '../heat/stream.ts';
import { wallTemperatures } from '../heat/wallTemperature.ts';
import { dissipationOf, type FlowState } from './flowState.ts';
import type { Machine } from './machine.ts';
import type { HeatDemand } from './types.ts';

/** Heat flows, W. */
export interface HeatBalance {
  readonly product: number;
  /** by air, coolant and drive end */
  readonly loss: number;
  /** what the heaters must bring: product + loss - dissipation, at least 0 */
  readonly heater: number;
  readonly dissipation: number;
  readonly installed: number;
  /** melt flow that all watts together, and heater by heater, can heat, m³/s; 0 where losses eat them all */
  readonly heaterCapacity: number;
}

/**
 * Watts of all heaters against what a state asks of them.
 * Losses are those of the machine's wall temperatures if every heater had what it needs.
 */
export function heatBalance(machine: Machine, state: FlowState): HeatBalance {
  const { material, process } = machine.design;
  const { dissipation, headDissipation, massFlow } = loadOf(machine, state, state.volumeFlow);
  const made = dissipation.reduce((sum, watts) => sum + watts, headDissipation);
  const end = state.melt.temperature[machine.stations.count - 1];
  const out = nozzleOutlet(machine.design, massFlow, end, machine.walls.nozzleTemperature, headDissipation);
  const perVolume =
    material.meltDensity * enthalpyBetween(material, process.feedTemperature, Math.max(out, material.melting));
  const installed = machine.walls.zones.reduce((sum, { maxPower }) => sum + maxPower, 0);
  const loss = lossesOf(machine.walls.wantedFlows);
  const spare = installed - loss + made;
  const product = perVolume * state.volumeFlow;
  return {
    product,
    loss,
    heater: Math.max(0, product + loss - made),
    dissipation: made,
    installed,
    heaterCapacity: Math.min(
      machine.heaters.melting,
      perVolume > 0 ? Math.max(0, spare) / perVolume : Number.POSITIVE_INFINITY,
    ),
  };
}

/**
 * What passes at a state and where it makes heat.
 * @param volumeFlow what comes out, m³/s: states of machines that give nothing are taken at a trickle
 */
export function loadOf(machine: Machine, state: FlowState, volumeFlow: number): Load {
  const { stations, design } = machine;
  const { z } = stations;
  const dissipation = dissipationOf(state).map((perLength, i) => {
    const share = i === state.melt.start.reach ? state.melt.start.share : 1;
    return (perLength * share + state.melt.filmPower[i]) * (z[i + 1] - z[i]);
  });
  return {
    stations,
    massFlow: volumeFlow * design.material.meltDensity,
    dissipation,
    exchange: state.melt.exchange,
    headDissipation: state.head.swirlPower + state.volumeFlow * state.head.total,
  };
}

/**
 * Heat of the whole machine and of each heater at a working point.
 * @param volumeFlow what comes out, m³/s
 */
export function heatDemand(machine: Machine, state: FlowState, volumeFlow: number): HeatDemand {
  const walls = wallTemperatures(machine.design, loadOf(machine, state, volumeFlow));
  const { product, dissipation, ambient, coolant, driveEnd, heaters } = walls.flows;
  return {
    product,
    dissipation,
    loss: lossesOf(walls.flows),
    ambient,
    coolant,
    driveEnd,
    heater: walls.zones.reduce((sum, { needed }) => sum + needed, 0),
    given: heaters,
    holdingFlow: Number.isFinite(machine.heaters.holding) ? machine.heaters.holding : null,
    holdingLimit: machine.heaters.holdingLimit,
    installed: walls.zones.reduce((sum, { maxPower }) => sum + maxPower, 0),
    outlet: walls.outlet,
    zones: walls.zones,
  };
}
