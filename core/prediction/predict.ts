/** The whole prediction: stages in order, nothing else. */

import type { Design } from '../design/types.ts';
import { findingsOf } from '../findings/rules.ts';
import { measureGeometry } from '../geometry/summary.ts';
import type { WallTemperatures } from '../heat/wallTemperature.ts';
import { createFieldCache, type FieldCache } from '../path/fieldCache.ts';
import { solvedPath } from '../path/solvedPath.ts';
import { coreVersion } from '../version.ts';
import { axialStage, nozzleStage } from './axialStage.ts';
import { heatBasis, withDoubt } from './bases.ts';
import { coldEndReport, meltingReport, solidsReport, warmUpReport } from './contentStage.ts';
import { curveStage } from './curveStage.ts';
import { type AtPoint, type Headline, headline } from './headline.ts';
import { heatDemand } from './heatBalance.ts';
import { settledMachine } from './heatSettling.ts';
import { createMachine } from './machine.ts';
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
  const chosen = { ...defaultOptions, ...options };
  const standing = createMachine(design, Math.max(4, chosen.stationsPerTurn));
  const geometry = measureGeometry(design, standing.stations);
  progress?.(0.05, 'working point');
  const { machine: plain, driven: first, converged: warm } = settledMachine(standing);
  const told = progress && ((done: number, stage: string) => progress(0.1 + 0.7 * done, stage));
  const solved = chosen.fields === 'solved' ? solvedPath(plain, first, cache, told) : null;
  const { machine, driven: found } = solved ?? { machine: plain, driven: first };
  const point = withMelting(machine, found.point);
  const driven = { ...found, point };
  progress?.(0.8, 'output over speed');
  const { curve, converged } = curveStage(machine, chosen.curvePoints, point, cache.onStep);
  progress?.(0.9, 'residence and colour');
  const settled = { machine, driven, standing: standing.walls, geometry, curve };
  const partial = {
    ...originOf(design, chosen),
    ...stagesOf(settled, headline(settled, solved, cache)),
    warmUp: chosen.warmUp ? warmUpReport(machine) : null,
    converged: warm && point.converged && converged && (solved?.converged ?? true),
  };
  progress?.(0.95, 'findings');
  return { ...partial, findings: findingsOf({ design, machine, driven, prediction: partial }) };
}

/** A machine at its working point, with the walls of a hot standstill. */
interface Settled extends AtPoint {
  readonly standing: WallTemperatures;
  readonly curve: OutputCurve;
}

/** Everything that follows from the working point. */
function stagesOf(settled: Settled, head: Headline) {
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
    ...head,
    curve,
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
