/** The melt in a half-plane through the axis, as triangles that carry how long it stays: what a cut-open machine shows. */

import type { Stations } from '../geometry/types.ts';
import type { ChannelMap, HeadMap, SolvedFields } from '../path/viewTypes.ts';
import { type FlightGap, flightGaps } from './flightGaps.ts';
import { type MapReader, mapReader, nodeAlong, stationPlace } from './mapBetween.ts';

/** Triangles in the half-plane, with values at their corners. */
export interface DwellSection {
  /** m */
  readonly z: Float32Array;
  readonly r: Float32Array;
  readonly triangles: Uint32Array;
  /** s since melting */
  readonly age: Float32Array;
  /** time spent here over the mean of channel section or head */
  readonly dwell: Float32Array;
}

interface Grown {
  readonly z: number[];
  readonly r: number[];
  readonly triangles: number[];
  readonly age: number[];
  readonly dwell: number[];
}

/** Two triangles per cell of a map's grid; cells flattened by the ends of the stretch are left out. */
function addCells(grown: Grown, first: number, { columns, rows }: ChannelMap): void {
  for (let i = 0; i + 1 < columns; i++) {
    for (let j = 0; j + 1 < rows; j++) {
      const [a, b] = [first + i * rows + j, first + (i + 1) * rows + j];
      if (grown.z[a] >= grown.z[b] && grown.z[a + 1] >= grown.z[b + 1]) continue;
      grown.triangles.push(a, b, b + 1, a, b + 1, a + 1);
    }
  }
}

function addGap(
  grown: Grown,
  stations: Stations,
  reader: MapReader,
  map: ChannelMap,
  gap: FlightGap,
  from: number,
): void {
  const first = grown.z.length;
  const low = Math.max(gap.from, from);
  for (let k = 0; k < map.columns * map.rows; k++) {
    const z = Math.min(gap.to, Math.max(low, nodeAlong(stations, reader, gap, k)));
    grown.z.push(z);
    grown.r.push(reader.radius(z, k));
    grown.age.push(reader.value('age', z, k));
    grown.dwell.push(reader.value('dwell', z, k));
  }
  addCells(grown, first, map);
}

const packed = ({ z, r, triangles, age, dwell }: Grown): DwellSection => ({
  z: Float32Array.from(z),
  r: Float32Array.from(r),
  triangles: Uint32Array.from(triangles),
  age: Float32Array.from(age),
  dwell: Float32Array.from(dwell),
});

/** z (m) from which the channel holds melt: the station before the first map. 0 without maps. */
export function meltStart(stations: Stations, maps: readonly ChannelMap[]): number {
  return maps.length > 0 ? stations.z[stationPlace(stations, maps[0].z).low] : 0;
}

/**
 * The molten channel where a half-plane cuts it. Plain stretches are left out: they have no cross-section of this kind.
 * @param stations of the machine that was solved
 * @param maps in order along z; may be empty
 * @param azimuth of the half-plane, rad from +x towards +y, as the solid is placed
 * @param hand of the screw
 */
export function channelSection(
  stations: Stations,
  maps: readonly ChannelMap[],
  azimuth: number,
  hand: 'right' | 'left',
): DwellSection {
  const grown: Grown = { z: [], r: [], triangles: [], age: [], dwell: [] };
  if (maps.length === 0) return packed(grown);
  const reader = mapReader(stations, maps);
  const from = meltStart(stations, maps);
  for (const gap of flightGaps(stations, azimuth, hand)) {
    const pitch = stations.lead[stationPlace(stations, gap.middle).low];
    if (gap.middle + pitch / 2 > from) addGap(grown, stations, reader, maps[0], gap, from);
  }
  return packed(grown);
}

/**
 * Tip and nozzle in a half-plane; they are the same in every one.
 * @param start z of the tip's beginning, m: what lies before belongs to the channel
 * @param mean time in tip and nozzle, s, > 0
 */
export function headSection(head: HeadMap, start: number, mean: number): DwellSection {
  const kept: number[] = [];
  for (let t = 0; t < head.triangles.length; t += 3) {
    const corners = head.triangles.subarray(t, t + 3);
    const middle = (head.z[corners[0]] + head.z[corners[1]] + head.z[corners[2]]) / 3;
    if (middle >= start) kept.push(...corners);
  }
  return {
    z: head.z,
    r: head.r,
    triangles: Uint32Array.from(kept),
    age: head.age,
    dwell: head.dwell.map((time) => time / mean),
  };
}

/** Channel, tip and nozzle in one half-plane. See channelSection; @param headMean time in tip and nozzle, s */
export function dwellSection(
  stations: Stations,
  fields: SolvedFields,
  azimuth: number,
  hand: 'right' | 'left',
  headMean: number,
): DwellSection[] {
  const channel = channelSection(stations, fields.channel, azimuth, hand);
  const end = stations.z[stations.count - 1];
  return fields.head ? [channel, headSection(fields.head, end, Math.max(headMean, 1e-9))] : [channel];
}
