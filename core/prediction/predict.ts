/** The whole prediction: stages in order, nothing else. */

import type { Design } from '../design/types.ts';
import { findingsOf } from '../findings/rules.ts';
import { measureGeometry } from '../geometry/summary.ts';
import { coreVersion } from '../version.ts';
import { axialStage, nozzleStage } from './axialStage.ts';
import { heatBasis, pumpingBasis, withDoubt } from './bases.ts';
import { capacitiesOf, pumpingDoubts } from './capacities.ts';
import { colourStage } from './colourStage.ts';
import { curveStage } from './curveStage.ts';
import { type DrivenPoint, drivenPoint } from './drivenPoint.ts';
import { driveStage } from './driveStage.ts';
import { headResistance } from './flowState.ts';
import { createMachine, type Machine } from './machine.ts';
import { printStage, type Supply } from './printStage.ts';
import { deadStage, type MeltVolumes, meltVolumes, residenceStage } from './residenceStage.ts';
import type { Prediction, PredictionOptions } from './types.ts';

/** Accuracy that the windows and commands use. */
export const defaultOptions: PredictionOptions = { stationsPerTurn: 8, curvePoints: 16 };

/** Told after each stage: share done, 0 to 1, and the stage's name. */
export type Progress = (done: number, stage: string) => void;

/**
 * Predicts a design.
 * @param design validated
 * @param options see PredictionOptions; missing ones as in defaultOptions
 * @param progress called between stages
 * @returns plain data in SI units; never throws for a validated design
 */
export function predict(design: Design, options: Partial<PredictionOptions> = {}, progress?: Progress): Prediction {
  const chosen = { ...defaultOptions, ...options };
  const machine = createMachine(design, Math.max(4, chosen.stationsPerTurn));
  const geometry = measureGeometry(design, machine.stations);
  progress?.(0.1, 'working point');
  const driven = drivenPoint(machine);
  const { point } = driven;
  progress?.(0.4, 'output over speed');
  const { curve, converged } = curveStage(machine, chosen.curvePoints, point.memory);
  progress?.(0.8, 'residence and colour');
  const volumes = meltVolumes(machine, point.state, geometry);
  const residence = residenceStage(machine, point.state, volumes, point.volumeFlow);
  const { heaterCapacity: _, ...heat } = point.heat;
  const partial: Omit<Prediction, 'findings'> = {
    revisionId: design.revisionId,
    revisionName: design.revisionName,
    designHash: design.hash,
    coreVersion,
    options: chosen,
    geometry,
    stations: machine.stations,
    axial: axialStage(machine, point.state),
    nozzle: nozzleStage(machine, point.state),
    ...capacitiesOf(machine, driven),
    output: outputOf(machine, driven),
    curve,
    residence,
    dead: deadStage(volumes),
    colour: colourStage(machine, point.state, residence),
    drive: driveStage(machine, geometry, point),
    heat: { ...heat, basis: withDoubt(heatBasis) },
    print: printStage(design, supplyOf(machine, driven, volumes), curve),
    converged: point.converged && converged,
  };
  progress?.(0.95, 'findings');
  return { ...partial, findings: findingsOf({ design, machine, driven, prediction: partial }) };
}

function supplyOf(machine: Machine, { point }: DrivenPoint, volumes: MeltVolumes): Supply {
  return {
    volumeFlow: point.volumeFlow,
    screwSpeed: point.screwSpeed,
    headVolume: volumes.tip + volumes.nozzle,
    headResistance: headResistance(machine, point.state),
  };
}

function outputOf(machine: Machine, { point }: DrivenPoint): Prediction['output'] {
  const { march, headPressure } = point.state;
  const leak = march.flows[machine.lastFlight - 1]?.leakFlow ?? 0;
  const flowing = point.volumeFlow > 0;
  return {
    volumeFlow: point.volumeFlow,
    massFlow: point.volumeFlow * machine.design.material.meltDensity,
    screwSpeed: point.screwSpeed,
    headPressure: flowing ? headPressure : 0,
    leakFlow: flowing ? leak : 0,
    filledLength: flowing ? march.filledLength : 0,
    basis: withDoubt(pumpingBasis, [
      ...pumpingDoubts(machine),
      !point.converged && 'The balance of screw and head did not converge.',
    ]),
  };
}
