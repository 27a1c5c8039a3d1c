/** Everything a solved path shows, as plain arrays. */

import { channelMaps, headMap } from './maps.ts';
import type { PathTimes } from './pathResidence.ts';
import type { SolvedPath } from './solvedPath.ts';
import type { SolvedFields } from './viewTypes.ts';

/** Arrays for views. */
export function pathFields({ machine, driven, channel, head }: SolvedPath, times: PathTimes): SolvedFields {
  return {
    channel: channelMaps(machine, driven.point.state, channel, times.channel),
    head: head ? headMap(head, times.headScale, times.channel.mean) : null,
    meanTime: times.residence.mean,
  };
}
