/**
 * Mean age of the melt: u.grad a - div(kappa grad a) = 1, a = 0 at the inlet (Danckwerts 1953; Spalding 1958).
 * Quadratic elements, conservative weak form with streamline diffusion (Brooks & Hughes 1982): the flow-weighted
 * outlet age equals volume over flow to rounding, whatever the mesh.
 */

import { dissect } from '../../math/sparseDissection.ts';
import { factorFrontal, frontalStore, solveFrontal } from '../../math/sparseFrontal.ts';
import type { TriMesh } from '../../math/triMesh.ts';
import { POINT_COUNT, SHAPE_COUNT } from '../../math/triQuadrature.ts';
import { outletPoints } from './edgeRule.ts';
import { newPointShapes, type PointShapes, pointShapes } from './pointShapes.ts';
import { gatherVelocity, type StokesState } from './stokesState.ts';
import { triangleCentres } from './stokesSystem.ts';

const NODES = 6;

/** Ageing rate at (z, r); 1 everywhere except in checks with known solutions. */
export type AgeSource = (z: number, r: number) => number;

interface AgeWork {
  readonly source: AgeSource | undefined;
  readonly local: Float64Array;
  readonly point: PointShapes;
  /** u . grad of every shape, 1/s */
  readonly along: Float64Array;
}

/** Streamline time scale of a quadratic triangle at a point, s. */
function upwindTime(work: AgeWork, diffusivity: number, area2: number): number {
  const { along } = work;
  // corner hat functions from the quadratic ones: hat_0 = N_0 + (N_4 + N_5) / 2
  const hats =
    Math.abs(along[0] + (along[4] + along[5]) / 2) +
    Math.abs(along[1] + (along[3] + along[5]) / 2) +
    Math.abs(along[2] + (along[3] + along[4]) / 2);
  const rate = Math.hypot(2 * hats, (36 * diffusivity) / area2);
  return rate > 0 ? 1 / rate : 0;
}

/** Sets the point and the advection rates of every shape there. */
function enterPoint(mesh: TriMesh, t: number, q: number, nc: number, work: AgeWork): void {
  const { local, point, along } = work;
  pointShapes(mesh, t, q, point);
  let ur = 0;
  let uz = 0;
  for (let a = 0; a < SHAPE_COUNT; a++) {
    ur += point.value[a] * local[a * nc];
    uz += point.value[a] * local[a * nc + 1];
  }
  for (let a = 0; a < NODES; a++) along[a] = ur * point.dr[a] + uz * point.dz[a];
}

function ageMatrix(
  mesh: TriMesh,
  state: StokesState,
  diffusivity: number,
  t: number,
  work: AgeWork,
  out: Float64Array,
  load: Float64Array,
): void {
  const nc = state.components;
  const { point, along } = work;
  gatherVelocity(mesh, t, state, work.local);
  out.fill(0);
  for (let q = 0; q < POINT_COUNT; q++) {
    enterPoint(mesh, t, q, nc, work);
    const w = point.weight;
    const rate = work.source ? work.source(point.z, point.r) : 1;
    const tau = upwindTime(work, diffusivity, (2 * w) / point.r);
    for (let a = 0; a < NODES; a++) {
      load[mesh.nodes[6 * t + a]] += w * rate * (point.value[a] + tau * along[a]);
      for (let b = 0; b < NODES; b++)
        out[a * NODES + b] +=
          w *
          (tau * along[a] * along[b] -
            along[a] * point.value[b] +
            diffusivity * (point.dr[a] * point.dr[b] + point.dz[a] * point.dz[b]));
    }
  }
}

/** Outflow terms, per triangle with an outlet edge. */
function outletMatrices(mesh: TriMesh, state: StokesState): Map<number, Float64Array> {
  const blocks = new Map<number, Float64Array>();
  for (const point of outletPoints(mesh, state)) {
    const block = blocks.get(point.triangle) ?? new Float64Array(NODES * NODES);
    blocks.set(point.triangle, block);
    for (let a = 0; a < 3; a++)
      for (let b = 0; b < 3; b++)
        block[point.local[a] * NODES + point.local[b]] += point.flow * point.shape[a] * point.shape[b];
  }
  return blocks;
}

/**
 * Solves the age field.
 * @param mesh x = z, y = r, m
 * @param state solved flow
 * @param diffusivity kappa, m2/s, > 0; closed eddies empty through it alone
 * @param source for checks
 * @returns age of every node, s, and whether the linear system was sound
 */
export function ageField(
  mesh: TriMesh,
  state: StokesState,
  diffusivity: number,
  source?: AgeSource,
): { age: Float64Array; sound: boolean } {
  const { x: centreX, y: centreY } = triangleCentres(mesh);
  const dissection = dissect({
    ...{ elementCount: mesh.triangleCount, unknownCount: mesh.x.length, unknowns: mesh.nodes, perElement: NODES },
    ...{ centreX, centreY },
  });
  const outlet = outletMatrices(mesh, state);
  const load = new Float64Array(mesh.x.length);
  const work: AgeWork = {
    source,
    local: new Float64Array(SHAPE_COUNT * state.components),
    point: newPointShapes(),
    along: new Float64Array(NODES),
  };
  const matrix = (t: number, out: Float64Array): void => {
    ageMatrix(mesh, state, diffusivity, t, work, out, load);
    outlet.get(t)?.forEach((value, i) => {
      out[i] += value;
    });
  };
  const factor = factorFrontal(dissection, matrix, frontalStore(dissection, false));
  const age = load.slice();
  solveFrontal(factor, age);
  return { age, sound: factor.sound && age.every(Number.isFinite) };
}
