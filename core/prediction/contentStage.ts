/** Granules, melting and cold end at the working point. */

import { cohesiveArch } from '../feed/arching.ts';
import { throatPressure } from '../feed/bin.ts';
import { hopperFlow } from '../feed/flowKind.ts';
import { dischargeDoubts, hopperState } from '../feed/hopper.ts';
import { heatCreep } from '../heat/heatCreep.ts';
import type { WallTemperatures } from '../heat/wallTemperature.ts';
import { warmUp } from '../heat/warmUp.ts';
import { engagementOf, meltingRange } from '../melting/meltFront.ts';
import { meltingModel } from '../melting/types.ts';
import { withDoubt } from './bases.ts';
import { coldEndBasis, meltingReportBasis, solidsBasis, warmUpBasis } from './contentBases.ts';
import type { ColdEndReport, MeltingReport, SolidsReport, WarmUpReport } from './contentTypes.ts';
import type { FlowState } from './flowState.ts';
import type { Machine } from './machine.ts';
import { solidsAt } from './solidsStage.ts';

/** How far apart the two models' ends of melting may lie before it is called doubtful, share of the screw's length. */
const modelsApart = 0.25;

/** The granules with what their numbers rest on. */
export function solidsReport(machine: Machine, state: FlowState, volumeFlow: number): SolidsReport {
  const solids = solidsAt(machine, state, volumeFlow);
  const { design } = machine;
  const hopper = {
    ...hopperState(design),
    flow: hopperFlow(design),
    cohesive: cohesiveArch(design),
    throatPressure: throatPressure(design),
  };
  return { ...solids, hopper, basis: withDoubt(solidsBasis, [...solids.doubts, ...dischargeDoubts(design)]) };
}

/** Where melting ends, by which model, and what the flights reach. */
export function meltingReport(machine: Machine, state: FlowState, dissipation: Float64Array): MeltingReport {
  const { design, stations, wallAt } = machine;
  const { melt } = state;
  const ends = meltingRange({
    design,
    stations,
    walls: wallAt,
    screwSpeed: state.screwSpeed,
    massFlow: state.volumeFlow * design.material.meltDensity,
    dissipation,
  });
  const lengthOf = (model: number) =>
    melt.model.reduce((sum, own, i) => (own === model ? sum + stations.z[i + 1] - stations.z[i] : sum), 0);
  const length = stations.z[stations.count - 1];
  const { earliest, latest } = ends;
  const apart = earliest !== null && (latest === null || latest - earliest > modelsApart * length);
  return {
    softensAt: melt.softensAt,
    meltsFrom: melt.meltsFrom,
    ends,
    engagement: engagementOf(stations, melt),
    filmLength: lengthOf(meltingModel.film),
    conductionLength: lengthOf(meltingModel.conduction),
    basis: withDoubt(meltingReportBasis, [apart && 'Film and conduction put the end of melting far apart here.']),
  };
}

/**
 * Heat creep.
 * @param standing walls with the screw stopped and the heaters on
 */
export const coldEndReport = (machine: Machine, standing: WallTemperatures): ColdEndReport => ({
  ...heatCreep(machine.design, machine.walls, standing),
  basis: withDoubt(coldEndBasis, [!standing.converged && 'The walls at standstill did not converge.']),
});

/** Warming up; takes some tens of milliseconds. */
export function warmUpReport({ design }: Machine): WarmUpReport {
  const warm = warmUp(design);
  return {
    ...warm,
    basis: withDoubt(warmUpBasis, [
      !warm.converged && 'A time step did not converge.',
      design.barrel.heatCapacity === null && 'The barrel’s heat capacity is not given; steel is taken.',
    ]),
  };
}
