/** Heat the product takes, what the screw gives and what the heaters must bring. */

import { outsideCoefficient } from '../heat/coefficients.ts';
import { enthalpyBetween } from '../heat/enthalpy.ts';
import { dissipationOf, type FlowState } from './flowState.ts';
import type { Machine } from './machine.ts';

/** Heat flows, W. */
export interface HeatBalance {
  readonly product: number;
  readonly dissipation: number;
  readonly loss: number;
  /** what the heaters must bring: product + loss - dissipation, at least 0 */
  readonly heater: number;
  readonly installed: number;
  /** melt flow that the installed watts can heat, m³/s; 0 where losses eat them all */
  readonly heaterCapacity: number;
}

/**
 * Balance at a state.
 * Losses: heat the barrel's controllers supply without throughput (natural convection, radiation, conduction to the
 * cold end) plus the nozzle's own surface.
 */
export function heatBalance(machine: Machine, state: FlowState): HeatBalance {
  const { material, process, nozzle, barrel } = machine.design;
  const out = Math.max(nozzle.setTemperature, state.melt.temperature[machine.stations.count - 1]);
  const perVolume = material.meltDensity * enthalpyBetween(material, process.feedTemperature, out);
  const product = perVolume * state.volumeFlow;
  const dissipation = dissipatedPower(machine, state);
  const loss = standingLoss(machine);
  const installed = barrel.zones.reduce(
    (sum, zone) => sum + (zone.kind === 'heated' ? zone.maxPower : 0),
    nozzle.maxPower,
  );
  const spare = installed - loss + dissipation;
  return {
    product,
    dissipation,
    loss,
    heater: Math.max(0, product + loss - dissipation),
    installed,
    heaterCapacity: perVolume > 0 ? Math.max(0, spare) / perVolume : Number.POSITIVE_INFINITY,
  };
}

function dissipatedPower(machine: Machine, state: FlowState): number {
  const { z } = machine.stations;
  const heat = dissipationOf(state);
  let sum = state.head.swirlPower + state.volumeFlow * state.head.total;
  heat.forEach((perLength, i) => {
    const share = i === state.melt.start.reach ? state.melt.start.share : 1;
    sum += perLength * (z[i + 1] - z[i]) * share;
  });
  return sum;
}

/** W the controllers bring without throughput; the nozzle counts as a cylinder of its outer diameter. */
function standingLoss(machine: Machine): number {
  const { nozzle, process } = machine.design;
  const length = nozzle.segments.reduce((sum, segment) => sum + segment.length, 0);
  const surface = Math.PI * nozzle.outerDiameter * (length + nozzle.outerDiameter / 4);
  const atNozzle = outsideCoefficient.value * surface * Math.max(0, nozzle.setTemperature - process.ambient);
  return atNozzle + machine.walls.heaters.reduce((sum, heater) => sum + heater.power, 0);
}
