/** Integration along the outlet. */

import type { TriMesh } from '../../math/triMesh.ts';
import type { StokesState } from './stokesState.ts';
import { eachBoundaryEdge } from './stokesSystem.ts';
import { EDGE } from './zipper.ts';

/** Gauss points and weights on [0, 1], exact to degree 7. */
const GAUSS: readonly (readonly [number, number])[] = [
  [0.0694318442029737, 0.173927422568727],
  [0.330009478207572, 0.326072577431273],
  [0.669990521792428, 0.326072577431273],
  [0.930568155797026, 0.173927422568727],
];

/** One integration point on an edge. */
export interface EdgePoint {
  readonly triangle: number;
  /** Local numbers of the edge's nodes: two ends and the middle */
  readonly local: readonly [number, number, number];
  /** Shapes of those nodes */
  readonly shape: readonly [number, number, number];
  /** m */
  readonly r: number;
  /** Length times weight times radius, m2 */
  readonly weight: number;
  /** Axial flow through the point's share of the edge over 2 pi, m3/s */
  readonly flow: number;
}

function edgePoint(mesh: TriMesh, state: StokesState, t: number, k: number, at: number, weight: number): EdgePoint {
  const local = [(k + 1) % 3, (k + 2) % 3, 3 + k] as const;
  const shape = [(1 - at) * (1 - 2 * at), at * (2 * at - 1), 4 * at * (1 - at)] as const;
  const [a, b] = [mesh.nodes[6 * t + local[0]], mesh.nodes[6 * t + local[1]]];
  const r = mesh.y[a] * (1 - at) + mesh.y[b] * at;
  const size = Math.abs(mesh.y[b] - mesh.y[a]) * weight * r;
  let speed = 0;
  for (let i = 0; i < 3; i++) speed += shape[i] * state.velocity[mesh.nodes[6 * t + local[i]] * state.components + 1];
  return { triangle: t, local, shape, r, weight: size, flow: speed * size };
}

/** Integration points on all edges of one tag that lie in a plane z = const. */
function planePoints(mesh: TriMesh, state: StokesState, wanted: number): EdgePoint[] {
  const points: EdgePoint[] = [];
  eachBoundaryEdge(mesh, (t, k, tag) => {
    if (tag === wanted) for (const [at, weight] of GAUSS) points.push(edgePoint(mesh, state, t, k, at, weight));
  });
  return points;
}

/** Integration points of the outlet. */
export const outletPoints = (mesh: TriMesh, state: StokesState): EdgePoint[] => planePoints(mesh, state, EDGE.outlet);

/** Value of a nodal field at an edge point. */
export function fieldAt(mesh: TriMesh, field: Float64Array, point: EdgePoint): number {
  let value = 0;
  for (let i = 0; i < 3; i++) value += point.shape[i] * field[mesh.nodes[6 * point.triangle + point.local[i]]];
  return value;
}
