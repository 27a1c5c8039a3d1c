/** Print demand against supply. */

import type { Design } from '../design/types.ts';
import { highestScrewSpeed } from '../drive/motor.ts';
import { solveReach } from '../flow/reach.ts';
import { printSideBasis } from '../print/basis.ts';
import { meltColumn } from '../print/drip.ts';
import { printState } from '../print/printState.ts';
import type { PrintState } from '../print/types.ts';
import { withDoubt } from './bases.ts';
import type { DrivenPoint } from './drivenPoint.ts';
import { type FlowState, flowingTemperature, headResistance } from './flowState.ts';
import type { Machine } from './machine.ts';
import type { MeltVolumes } from './residenceStage.ts';
import type { Basis, OutputCurve, PrintMatch } from './types.ts';

/** What the printer gets. */
export interface Supply {
  /** m³/s */
  readonly volumeFlow: number;
  /** rev/s */
  readonly screwSpeed: number;
  /** melt between the last flight and the orifice, m³, and the slope of its pressure over flow, Pa s/m³ */
  readonly headVolume: number;
  readonly headResistance: number;
  /** what else is known of the melt; left out, the nozzle's set temperature and the head's volume stand in */
  readonly melt?: SuppliedMelt;
}

/** State of the melt that stands behind a print. */
interface SuppliedMelt {
  /** Pa above ambient at the end of the screw */
  readonly headPressure: number;
  /** m³ that store, at that pressure, what channel and head store together */
  readonly storedVolume: number;
  /** slope of pressure over flow back through the stopped screw, Pa s/m³; null where it holds no melt */
  readonly screwResistance: number | null;
  /** melt above the orifice of an upright machine, m */
  readonly column: number;
  /** K of what leaves the orifice */
  readonly outlet: number;
}

/**
 * Gathers what a working point gives the print.
 * @param outlet temperature of what leaves the nozzle, K
 */
export function printSupply(machine: Machine, { point }: DrivenPoint, volumes: MeltVolumes, outlet: number): Supply {
  const { state, volumeFlow, screwSpeed } = point;
  const { barrel, nozzle } = machine.design;
  const headVolume = volumes.tip + volumes.nozzle;
  const { z, count } = machine.stations;
  const from = z[Math.min(state.melt.start.reach, count - 1)];
  return {
    volumeFlow,
    screwSpeed,
    headVolume,
    headResistance: headResistance(machine, state),
    melt: {
      headPressure: volumeFlow > 0 ? state.headPressure : machine.design.process.backPressure,
      storedVolume: headVolume + pressedVolume(machine, state),
      screwResistance: volumeFlow > 0 ? backResistance(machine, state) : null,
      column: meltColumn(barrel.length, from, nozzle.segments),
      outlet,
    },
  };
}

/** Channel volume weighted by its pressure over the head's, m³: what the channel stores beside the head. */
function pressedVolume(machine: Machine, { march, headPressure }: FlowState): number {
  if (!(headPressure > 0)) return 0;
  const { freeVolume } = machine.stations;
  return march.fill.reduce((sum, fill, i) => {
    const mean = (march.pressure[i] + march.pressure[i + 1]) / 2 / headPressure;
    return sum + (freeVolume[i + 1] - freeVolume[i]) * fill * mean;
  }, 0);
}

/** Share by which the flow is changed for a slope. */
const nudge = 0.05;

/**
 * Slope of pressure over flow of the pressed part of the channel, Pa s/m³, with the viscosity of running: the melt of a
 * stopped screw is thicker, so the leak back is an upper bound.
 */
function backResistance(machine: Machine, state: FlowState): number | null {
  const { channel, stations, design } = machine;
  const { temperature, start } = state.melt;
  let slope = 0;
  channel.reaches.forEach((reach, i) => {
    if (!reach || !state.march.flows[i] || !(state.march.pressure[i + 1] > 0)) return;
    const at = flowingTemperature(design.material, (temperature[i] + temperature[i + 1]) / 2);
    const law = design.material.viscosityLaw(at, state.march.pressure[i + 1]);
    const gradient = (share: number) => solveReach(reach, law, state.screwSpeed, share * state.volumeFlow).gradient;
    const length = (stations.z[i + 1] - stations.z[i]) * (i === start.reach ? start.share : 1);
    slope += ((gradient(1 - nudge) - gradient(1 + nudge)) * length) / (2 * nudge * state.volumeFlow);
  });
  return slope > 0 && Number.isFinite(slope) ? slope : null;
}

/** Melt that stands behind a print where only flow and head are told; its column reaches up to the feed at most. */
function plainMelt({ barrel, nozzle, process }: Design, supply: Supply): SuppliedMelt {
  const { start, length: opening } = barrel.feedOpening;
  return {
    headPressure: process.backPressure + supply.volumeFlow * supply.headResistance,
    storedVolume: supply.headVolume,
    screwResistance: null,
    column: meltColumn(barrel.length, start + opening, nozzle.segments),
    outlet: nozzle.setTemperature,
  };
}

/** Compares what the print asks for with what comes out. */
export function printStage(design: Design, supply: Supply, curve: OutputCurve): PrintMatch & { readonly basis: Basis } {
  const { travelShare, idleShare, speed } = design.print;
  const melt = supply.melt ?? plainMelt(design, supply);
  const outlet = flowingTemperature(design.material, melt.outlet);
  const state = printState(design, { ...supply, ...melt, outlet });
  const { area, passes } = state.line;
  const demand = area * speed;
  const working = Math.max(0, 1 - travelShare - idleShare);
  return {
    ...state,
    outlet,
    lineArea: area,
    demand,
    meanDemand: demand * working,
    margin: supply.volumeFlow / demand,
    highestSpeed: supply.volumeFlow / area,
    passesPerWall: passes,
    stepsPerVolume: state.firmware.stepsPerVolume ?? 0,
    pressureTime: state.release.time.value,
    speedForDemand: speedFor(design, demand, supply, curve),
    basis: withDoubt(printSideBasis, printDoubts(design, state, supply)),
  };
}

/** What is doubtful about the print side of a case. */
function printDoubts({ print, material }: Design, state: PrintState, supply: Supply): (string | false)[] {
  return [
    print.lineWidth < print.layerHeight && 'The line is narrower than high; its section is taken as an ellipse.',
    supply.melt === undefined &&
      'Melt temperature is the nozzle’s set one; melt stored in the channel and its leak back are left out; melt is taken to stand up to the feed.',
    !state.release.compressibilityKnown &&
      'The melt’s compressibility is not known: 1e-9 per Pa within 40 % is taken; trapped air makes it far larger.',
    material.surfaceTension === null &&
      'The surface tension is not known: whether strand or drops form cannot be told, and dripping is without skin.',
    !state.cooling.coefficientKnown &&
      'Cooling of the line is not given: 30 W/(m² K) is taken, within a factor of two.',
    !state.cooling.lumped && 'The line is too thick to be of one temperature while it cools; its core sets later.',
  ];
}

/** Screw speed that would meet a flow, rev/s, by the curve where there is one; null where no speed of the drive does. */
export function speedFor(design: Design, demand: number, supply: Supply, curve: OutputCurve): number | null {
  if (curve.screwSpeed.length === 0) {
    if (!(supply.volumeFlow > 0)) return null;
    const speed = (supply.screwSpeed * demand) / supply.volumeFlow;
    return speed <= highestScrewSpeed(design.drive) ? speed : null;
  }
  let fromSpeed = 0;
  let fromFlow = 0;
  for (let i = 0; i < curve.screwSpeed.length; i++) {
    if (curve.torque[i] > curve.torqueAvailable[i]) return null;
    if (curve.volumeFlow[i] >= demand) {
      const share = (demand - fromFlow) / (curve.volumeFlow[i] - fromFlow);
      return fromSpeed + (curve.screwSpeed[i] - fromSpeed) * share;
    }
    fromSpeed = curve.screwSpeed[i];
    fromFlow = curve.volumeFlow[i];
  }
  return null;
}
