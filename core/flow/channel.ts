/** The screw channel as a chain of reaches between stations, marched against the flow from the head's pressure. */

import type { Stations } from '../geometry/types.ts';
import type { ViscosityLaw } from '../material/viscosityLaw.ts';
import { createReach, type Reach, type ReachFlow, type ReachShape, solveReach } from './reach.ts';

/** The chain; reach i lies between stations i and i + 1, null where they coincide. */
export interface Channel {
  readonly stations: Stations;
  readonly reaches: readonly (Reach | null)[];
}

/** Law of the melt in reach i at a pressure (Pa). */
export type ReachLaw = (reach: number, pressure: number) => ViscosityLaw;

/** Where the melt begins: reach index and the molten share of that reach's length, 0 to 1. */
export interface MeltStart {
  readonly reach: number;
  readonly share: number;
}

/** What a march found. Arrays over stations or reaches as said. */
export interface ChannelMarch {
  /** per station, Pa; 0 where not full */
  readonly pressure: Float64Array;
  /** per reach, 0 to 1 */
  readonly fill: Float64Array;
  /** per reach, null outside the melt */
  readonly flows: readonly (ReachFlow | null)[];
  /**
   * pressure left over where the melt begins, Pa: > 0 where the screw cannot pump this flow; < 0 where it could more,
   * then as if the melt could pull, so that it keeps growing with the flow
   */
  readonly startPressure: number;
  readonly filledLength: number;
  readonly converged: boolean;
}

/** Geometry of the reach between stations i and i + 1, at its middle. */
export function reachShape(stations: Stations, i: number, clearance: number): ReachShape {
  const middle = (array: ArrayLike<number>) => (array[i] + array[i + 1]) / 2;
  const helixBarrel = middle(stations.helixBarrel);
  return {
    flighted: stations.flighted[i] === 1,
    rootRadius: middle(stations.rootRadius),
    barrelRadius: middle(stations.barrelRadius),
    depth: middle(stations.depth),
    starts: stations.starts[i],
    helixBarrel,
    helixMean: middle(stations.helixMean),
    widthBarrel: middle(stations.widthBarrel),
    widthMean: middle(stations.widthMean),
    land: middle(stations.flightWidth) * Math.cos(helixBarrel),
    clearance,
  };
}

/**
 * Prepares the chain.
 * @param clearance barrel radius minus flight radius, m
 * @param indexAt local power-law index of the melt in a channel of this depth (m), for the side walls' share
 */
export function createChannel(
  stations: Stations,
  clearance: number,
  indexAt: (depth: number) => number = () => 1,
): Channel {
  const reaches: (Reach | null)[] = [];
  for (let i = 0; i + 1 < stations.count; i++) {
    const length = stations.z[i + 1] - stations.z[i];
    const shape = reachShape(stations, i, clearance);
    reaches.push(length > 1e-9 ? createReach(shape, false, indexAt(shape.depth)) : null);
  }
  return { stations, reaches };
}

/**
 * Marches from the head back to where the melt begins.
 * @param headPressure Pa at the last station
 * @param screwSpeed rev/s; @param volumeFlow m³/s, the same through every section
 * Where the pressure would fall below ambient the channel runs partly filled; it fills again where a reach cannot carry
 * the flow by drag alone.
 */
export function marchChannel(
  channel: Channel,
  lawAt: ReachLaw,
  start: MeltStart,
  screwSpeed: number,
  volumeFlow: number,
  headPressure: number,
): ChannelMarch {
  const { stations, reaches } = channel;
  const pressure = new Float64Array(stations.count);
  const fill = new Float64Array(reaches.length);
  const flows: (ReachFlow | null)[] = new Array(reaches.length).fill(null);
  pressure[stations.count - 1] = headPressure;
  let pulling = headPressure;
  let last = headPressure;
  let filledLength = 0;
  let converged = true;
  for (let i = reaches.length - 1; i >= start.reach; i--) {
    const reach = reaches[i];
    pressure[i] = pressure[i + 1];
    if (!reach) continue;
    const flow = solveReach(reach, lawAt(i, pressure[i + 1]), screwSpeed, volumeFlow);
    const share = i === start.reach ? start.share : 1;
    const length = (stations.z[i + 1] - stations.z[i]) * share;
    last = pressure[i + 1] - flow.gradient * length;
    pulling -= flow.gradient * length;
    pressure[i] = Math.max(0, last);
    fill[i] = fillOf(flow, pressure[i + 1], last, volumeFlow);
    filledLength += last >= 0 ? length : length * fullShare(pressure[i + 1], last);
    flows[i] = flow;
    converged &&= flow.converged;
  }
  return { pressure, fill, flows, startPressure: last > 0 ? last : pulling, filledLength, converged };
}

/** Share of a reach that is full when the pressure runs out inside it. */
const fullShare = (end: number, start: number): number => (end > 0 ? end / (end - start) : 0);

function fillOf(flow: ReachFlow, end: number, start: number, volumeFlow: number): number {
  if (start >= 0) return 1;
  const loose = flow.openFlow > 0 ? Math.min(1, volumeFlow / flow.openFlow) : 1;
  const full = fullShare(end, start);
  return full + (1 - full) * loose;
}
