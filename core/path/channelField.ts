/** Where each reach of a screw lies in the table of solved points, and what the table says there. */

import { type Channel, reachShape } from '../flow/channel.ts';
import { createReach, type Reach, type ReachFlow, solveReach } from '../flow/reach.ts';
import type { ViscosityLaw } from '../material/viscosityLaw.ts';
import { type FlowState, flowingTemperature } from '../prediction/flowState.ts';
import type { Machine } from '../prediction/machine.ts';
import {
  type ChannelNode,
  type FieldFactors,
  gradientStep,
  lawStep,
  leastGradient,
  leastTurning,
  mostGradient,
  mostTurning,
  type NodeRequest,
  nodeAt,
  solveNodes,
} from './channelNode.ts';
import { placedShapes, shapesAround } from './channelShape.ts';
import type { FieldCache } from './fieldCache.ts';
import { gridPlaces, lawFamily } from './lawFamily.ts';

/** A point of the table with its share in a reach. */
export interface WeightedRequest {
  readonly request: NodeRequest;
  readonly weight: number;
}

/** The same, solved. */
export interface WeightedNode {
  readonly node: ChannelNode;
  readonly weight: number;
}

/** Solved flighted reaches: per reach of the channel, null where it is plain, empty or not molten. */
export interface ChannelField {
  readonly reaches: readonly (readonly WeightedNode[] | null)[];
  /** factors per reach, as `reaches` */
  readonly factors: readonly (FieldFactors | null)[];
  readonly converged: boolean;
}

/** Law of the melt in a reach at a state: mean temperature, pressure on its downstream side. */
export function reachLaw(machine: Machine, state: FlowState, i: number): ViscosityLaw {
  const { material } = machine.design;
  const { temperature } = state.melt;
  const mean = flowingTemperature(material, (temperature[i] + temperature[i + 1]) / 2);
  return material.viscosityLaw(mean, state.march.pressure[i + 1]);
}

/** Place on the grid of gradients: solved gradient over that of the uncorrected channel with closed discharge. */
function gradientPlace(
  machine: Machine,
  i: number,
  law: ViscosityLaw,
  flow: ReachFlow,
  screwSpeed: number,
  full: boolean,
): number {
  if (!full) return 0;
  const closed = solveReach(createReach(reachShape(machine.stations, i, 0)), law, screwSpeed, 0).gradient;
  const ratio = closed > 0 ? flow.gradient / closed : 0;
  return Math.min(mostGradient, Math.max(leastGradient, ratio)) / gradientStep;
}

/** Table points around each molten flighted reach of a state. */
export function channelRequests(machine: Machine, state: FlowState): (readonly WeightedRequest[] | null)[] {
  const shapes = placedShapes(machine.design);
  const { stations } = machine;
  return state.march.flows.map((flow, i) => {
    if (!flow || !stations.flighted[i] || !stations.flighted[i + 1]) return null;
    const law = reachLaw(machine, state, i);
    const family = lawFamily(law);
    const depth = (stations.depth[i] + stations.depth[i + 1]) / 2;
    const rate = (2 * Math.PI * stations.barrelRadius[i] * state.screwSpeed) / depth;
    const turning = Math.min(mostTurning, Math.max(leastTurning, (family.rate ?? rate) / rate));
    const laws = family.rate === null ? [{ index: 0, weight: 1 }] : gridPlaces(Math.log(turning) / lawStep);
    const full = state.march.fill[i] > 0.5;
    const gradients = gridPlaces(gradientPlace(machine, i, law, flow, state.screwSpeed, full));
    const z = (stations.z[i] + stations.z[i + 1]) / 2;
    return shapesAround(shapes, stations.section[i], z).flatMap(({ placed, weight }) =>
      laws.flatMap((onLaw) =>
        gradients.map((onGradient) => ({
          request: { shape: placed.shape, family, law: onLaw.index, gradient: onGradient.index },
          weight: weight * onLaw.weight * onGradient.weight,
        })),
      ),
    );
  });
}

/** Solves what is missing, grouped by shape and law. */
function solveAll(
  cache: FieldCache,
  wanted: readonly (readonly WeightedRequest[] | null)[],
  progress?: (done: number) => void,
): void {
  const groups = new Map<string, Map<number, NodeRequest>>();
  for (const { request } of wanted.flatMap((each) => each ?? [])) {
    const key = `${request.shape.key} | ${request.family.key} | ${request.law}`;
    const group = groups.get(key) ?? new Map<number, NodeRequest>();
    groups.set(key, group.set(request.gradient, request));
  }
  let done = 0;
  for (const group of groups.values()) {
    solveNodes(cache, [...group.values()]);
    done++;
    progress?.(done / groups.size);
  }
}

function mixedFactors(nodes: readonly WeightedNode[]): FieldFactors {
  const sum = (of: (factors: FieldFactors) => number) =>
    nodes.reduce((total, { node, weight }) => total + weight * of(node.factors), 0);
  return { drag: sum((f) => f.drag), pressure: sum((f) => f.pressure), power: sum((f) => f.power) };
}

/**
 * Solved channel of a machine at a state.
 * @param cache what is known already; new points are put into it
 * @param progress told the share of the missing points that is done
 */
export function channelField(
  machine: Machine,
  state: FlowState,
  cache: FieldCache,
  progress?: (done: number) => void,
): ChannelField {
  const wanted = channelRequests(machine, state);
  solveAll(cache, wanted, progress);
  const reaches = wanted.map(
    (each) => each?.map(({ request, weight }) => ({ node: nodeAt(cache, request), weight })) ?? null,
  );
  return {
    reaches,
    factors: reaches.map((nodes) => (nodes && nodes.length > 0 ? mixedFactors(nodes) : null)),
    converged: reaches.every((nodes) => nodes?.every(({ node }) => node.converged) ?? true),
  };
}

/** A channel whose reaches carry the solved flow; working memory is shared with the old one. */
export function correctedChannel(channel: Channel, factors: ChannelField['factors']): Channel {
  const reaches = channel.reaches.map((reach, i): Reach | null => {
    const own = factors[i];
    if (!reach || !own) return reach;
    return { ...reach, dragFactor: own.drag, pressureFactor: own.pressure, powerFactor: own.power };
  });
  return { ...channel, reaches };
}
