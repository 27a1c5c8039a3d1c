/** What the solved fields say at one z: the channel's cross-section, or how things change across tip and nozzle. */

import type { Stations } from '../geometry/types.ts';
import type { ChannelMap, HeadMap } from '../path/viewTypes.ts';
import { meltStart } from './dwellSection.ts';
import { axialGap, mapReader, stationPlace } from './mapBetween.ts';

/** A cross-section of the channel whose middle is at z. Node (i, j), i across, j up, at i * rows + j. */
export interface StationSection {
  /** m */
  readonly z: number;
  readonly columns: number;
  readonly rows: number;
  /** axial distance from mid-channel, m */
  readonly x: Float32Array;
  /** depth below the barrel, m */
  readonly depth: Float32Array;
  /** m/s, seen from the screw */
  readonly speed: Float32Array;
  /** s since melting */
  readonly age: Float32Array;
  /** time spent here over the mean */
  readonly dwell: Float32Array;
}

/** The channel at z (m); null before the melt, on plain stretches and beyond the flights. */
export function stationSection(stations: Stations, maps: readonly ChannelMap[], z: number): StationSection | null {
  const end = stations.z[stations.count - 1];
  const [map] = maps;
  if (!map || z < meltStart(stations, maps) || z > end) return null;
  const { low } = stationPlace(stations, z);
  if (!stations.flighted[low]) return null;
  const reader = mapReader(stations, maps);
  const width = axialGap(stations, stationPlace(stations, z));
  const nodes = Float32Array.from({ length: map.columns * map.rows }, (_, k) => k);
  return {
    z,
    columns: map.columns,
    rows: map.rows,
    x: nodes.map((k) => width * reader.across(z, k)),
    depth: nodes.map((k) => stations.barrelRadius[low] - reader.radius(z, k)),
    speed: nodes.map((k) => reader.value('speed', z, k)),
    age: nodes.map((k) => reader.value('age', z, k)),
    dwell: nodes.map((k) => reader.value('dwell', z, k)),
  };
}

/** Values across tip and nozzle at one z, from the axis or the tip outwards. */
export interface RadialProfile {
  /** m, rising */
  readonly r: Float64Array;
  /** m/s in the meridional plane */
  readonly speed: Float64Array;
  /** s since melting */
  readonly age: Float64Array;
}

/** Tip and nozzle at z (m): where that line crosses the edges of triangles. null where it meets none. */
export function radialProfile(head: HeadMap, z: number): RadialProfile | null {
  const found: { r: number; speed: number; age: number }[] = [];
  const cross = (a: number, b: number) => {
    const [za, zb] = [head.z[a], head.z[b]];
    if (za === zb || z < Math.min(za, zb) || z > Math.max(za, zb)) return;
    const share = (z - za) / (zb - za);
    const mix = (values: Float32Array) => values[a] + share * (values[b] - values[a]);
    found.push({ r: mix(head.r), speed: mix(head.speed), age: mix(head.age) });
  };
  for (let t = 0; t < head.triangles.length; t += 3) {
    const [a, b, c] = head.triangles.subarray(t, t + 3);
    cross(a, b);
    cross(b, c);
    cross(c, a);
  }
  const sorted = found.sort((p, q) => p.r - q.r);
  // neighbours share their edges, so every crossing but those on the rim comes twice
  const once = sorted.filter((point, i) => i === 0 || point.r - sorted[i - 1].r > 1e-9);
  if (once.length < 2) return null;
  return {
    r: Float64Array.from(once, (point) => point.r),
    speed: Float64Array.from(once, (point) => point.speed),
    age: Float64Array.from(once, (point) => point.age),
  };
}
