/**
 * One triangle of the axisymmetric creeping-flow discretisation: velocity quadratic plus bubble, pressure linear and
 * discontinuous (Crouzeix & Raviart 1973, conforming second-order element). The factor 2 pi is left out throughout.
 */

import { localIndex, type ViscosityLaw, viscosityAt } from '../../material/viscosityLaw.ts';
import { newTriGeometry, type TriMesh, triGeometry } from '../../math/triMesh.ts';
import {
  POINT_BARYCENTRIC,
  POINT_COUNT,
  POINT_SHAPE,
  POINT_SLOPE,
  POINT_WEIGHT,
  SHAPE_COUNT,
} from '../../math/triQuadrature.ts';

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
}

/** A state at rest. */
export function restState(mesh: TriMesh, components: ComponentCount): StokesState {
  return {
    components,
    velocity: new Float64Array(mesh.x.length * components),
    bubble: new Float64Array(mesh.triangleCount * components),
    pressure: new Float64Array(mesh.triangleCount * 3),
  };
}

/** Shape values and slopes at one quadrature point of one triangle. */
export interface PointShapes {
  readonly value: Float64Array;
  readonly dr: Float64Array;
  readonly dz: Float64Array;
  r: number;
  z: number;
  /** r dA, m3 */
  weight: number;
}

/** Fresh holder for `pointShapes`. */
export const newPointShapes = (): PointShapes => ({
  value: new Float64Array(SHAPE_COUNT),
  dr: new Float64Array(SHAPE_COUNT),
  dz: new Float64Array(SHAPE_COUNT),
  r: 0,
  z: 0,
  weight: 0,
});

const geometry = newTriGeometry();

/** Fills the shapes at quadrature point `q` of the triangle last given to `enterTriangle`. */
export function pointShapes(mesh: TriMesh, t: number, q: number, out: PointShapes): void {
  if (q === 0) triGeometry(mesh, t, geometry);
  const { gx, gy } = geometry;
  out.r = 0;
  out.z = 0;
  for (let k = 0; k < 3; k++) {
    const corner = mesh.nodes[6 * t + k];
    out.r += POINT_BARYCENTRIC[3 * q + k] * mesh.y[corner];
    out.z += POINT_BARYCENTRIC[3 * q + k] * mesh.x[corner];
  }
  out.weight = out.r * 0.5 * geometry.area2 * POINT_WEIGHT[q];
  for (let a = 0; a < SHAPE_COUNT; a++) {
    const s = 3 * (q * SHAPE_COUNT + a);
    out.value[a] = POINT_SHAPE[q * SHAPE_COUNT + a];
    out.dz[a] = POINT_SLOPE[s] * gx[0] + POINT_SLOPE[s + 1] * gx[1] + POINT_SLOPE[s + 2] * gx[2];
    out.dr[a] = POINT_SLOPE[s] * gy[0] + POINT_SLOPE[s + 1] * gy[1] + POINT_SLOPE[s + 2] * gy[2];
  }
}

/** Strain-rate vector e with e.e = 2 D:D: sqrt2 (Drr, Dzz, Dtt), 2 Drz, 2 Drt, 2 Dzt; 1/s. */
export type Strain = Float64Array;

/** Strain of the local velocity at a point. */
export function strainAt(p: PointShapes, local: Float64Array, nc: ComponentCount, out: Strain): void {
  out.fill(0);
  const inverse = 1 / p.r;
  for (let a = 0; a < SHAPE_COUNT; a++) {
    const ur = local[a * nc];
    const uz = local[a * nc + 1];
    out[0] += p.dr[a] * ur;
    out[1] += p.dz[a] * uz;
    out[2] += p.value[a] * inverse * ur;
    out[3] += p.dz[a] * ur + p.dr[a] * uz;
    if (nc === 3) {
      out[4] += (p.dr[a] - p.value[a] * inverse) * local[a * nc + 2];
      out[5] += p.dz[a] * local[a * nc + 2];
    }
  }
  for (let i = 0; i < 3; i++) out[i] *= Math.SQRT2;
}

/** e . e_a for every local unknown a: the strain's share in each test function. */
function strainShares(p: PointShapes, e: Strain, nc: ComponentCount, out: Float64Array): void {
  const inverse = 1 / p.r;
  for (let a = 0; a < SHAPE_COUNT; a++) {
    out[a * nc] = Math.SQRT2 * (p.dr[a] * e[0] + p.value[a] * inverse * e[2]) + p.dz[a] * e[3];
    out[a * nc + 1] = Math.SQRT2 * p.dz[a] * e[1] + p.dr[a] * e[3];
    if (nc === 3) out[a * nc + 2] = (p.dr[a] - p.value[a] * inverse) * e[4] + p.dz[a] * e[5];
  }
}

/** Everything about one triangle at the present state; reused from triangle to triangle. */
export interface ElementWork {
  readonly nc: ComponentCount;
  /** Local unknowns: shape * nc + component */
  readonly size: number;
  readonly local: Float64Array;
  /** Stress residual, int eta e . e_a r dA */
  readonly force: Float64Array;
  /** Tangent, row-major */
  readonly tangent: Float64Array;
  /** int lambda_k div(v_a) r dA, [k][a] */
  readonly divergence: Float64Array;
  /** int lambda_k lambda_l r dA */
  readonly mass: Float64Array;
  /** Mean viscosity, Pa s */
  viscosity: number;
  readonly point: PointShapes;
  readonly strain: Strain;
  readonly shares: Float64Array;
}

/** Fresh work space. */
export function newElementWork(nc: ComponentCount): ElementWork {
  const size = SHAPE_COUNT * nc;
  const make = (n: number): Float64Array => new Float64Array(n);
  return {
    ...{ nc, size, local: make(size), force: make(size), tangent: make(size * size) },
    ...{ divergence: make(3 * size), mass: make(9), viscosity: 0, point: newPointShapes(), strain: make(6) },
    shares: make(size),
  };
}

/** Collects the velocity of one triangle, bubble last. */
export function gatherVelocity(mesh: TriMesh, t: number, state: StokesState, out: Float64Array): void {
  const nc = state.components;
  for (let a = 0; a < 6; a++)
    for (let c = 0; c < nc; c++) out[a * nc + c] = state.velocity[mesh.nodes[6 * t + a] * nc + c];
  for (let c = 0; c < nc; c++) out[6 * nc + c] = state.bubble[t * nc + c];
}

function addTangent(work: ElementWork, eta: number, slope: number): void {
  const { point: p, nc, size, tangent, shares } = work;
  const w = p.weight * eta;
  const c = p.weight * slope;
  const inverse2 = 1 / (p.r * p.r);
  for (let a = 0; a < SHAPE_COUNT; a++) {
    const [ar, az, av] = [p.dr[a] * w, p.dz[a] * w, p.value[a] * w];
    for (let b = 0; b < SHAPE_COUNT; b++) {
      const i = a * nc * size + b * nc;
      const [br, bz, bv] = [p.dr[b], p.dz[b], p.value[b]];
      tangent[i] += 2 * ar * br + az * bz + 2 * av * bv * inverse2;
      tangent[i + 1] += az * br;
      tangent[i + size] += ar * bz;
      tangent[i + size + 1] += 2 * az * bz + ar * br;
      if (nc === 3) tangent[i + 2 * size + 2] += (ar - av / p.r) * (br - bv / p.r) + az * bz;
    }
  }
  if (c !== 0)
    for (let a = 0; a < size; a++) {
      const f = c * shares[a];
      for (let b = 0; b < size; b++) tangent[a * size + b] += f * shares[b];
    }
}

function addDivergence(work: ElementWork, q: number): void {
  const { point: p, nc, size, divergence, mass } = work;
  for (let k = 0; k < 3; k++) {
    const w = p.weight * POINT_BARYCENTRIC[3 * q + k];
    for (let a = 0; a < SHAPE_COUNT; a++) {
      divergence[k * size + a * nc] += w * (p.dr[a] + p.value[a] / p.r);
      divergence[k * size + a * nc + 1] += w * p.dz[a];
    }
    for (let l = 0; l < 3; l++) mass[3 * k + l] += w * POINT_BARYCENTRIC[3 * q + l];
  }
}

const LEAST_RATE = 1e-12; // 1/s; keeps logarithmic slopes finite at rest

/**
 * Evaluates one triangle: forces, divergence rows, mass and (if wanted) the tangent.
 * @param withTangent false leaves `tangent` stale
 */
export function evaluateElement(
  mesh: TriMesh,
  t: number,
  state: StokesState,
  law: ViscosityLaw,
  work: ElementWork,
  withTangent: boolean,
): void {
  const { nc, local, force, tangent, divergence, mass, point, strain, shares } = work;
  gatherVelocity(mesh, t, state, local);
  force.fill(0);
  divergence.fill(0);
  mass.fill(0);
  if (withTangent) tangent.fill(0);
  let volume = 0;
  work.viscosity = 0;
  for (let q = 0; q < POINT_COUNT; q++) {
    pointShapes(mesh, t, q, point);
    strainAt(point, local, nc, strain);
    strainShares(point, strain, nc, shares);
    let rate2 = 0;
    for (let i = 0; i < 6; i++) rate2 += strain[i] * strain[i];
    const rate = Math.max(LEAST_RATE, Math.sqrt(rate2));
    const eta = viscosityAt(law, rate);
    for (let a = 0; a < work.size; a++) force[a] += point.weight * eta * shares[a];
    volume += point.weight;
    work.viscosity += point.weight * eta;
    if (withTangent) {
      const slope = law.model === 'newtonian' ? 0 : (eta * (localIndex(law, rate) - 1)) / (rate * rate);
      addTangent(work, eta, slope);
    }
    addDivergence(work, q);
  }
  work.viscosity /= volume;
}
