/** The whole prediction: stages in order, nothing else. */

import type { Design } from '../design/types.ts';
import { findingsOf } from '../findings/rules.ts';
import { measureGeometry } from '../geometry/summary.ts';
import type { GeometrySummary } from '../geometry/types.ts';
import type { WallTemperatures } from '../heat/wallTemperature.ts';
import { solvedPumpingBasis } from '../path/bases.ts';
import { createFieldCache, type FieldCache } from '../path/fieldCache.ts';
import { type SolvedPath, solvedPath } from '../path/solvedPath.ts';
import { coreVersion } from '../version.ts';
import { axialStage, nozzleStage } from './axialStage.ts';
import { heatBasis, pumpingBasis, withDoubt } from './bases.ts';
import { capacitiesOf, pumpingDoubts } from './capacities.ts';
import { colourStage } from './colourStage.ts';
import { coldEndReport, meltingReport, solidsReport, warmUpReport } from './contentStage.ts';
import { curveStage } from './curveStage.ts';
import type { DrivenPoint } from './drivenPoint.ts';
import { driveStage, headPressureOf } from './driveStage.ts';
import { dwellStage } from './dwellStage.ts';
import { heatDemand } from './heatBalance.ts';
import { type SettledHeat, settledMachine } from './heatSettling.ts';
import { createMachine, type Machine } from './machine.ts';
import { withMelting } from './operating.ts';
import { printStage, printSupply } from './printStage.ts';
import { meltVolumes } from './residenceStage.ts';
import type { OutputCurve, Prediction, PredictionOptions } from './types.ts';

/** Accuracy that the windows and commands use. */
export const defaultOptions: PredictionOptions = {
  stationsPerTurn: 8,
  curvePoints: 16,
  fields: 'formula',
  warmUp: false,
};

/** Told after each stage: share done, 0 to 1, and the stage's name. */
export type Progress = (done: number, stage: string) => void;

/**
 * Predicts a design.
 * @param design validated
 * @param options see PredictionOptions; missing ones as in defaultOptions
 * @param progress called between stages
 * @param cache solved fields by their dimensionless problem, kept by the caller from run to run
 * @returns plain data in SI units; never throws for a validated design
 */
export function predict(
  design: Design,
  options: Partial<PredictionOptions> = {},
  progress?: Progress,
  cache: FieldCache = createFieldCache(),
): Prediction {
  return run(design, options, progress, cache, { settled: null });
}

/** What first figures leave behind for those after the next edit. Kept by the caller, from run to run. */
export interface Neighbour {
  settled: SettledHeat | null;
}

/** Nothing known yet. */
export const createNeighbour = (): Neighbour => ({ settled: null });

/** Coarse stations, no other speeds, no warming up. */
const coarse = { fields: 'formula', stationsPerTurn: 4, curvePoints: 0, warmUp: false } as const;

/**
 * First figures after an edit: the stages of `predict` at their coarsest, begun where the edit before ended.
 * @param neighbour what the last call left; changed. Figures differ by it within the tolerance of flow and walls, 0.2 %
 */
export const firstFigures = (design: Design, neighbour: Neighbour): Prediction =>
  run(design, coarse, undefined, createFieldCache(), neighbour);

function run(
  design: Design,
  options: Partial<PredictionOptions>,
  progress: Progress | undefined,
  cache: FieldCache,
  neighbour: Neighbour,
): Prediction {
  const chosen = { ...defaultOptions, ...options };
  const standing = createMachine(design, Math.max(4, chosen.stationsPerTurn));
  const geometry = measureGeometry(design, standing.stations);
  progress?.(0.05, 'working point');
  neighbour.settled = settledMachine(standing, neighbour.settled);
  const { machine: plain, driven: first, converged: warm } = neighbour.settled;
  const told = progress && ((done: number, stage: string) => progress(0.1 + 0.7 * done, stage));
  const solved = chosen.fields === 'solved' ? solvedPath(plain, first, cache, told) : null;
  const { machine, driven: found } = solved ?? { machine: plain, driven: first };
  const point = withMelting(machine, found.point);
  const driven = { ...found, point };
  progress?.(0.8, 'output over speed');
  const { curve, converged } = curveStage(machine, chosen.curvePoints, point);
  progress?.(0.9, 'residence and colour');
  const settled = { machine, driven, standing: standing.walls, geometry, curve };
  const partial = {
    ...originOf(design, chosen),
    ...stagesOf(settled, dwellStage(machine, point, geometry, solved, cache), outputOf(machine, driven, solved)),
    warmUp: chosen.warmUp ? warmUpReport(machine) : null,
    converged: warm && point.converged && converged && (solved?.converged ?? true),
  };
  progress?.(0.95, 'findings');
  return { ...partial, findings: findingsOf({ design, machine, driven, prediction: partial }) };
}

/** A machine at its working point, with the walls of a hot standstill. */
interface Settled {
  readonly machine: Machine;
  readonly driven: DrivenPoint;
  readonly standing: WallTemperatures;
  readonly geometry: GeometrySummary;
  readonly curve: OutputCurve;
}

/** Everything that follows from the working point. */
function stagesOf(settled: Settled, dwell: ReturnType<typeof dwellStage>, output: Prediction['output']) {
  const { machine, driven, standing, geometry, curve } = settled;
  const { design } = machine;
  const { point } = driven;
  const volumes = meltVolumes(machine, point.state, geometry);
  const heat = { ...heatDemand(machine, point.state, point.volumeFlow), basis: withDoubt(heatBasis) };
  const solids = solidsReport(machine, point.state, point.volumeFlow);
  return {
    geometry,
    stations: machine.stations,
    axial: axialStage(machine, point.state, solids),
    nozzle: nozzleStage(machine, point.state),
    ...capacitiesOf(machine, driven, output.basis),
    output,
    curve,
    ...dwell,
    colour: colourStage(machine, point.state, dwell.residence, dwell.dead.spots),
    drive: driveStage(machine, geometry, driven),
    heat,
    solids,
    melting: meltingReport(machine, point.state, point.memory.dissipation),
    coldEnd: coldEndReport(machine, standing),
    print: printStage(design, printSupply(machine, driven, volumes, heat.outlet), curve),
  };
}

/** What made a prediction. */
const originOf = (design: Design, options: PredictionOptions) => ({
  revisionId: design.revisionId,
  revisionName: design.revisionName,
  designHash: design.hash,
  coreVersion,
  calibration: design.calibration,
  options,
});

function outputOf(machine: Machine, { point, stalled }: DrivenPoint, solved: SolvedPath | null): Prediction['output'] {
  const { march } = point.state;
  const leak = march.flows[machine.lastFlight - 1]?.leakFlow ?? 0;
  const flows = point.volumeFlow > 0;
  return {
    flows,
    volumeFlow: point.volumeFlow,
    massFlow: point.volumeFlow * machine.design.material.meltDensity,
    screwSpeed: stalled ? 0 : point.screwSpeed,
    headPressure: headPressureOf(machine, point),
    leakFlow: flows ? leak : 0,
    filledLength: flows ? march.filledLength : 0,
    basis: withDoubt(solved ? solvedPumpingBasis : pumpingBasis, [
      ...(solved ? solved.doubts : pumpingDoubts(machine)),
      solved !== null && !solved.converged && 'A solved field, or its agreement with the flow, did not converge.',
      !point.converged && 'The balance of screw and head did not converge.',
    ]),
  };
}
