/** Residence along the whole path, from solved fields. */

import type { GeometrySummary } from '../geometry/types.ts';
import { localIndex } from '../material/viscosityLaw.ts';
import { interpolateLinear } from '../math/interpolate.ts';
import { withDoubt } from '../prediction/bases.ts';
import { flowingTemperature } from '../prediction/flowState.ts';
import { partCurves } from '../prediction/partCurves.ts';
import { meltVolumes } from '../prediction/residenceStage.ts';
import type { Basis, Residence } from '../prediction/types.ts';
import { pipeAtoms } from '../residence/channel.ts';
import { joinResidence } from '../residence/combine.ts';
import { solvedResidenceBasis } from './bases.ts';
import { type ChannelTimes, channelTimeAtoms, channelTimes } from './channelTimes.ts';
import { headTimeAtoms, headTimeScale } from './headTimes.ts';
import type { SolvedPath } from './solvedPath.ts';

/** All times of a solved path. */
export interface PathTimes {
  readonly channel: ChannelTimes;
  /** mean time in tip and nozzle, s, and s per unit of the head field's age (0 without one) */
  readonly headMean: number;
  readonly headScale: number;
  readonly residence: Residence & { readonly basis: Basis };
}

/** Distribution of the head where it could not be solved: a pipe. */
function pipeLikeHead({ machine, driven }: SolvedPath, mean: number) {
  const { material } = machine.design;
  const law = material.viscosityLaw(flowingTemperature(material, machine.walls.nozzleTemperature), 0);
  const rate = driven.point.state.head.elements.reduce((most, drop) => Math.max(most, drop.wallShearRate), 1e-6);
  return pipeAtoms(mean, Math.max(0.1, localIndex(law, rate)));
}

/** Times of a path whose working point has a flow. */
export function pathTimes(path: SolvedPath, geometry: GeometrySummary): PathTimes {
  const { machine, driven, head } = path;
  const { state, volumeFlow } = driven.point;
  const volumes = meltVolumes(machine, state, geometry);
  const channel = channelTimes(machine, state, path.channel, volumeFlow);
  const headMean = (volumes.tip + volumes.nozzle) / volumeFlow;
  const headAtoms = head ? headTimeAtoms(head, headMean) : pipeLikeHead(path, headMean);
  const atoms = channel.mean > 0 ? [channelTimeAtoms(channel), headAtoms] : [headAtoms];
  const joined = joinResidence(atoms);
  const { time, cumulative } = joined;
  const residence = {
    ...joined,
    washout99: joined.t99,
    washout999: interpolateLinear(cumulative, time, 0.999),
    parts: (['channel', 'tip', 'nozzle'] as const).map((part) => ({
      part,
      mean: volumes[part] / volumeFlow,
      volume: volumes[part],
    })),
    partCurves: partCurves(atoms),
    basis: withDoubt(solvedResidenceBasis, [
      channel.volume === 0 && 'The granules are not molten before the flights end.',
      channel.guessed > 0.05 &&
        `${Math.round(100 * channel.guessed)} % of the channel’s melt counts by the wide channel’s closed form.`,
      state.march.filledLength < 0.5 * moltenLength(path) &&
        'More than half of the molten channel runs partly filled; there the times are a guess.',
      ...path.doubts,
    ]),
  };
  return { channel, headMean, headScale: head ? headTimeScale(head, headMean) : 0, residence };
}

function moltenLength({ machine, driven }: SolvedPath): number {
  const { z, count } = machine.stations;
  return z[count - 1] - z[Math.min(driven.point.state.melt.start.reach, count - 1)];
}
