/** Velocity given at the inlet plane and on the turning screw. */

import type { TriMesh } from '../../math/triMesh.ts';
import type { StokesState } from './stokesState.ts';
import { eachBoundaryEdge, edgeNodes } from './stokesSystem.ts';
import { EDGE } from './zipper.ts';

/**
 * Axial profile at the inlet: `parabola` is (r - a)(b - r), within 1 % of developed flow for a/b > 0.5;
 * `developed` is the exact Newtonian annulus (or pipe) profile. Either settles within about one gap width.
 */
export type InletProfile = 'parabola' | 'developed';

function shapeOf(profile: InletProfile, a: number, b: number): (r: number) => number {
  if (a === 0) return (r) => b * b - r * r;
  if (profile === 'parabola') return (r) => (r - a) * (b - r);
  const slope = (b * b - a * a) / Math.log(b / a);
  return (r) => b * b - r * r - slope * Math.log(b / r);
}

/** Simpson integral of shape * r from a to b. */
function flux(shape: (r: number) => number, a: number, b: number): number {
  const steps = 400;
  const h = (b - a) / steps;
  let sum = 0;
  for (let i = 0; i <= steps; i++) {
    const r = a + i * h;
    sum += (i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2) * (r > 0 ? shape(r) * r : 0);
  }
  return (sum * h) / 3;
}

/** Discrete flux of the quadratic interpolant, so that the mesh carries exactly the wanted flow. */
function edgeFlux(r0: number, r1: number, u0: number, u1: number, um: number): number {
  const middle = (r0 + r1) / 2;
  return (Math.abs(r1 - r0) * (u0 * r0 + 4 * um * middle + u1 * r1)) / 6;
}

/** What of a flow the boundary values need. */
export interface GivenFlow {
  readonly volumeFlow: number;
  readonly turnRate?: number;
  readonly inlet?: InletProfile;
}

/** Writes inlet profile and screw speed into a state at rest. */
export function applyInlet(mesh: TriMesh, state: StokesState, flow: GivenFlow): void {
  const nc = state.components;
  const radii: number[] = [];
  eachBoundaryEdge(mesh, (t, k, tag) => {
    if (tag === EDGE.inlet) for (const node of edgeNodes(mesh, t, k)) radii.push(mesh.y[node]);
  });
  const [a, b] = [Math.min(...radii), Math.max(...radii)];
  const shape = shapeOf(flow.inlet ?? 'parabola', a, b);
  let scale = flow.volumeFlow / (2 * Math.PI) / flux(shape, a, b);
  let carried = 0;
  eachBoundaryEdge(mesh, (t, k, tag) => {
    if (tag !== EDGE.inlet) return;
    const [p, q, m] = edgeNodes(mesh, t, k).map((node) => mesh.y[node]);
    carried += scale * edgeFlux(p, q, shape(p), shape(q), shape(m));
  });
  scale *= flow.volumeFlow / (2 * Math.PI) / carried;
  eachBoundaryEdge(mesh, (t, k, tag) => {
    if (tag !== EDGE.inlet) return;
    for (const node of edgeNodes(mesh, t, k)) state.velocity[node * nc + 1] = scale * shape(mesh.y[node]);
  });
  if (nc === 3)
    eachBoundaryEdge(mesh, (t, k, tag) => {
      if (tag !== EDGE.inner) return;
      for (const node of edgeNodes(mesh, t, k)) state.velocity[node * nc + 2] = (flow.turnRate ?? 0) * mesh.y[node];
    });
}
