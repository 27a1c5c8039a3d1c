/** Stokes stream function: flow over 2 pi between a point and the outer wall. */

import type { TriMesh } from '../../math/triMesh.ts';
import type { StokesState } from './stokesState.ts';
import { eachBoundaryEdge, edgeNodes } from './stokesSystem.ts';
import { EDGE } from './zipper.ts';

const GAUSS_AT = [0.5 - Math.sqrt(1 / 12), 0.5 + Math.sqrt(1 / 12)];

/** Flow over 2 pi crossing the part [from, to] of an edge, positive downstream for a part that leads outwards. */
function crossing(
  mesh: TriMesh,
  state: StokesState,
  edge: readonly [number, number, number],
  from: number,
  to: number,
): number {
  const [a, b, m] = edge;
  const nc = state.components;
  const dz = mesh.x[b] - mesh.x[a];
  const dr = mesh.y[b] - mesh.y[a];
  let sum = 0;
  for (const g of GAUSS_AT) {
    const s = from + (to - from) * g;
    const shape = [(1 - s) * (1 - 2 * s), s * (2 * s - 1), 4 * s * (1 - s)];
    let normal = 0;
    [a, b, m].forEach((node, i) => {
      normal += shape[i] * (state.velocity[node * nc + 1] * dr - state.velocity[node * nc] * dz);
    });
    sum += 0.5 * (to - from) * normal * (mesh.y[a] + s * dr);
  }
  return sum;
}

function outerNode(mesh: TriMesh): number {
  let found = -1;
  eachBoundaryEdge(mesh, (t, k, tag) => {
    if (tag === EDGE.outer && found < 0) found = edgeNodes(mesh, t, k)[0];
  });
  return found;
}

/** Edges at every corner node. */
function edgesAtCorners(mesh: TriMesh): [number, number, number][][] {
  const at: [number, number, number][][] = Array.from({ length: mesh.cornerCount }, () => []);
  for (let e = 0; e < mesh.neighbours.length; e++) {
    const t = Math.floor(e / 3);
    if (mesh.neighbours[e] > t) continue;
    const [a, b, m] = edgeNodes(mesh, t, e % 3);
    at[a].push([a, b, m]);
    at[b].push([b, a, m]);
  }
  return at;
}

/**
 * Integrates the stream function over the mesh; path-independent because every triangle balances its flow.
 * @returns value at every node, m3/s per radian: 0 on the outer wall, Q/(2 pi) on screw and axis
 */
export function streamFunction(mesh: TriMesh, state: StokesState): Float64Array {
  const psi = new Float64Array(mesh.x.length);
  const reached = new Uint8Array(mesh.x.length);
  const edges = edgesAtCorners(mesh);
  const queue = [outerNode(mesh)];
  reached[queue[0]] = 1;
  for (let head = 0; head < queue.length; head++)
    for (const edge of edges[queue[head]]) {
      const [a, b, m] = edge;
      if (!reached[m]) {
        reached[m] = 1;
        psi[m] = psi[a] - crossing(mesh, state, edge, 0, 0.5);
      }
      if (reached[b]) continue;
      reached[b] = 1;
      psi[b] = psi[a] - crossing(mesh, state, edge, 0, 1);
      queue.push(b);
    }
  return psi;
}
