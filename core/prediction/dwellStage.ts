/** How long the melt stays and where it lingers: from solved fields where there are any, else from formulas. */

import type { GeometrySummary } from '../geometry/types.ts';
import type { FieldCache } from '../path/fieldCache.ts';
import { pathDead } from '../path/pathDead.ts';
import { pathFields } from '../path/pathFields.ts';
import { pathTimes } from '../path/pathResidence.ts';
import type { SolvedPath } from '../path/solvedPath.ts';
import type { Machine } from './machine.ts';
import type { WorkingPoint } from './operating.ts';
import { deadStage, meltVolumes, residenceStage } from './residenceStage.ts';
import type { Prediction } from './types.ts';

/** Residence, dead volume and fields at the working point. */
export function dwellStage(
  machine: Machine,
  point: WorkingPoint,
  geometry: GeometrySummary,
  solved: SolvedPath | null,
  cache: FieldCache,
): Pick<Prediction, 'residence' | 'dead' | 'fields'> {
  if (solved && point.volumeFlow > 0) {
    const times = pathTimes(solved, geometry);
    cache.onStep();
    const dead = pathDead(solved, times, cache);
    cache.onStep();
    return { residence: times.residence, dead, fields: pathFields(solved, times) };
  }
  const volumes = meltVolumes(machine, point.state, geometry);
  const residence = residenceStage(machine, point.state, volumes, point.volumeFlow);
  return { residence, dead: deadStage(volumes), fields: null };
}
