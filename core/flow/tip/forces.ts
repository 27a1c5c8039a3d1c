/** Pressure at the inlet and torque on the screw, from a solved flow. */

import type { TriMesh } from '../../math/triMesh.ts';
import { type ElementContext, evaluateElement, newElementWork } from './stokesElement.ts';
import type { StokesState } from './stokesState.ts';
import { eachBoundaryEdge, edgeNodes } from './stokesSystem.ts';
import { EDGE } from './zipper.ts';

/** Area-mean pressure of the inlet plane, Pa; the outlet's mean axial traction is zero. */
export function inletPressure(mesh: TriMesh, state: StokesState): number {
  let force = 0;
  let area = 0;
  eachBoundaryEdge(mesh, (t, k, tag) => {
    if (tag !== EDGE.inlet) return;
    const [a, b] = edgeNodes(mesh, t, k);
    const [ra, rb, length] = [mesh.y[a], mesh.y[b], Math.abs(mesh.y[b] - mesh.y[a])];
    const pa = state.pressure[3 * t + ((k + 1) % 3)];
    const pb = state.pressure[3 * t + ((k + 2) % 3)];
    force += (length * (2 * pa * ra + 2 * pb * rb + pa * rb + pb * ra)) / 6;
    area += (length * (ra + rb)) / 2;
  });
  return force / area;
}

/** Torque the melt asks of the screw, N m: nodal reactions times their lever. Zero without swirl. */
export function tipTorque(context: ElementContext, state: StokesState): number {
  if (state.components === 2) return 0;
  const { mesh } = context;
  const onScrew = new Uint8Array(mesh.x.length);
  eachBoundaryEdge(mesh, (t, k, tag) => {
    if (tag === EDGE.inner) for (const node of edgeNodes(mesh, t, k)) onScrew[node] = 1;
  });
  const work = newElementWork(3);
  let torque = 0;
  for (let t = 0; t < mesh.triangleCount; t++) {
    const nodes = mesh.nodes.subarray(6 * t, 6 * t + 6);
    if (!nodes.some((node) => onScrew[node])) continue;
    evaluateElement(context, t, state, work, false);
    nodes.forEach((node, a) => {
      if (onScrew[node]) torque += 2 * Math.PI * mesh.y[node] * work.force[3 * a + 2];
    });
  }
  return torque;
}
