/** Dead volume along the whole path: shares, and every spot with what becomes of the melt in it. */

import { colourScale } from '../age/colour.ts';
import { spotMelt } from '../age/spotBleed.ts';
import { withDoubt } from '../prediction/bases.ts';
import { meltPassages, spotHistory } from '../prediction/meltHistory.ts';
import type { DeadSpot, DeadVolume } from '../prediction/types.ts';
import { solvedDeadBasis } from './bases.ts';
import { channelSpots } from './channelSpots.ts';
import { firstOlder, volumeFrom } from './channelTimes.ts';
import type { FieldCache } from './fieldCache.ts';
import { headSpots } from './headSpots.ts';
import { headOlder } from './headTimes.ts';
import type { PathTimes } from './pathResidence.ts';
import type { SolvedPath } from './solvedPath.ts';
import type { FoundSpot } from './spotTypes.ts';

/** Spots under this share of all melt are left out. */
const leastShare = 5e-4;

/** Melt counts as dead in the channel beyond this many means. */
const deadTimes = 3;

/** Share of all melt older than a multiple of the mean. */
function fractionOver({ head }: SolvedPath, times: PathTimes, multiple: number): number {
  const { channel, residence, headMean, headScale } = times;
  const limit = multiple * residence.mean;
  const firstBin = firstOlder(channel, limit - headMean);
  let old = 0;
  for (let i = 0; i < channel.volumes.length; i++) old += volumeFrom(channel, i, firstBin);
  const headVolume = residence.parts.reduce((sum, { part, volume }) => (part === 'channel' ? sum : sum + volume), 0);
  if (head) old += headVolume * headOlder(head, headScale, limit - channel.mean);
  const total = channel.volume + headVolume;
  return total > 0 ? old / total : 0;
}

/** Extent and colour of the melt in a spot that is as old as said. */
function degraded(path: SolvedPath, times: PathTimes, spot: FoundSpot): DeadSpot {
  const { machine, driven } = path;
  const { material } = machine.design;
  const scale = colourScale(material);
  const passages = meltPassages(machine, driven.point.state, times.residence);
  if (typeof scale === 'string' || passages.length === 0) return { ...spot, extent: null, dE00: null, srgb: null };
  const { extent, dE00, srgb } = spotMelt(scale, { spot, history: spotHistory(passages, spot) });
  return { ...spot, extent, dE00, srgb };
}

/**
 * Dead volume of a solved path with flow.
 * @param cache takes the sections re-solved with a larger fillet, for the remedies
 */
export function pathDead(path: SolvedPath, times: PathTimes, cache: FieldCache): DeadVolume {
  const { machine, driven, head } = path;
  const { channel, residence, headMean, headScale } = times;
  const { state } = driven.point;
  const least = leastShare * residence.mean * driven.point.volumeFlow;
  const limit = deadTimes * residence.mean - headMean;
  const found = [
    ...channelSpots(machine, state, path.channel, channel, limit, least, cache),
    ...(head ? headSpots(machine.design, head, channel.mean, headScale, least) : []),
  ];
  const spots = found.map((spot) => degraded(path, times, spot));
  return {
    fractionOver3: fractionOver(path, times, 3),
    fractionOver5: fractionOver(path, times, 5),
    spots: spots.sort((a, b) => b.volume * b.meanAge - a.volume * a.meanAge),
    basis: withDoubt(solvedDeadBasis, path.doubts),
  };
}
