/** Velocity, pressure and stress of a whole mesh. */

import type { TriMesh } from '../../math/triMesh.ts';
import { POINT_COUNT } from '../../math/triQuadrature.ts';

/** Velocity components: radial, axial and, where the tip turns, circumferential. */
export type ComponentCount = 2 | 3;

/** Velocity and pressure of a whole mesh. */
export interface StokesState {
  readonly components: ComponentCount;
  /** m/s, [node][component] with components r, z, theta */
  readonly velocity: Float64Array;
  /** Bubble amplitudes, m/s, [triangle][component] */
  readonly bubble: Float64Array;
  /** Pa, [triangle][corner] */
  readonly pressure: Float64Array;
  /** Stress of the last linearisation, Pa, [triangle][point][strain component]; see `strainAt` for the components */
  readonly stress: Float64Array;
  /** Viscosity (Pa s) and local index belonging to that stress, [triangle][point][2] */
  readonly curve: Float64Array;
}

/** Components of strain and stress, scaled so that e.e = 2 D:D. */
export const STRAIN_SIZE = 6;

/** A state at rest. */
export function restState(mesh: TriMesh, components: ComponentCount): StokesState {
  return {
    components,
    velocity: new Float64Array(mesh.x.length * components),
    bubble: new Float64Array(mesh.triangleCount * components),
    pressure: new Float64Array(mesh.triangleCount * 3),
    stress: new Float64Array(mesh.triangleCount * POINT_COUNT * STRAIN_SIZE),
    curve: new Float64Array(mesh.triangleCount * POINT_COUNT * 2),
  };
}

/** Collects the velocity of one triangle, bubble last. */
export function gatherVelocity(mesh: TriMesh, t: number, state: StokesState, out: Float64Array): void {
  const nc = state.components;
  for (let a = 0; a < 6; a++) {
    const at = mesh.nodes[6 * t + a] * nc;
    for (let c = 0; c < nc; c++) out[a * nc + c] = state.velocity[at + c];
  }
  for (let c = 0; c < nc; c++) out[6 * nc + c] = state.bubble[t * nc + c];
}
