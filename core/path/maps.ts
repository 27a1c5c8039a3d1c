/** From solved points to arrays for views. */

import type { FlowState } from '../prediction/flowState.ts';
import type { Machine } from '../prediction/machine.ts';
import type { ChannelField, WeightedNode } from './channelField.ts';
import type { ChannelTimes } from './channelTimes.ts';
import { binCount, binOf, flowCuts } from './dwellBins.ts';
import type { HeadField } from './headField.ts';
import { mapColumns, mapRows, type SectionMap } from './sectionMap.ts';
import type { ChannelMap, HeadMap } from './viewTypes.ts';

/** Most cross-sections shown along a screw. */
const mostMaps = 12;

/** Weighted mean of the maps of some points. */
export function mixedMap(nodes: readonly WeightedNode[]): SectionMap {
  const mixed = (name: keyof SectionMap) => {
    const out = new Float64Array(mapColumns * mapRows);
    for (const { node, weight } of nodes) {
      const values = node.map[name];
      for (let k = 0; k < out.length; k++) out[k] += weight * values[k];
    }
    return out;
  };
  return { x: mixed('x'), y: mixed('y'), speed: mixed('speed'), share: mixed('share') };
}

/** Both halves from one: even values as they are, odd ones with the sign turned. */
function whole(half: ArrayLike<number>, scale: number, odd = false): Float32Array {
  const columns = 2 * mapColumns - 1;
  const out = new Float32Array(columns * mapRows);
  for (let i = 0; i < mapColumns; i++) {
    for (let j = 0; j < mapRows; j++) {
      const value = half[i * mapRows + j] * scale;
      out[(columns - 1 - i) * mapRows + j] = odd ? -value : value;
      out[i * mapRows + j] = value;
    }
  }
  return out;
}

/** Reaches whose cross-section is shown: the ends of the melt and evenly between. */
function shownReaches(field: ChannelField, times: ChannelTimes): number[] {
  const solved = [...field.reaches.keys()].filter((i) => field.reaches[i]?.length && times.bins[i]);
  if (solved.length <= mostMaps) return solved;
  return Array.from({ length: mostMaps }, (_, k) => solved[Math.round((k * (solved.length - 1)) / (mostMaps - 1))]);
}

function channelMap(
  machine: Machine,
  state: FlowState,
  nodes: readonly WeightedNode[],
  times: ChannelTimes,
  i: number,
): ChannelMap {
  const { stations } = machine;
  const map = mixedMap(nodes);
  const bore = stations.barrelRadius[i];
  const own = times.bins[i]?.dwell ?? new Float64Array(binCount);
  const barrelSpeed = 2 * Math.PI * bore * state.screwSpeed;
  const floor = bore - (stations.depth[i] + stations.depth[i + 1]) / 2;
  // melt without way forward is shown as old as the slowest that moves
  const bins = map.share.map((share) => Math.min(binOf(share), binCount - 2));
  const before = i > 0 ? times.reached[i - 1] : new Float64Array(binCount);
  const middle = times.reached[i].map((end, k) => (before[k] + end) / 2);
  const meanAge = middle.reduce((sum, time, k) => sum + time * (flowCuts[k + 1] - flowCuts[k]), 0);
  return {
    z: (stations.z[i] + stations.z[i + 1]) / 2,
    section: stations.section[i],
    columns: 2 * mapColumns - 1,
    rows: mapRows,
    x: whole(map.x, bore, true),
    r: whole(
      map.y.map((y) => floor / bore + y),
      bore,
    ),
    speed: whole(map.speed, barrelSpeed),
    dwell: whole(
      bins.map((bin) => own[bin]),
      1,
    ),
    age: whole(
      bins.map((bin) => middle[bin]),
      1,
    ),
    meanAge,
  };
}

/** Cross-sections along the molten channel. */
export function channelMaps(
  machine: Machine,
  state: FlowState,
  field: ChannelField,
  times: ChannelTimes,
): ChannelMap[] {
  return shownReaches(field, times).map((i) => channelMap(machine, state, field.reaches[i] ?? [], times, i));
}

/** Tip and nozzle. @param scale s per unit of age; @param before mean time in the channel, s */
export function headMap(head: HeadField, scale: number, before: number): HeadMap {
  const { region, field, speedUnit } = head;
  return {
    z: Float32Array.from(field.z, (z) => region.inlet + z * region.unit),
    r: Float32Array.from(field.r, (r) => r * region.unit),
    triangles: Uint32Array.from(field.triangles),
    speed: Float32Array.from(field.speed, (speed) => speed * speedUnit),
    // the dimensionless flow is pi, so psi runs to 1/2
    stream: Float32Array.from(field.psi, (psi) => 2 * psi),
    dwell: Float32Array.from(field.age, (age) => Math.max(0, age) * scale),
    age: Float32Array.from(field.age, (age) => before + Math.max(0, age) * scale),
  };
}
