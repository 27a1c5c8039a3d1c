/** First figures after an edit, before its whole prediction. */

import type { Design } from '../design/types.ts';
import { measureGeometry } from '../geometry/summary.ts';
import { createFieldCache } from '../path/fieldCache.ts';
import { type Headline, headline } from './headline.ts';
import { type SettledHeat, settledMachine } from './heatSettling.ts';
import { createMachine } from './machine.ts';
import { withMelting } from './operating.ts';
import type { Prediction } from './types.ts';

/** What first figures leave behind for those after the next edit. Kept by the caller, from run to run. */
export interface Neighbour {
  settled: SettledHeat | null;
}

/** Nothing known yet. */
export const createNeighbour = (): Neighbour => ({ settled: null });

/** The figures that decide, and of which design they are. */
export type FirstFigures = Headline & Pick<Prediction, 'designHash' | 'converged'>;

/** Coarse stations: the least that `createMachine` takes. */
const stationsPerTurn = 4;

/**
 * First figures after an edit: the stages of `predict` that decide, by formulas and at their coarsest, begun where the
 * edit before ended. Flow within 1 % of the estimate's.
 * @param design validated
 * @param neighbour what the last call left; changed. Figures differ by it within the tolerance of flow and walls, 0.2 %
 * @returns plain data in SI units; never throws for a validated design
 */
export function firstFigures(design: Design, neighbour: Neighbour): FirstFigures {
  const standing = createMachine(design, stationsPerTurn);
  neighbour.settled = settledMachine(standing, neighbour.settled);
  const { machine, driven: found, converged } = neighbour.settled;
  const driven = { ...found, point: withMelting(machine, found.point) };
  const at = { machine, driven, geometry: measureGeometry(design, standing.stations) };
  return {
    designHash: design.hash,
    ...headline(at, null, createFieldCache()),
    converged: converged && driven.point.converged,
  };
}
