/** What decides: output and its limit, stay, dead volume, colour and drive at the working point. */

import type { GeometrySummary } from '../geometry/types.ts';
import { solvedPumpingBasis } from '../path/bases.ts';
import type { FieldCache } from '../path/fieldCache.ts';
import type { SolvedPath } from '../path/solvedPath.ts';
import { pumpingBasis, withDoubt } from './bases.ts';
import { capacitiesOf, pumpingDoubts } from './capacities.ts';
import { colourStage } from './colourStage.ts';
import type { DrivenPoint } from './drivenPoint.ts';
import { driveStage, headPressureOf } from './driveStage.ts';
import { dwellStage } from './dwellStage.ts';
import type { Machine } from './machine.ts';
import type { Prediction } from './types.ts';

/** A machine at its working point. */
export interface AtPoint {
  readonly machine: Machine;
  readonly driven: DrivenPoint;
  readonly geometry: GeometrySummary;
}

/** The figures that decide. */
export type Headline = Pick<
  Prediction,
  'output' | 'limit' | 'capacities' | 'residence' | 'dead' | 'fields' | 'colour' | 'drive'
>;

/**
 * The figures that decide, of a machine at its working point.
 * @param solved what fields make of it; null for formulas
 * @param cache solved fields by their problem
 */
export function headline(
  { machine, driven, geometry }: AtPoint,
  solved: SolvedPath | null,
  cache: FieldCache,
): Headline {
  const { point } = driven;
  const dwell = dwellStage(machine, point, geometry, solved, cache);
  const output = outputOf(machine, driven, solved);
  return {
    ...capacitiesOf(machine, driven, output.basis),
    output,
    ...dwell,
    colour: colourStage(machine, point.state, dwell.residence, dwell.dead.spots),
    drive: driveStage(machine, geometry, driven),
  };
}

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
