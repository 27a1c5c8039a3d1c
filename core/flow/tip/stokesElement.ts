/**
 * One triangle of the axisymmetric creeping-flow discretisation: velocity quadratic plus bubble, pressure linear and
 * discontinuous (Crouzeix & Raviart 1973, conforming second-order element). The factor 2 pi is left out throughout.
 */

import type { TriMesh } from '../../math/triMesh.ts';
import { POINT_COUNT, POINT_SHAPE, SHAPE_COUNT } from '../../math/triQuadrature.ts';
import { DIVERGENCE_SIZE, type ElementTables } from './pointShapes.ts';
import { type ComponentCount, gatherVelocity, STRAIN_SIZE, type StokesState } from './stokesState.ts';
import { linearStress, sharesOf, strainAt } from './strain.ts';

/** Force density in the melt at (z, r), N/m3: radial and axial part into `out`. For checks with known solutions. */
export type BodyForce = (z: number, r: number, out: Float64Array) => void;

/** A mesh with its tables, as the element routines need it. */
export interface ElementContext {
  readonly mesh: TriMesh;
  readonly tables: ElementTables;
  readonly bodyForce?: BodyForce;
}

/** Pressure stiffness over viscosity in the augmented Lagrangian (Fortin & Glowinski 1983). */
const AUGMENTATION = 1e7;

/** Everything about one triangle at the present state; reused from triangle to triangle. */
export interface ElementWork {
  readonly nc: ComponentCount;
  /** Local unknowns: shape * nc + component, bubble last */
  readonly size: number;
  readonly local: Float64Array;
  /** Residual: stress minus augmented pressure minus body force */
  readonly force: Float64Array;
  /** Tangent with augmentation, row-major, symmetric */
  readonly tangent: Float64Array;
  /** gamma W^-1 B u, Pa */
  readonly pressureStep: Float64Array;
  /** int lambda_k div u r dA, m3/s per radian */
  readonly spread: Float64Array;
  /** Mean viscosity, Pa s */
  viscosity: number;
  /** 1/s */
  readonly strain: Float64Array;
  /** Stress of the linearisation at the present strain, Pa */
  readonly stress: Float64Array;
  /** Shares of that stress in every test function, and of the last stress in the tangent */
  readonly pull: Float64Array;
  readonly shares: Float64Array;
  readonly density: Float64Array;
}

/** Fresh work space. */
export function newElementWork(nc: ComponentCount): ElementWork {
  const size = SHAPE_COUNT * nc;
  const make = (n: number): Float64Array => new Float64Array(n);
  return {
    ...{ nc, size, local: make(size), force: make(size), tangent: make(size * size) },
    ...{ pressureStep: make(3), spread: make(3), viscosity: 0, shares: make(size), density: make(2) },
    ...{ strain: make(STRAIN_SIZE), stress: make(STRAIN_SIZE), pull: make(size) },
  };
}

/** Adds w (e_a . e_b) + c shares_a shares_b to the upper half of the tangent. */
function addTangent(tables: ElementTables, at: number, work: ElementWork, w: number, c: number): void {
  const { dr, dz, overR } = tables;
  const { nc, size, tangent, shares } = work;
  for (let a = 0; a < SHAPE_COUNT; a++) {
    const ar = w * dr[at + a];
    const az = w * dz[at + a];
    const av = w * overR[at + a];
    const sr = c * shares[a * nc];
    const sz = c * shares[a * nc + 1];
    for (let b = a; b < SHAPE_COUNT; b++) {
      const i = a * nc * size + b * nc;
      const br = dr[at + b];
      const bz = dz[at + b];
      const bv = overR[at + b];
      const tr = shares[b * nc];
      const tz = shares[b * nc + 1];
      tangent[i] += 2 * (ar * br + av * bv) + az * bz + sr * tr;
      tangent[i + 1] += az * br + sr * tz;
      tangent[i + size] += ar * bz + sz * tr;
      tangent[i + size + 1] += 2 * az * bz + ar * br + sz * tz;
      if (nc === 3) {
        const st = c * shares[a * nc + 2];
        const tt = shares[b * nc + 2];
        tangent[i + 2] += sr * tt;
        tangent[i + size + 2] += sz * tt;
        tangent[i + 2 * size] += st * tr;
        tangent[i + 2 * size + 1] += st * tz;
        tangent[i + 2 * size + 2] += (ar - av) * (br - bv) + az * bz + st * tt;
      }
    }
  }
}

/** Pressure step and its force. */
function addPressure(context: ElementContext, t: number, state: StokesState, work: ElementWork): void {
  const { divergence, massInverse: m } = context.tables;
  const { nc, local, force, pressureStep: step, spread } = work;
  const width = 2 * SHAPE_COUNT;
  const at = t * DIVERGENCE_SIZE;
  for (let k = 0; k < 3; k++) {
    let sum = 0;
    for (let a = 0; a < SHAPE_COUNT; a++) {
      const d = at + k * width + 2 * a;
      sum += divergence[d] * local[a * nc] + divergence[d + 1] * local[a * nc + 1];
    }
    spread[k] = sum;
  }
  const gamma = AUGMENTATION * work.viscosity;
  for (let k = 0; k < 3; k++) {
    const row = 9 * t + 3 * k;
    step[k] = gamma * (m[row] * spread[0] + m[row + 1] * spread[1] + m[row + 2] * spread[2]);
    const p = state.pressure[3 * t + k] - step[k];
    for (let a = 0; a < SHAPE_COUNT; a++) {
      const d = at + k * width + 2 * a;
      force[a * nc] -= divergence[d] * p;
      force[a * nc + 1] -= divergence[d + 1] * p;
    }
  }
}

/** Adds gamma B^T W^-1 B to the upper half of the tangent. */
function augment(tables: ElementTables, t: number, work: ElementWork): void {
  const { divergence, massInverse: m } = tables;
  const { nc, size, tangent } = work;
  const width = 2 * SHAPE_COUNT;
  const at = t * DIVERGENCE_SIZE;
  const gamma = AUGMENTATION * work.viscosity;
  for (let i = 0; i < width; i++) {
    const row = ((i >> 1) * nc + (i & 1)) * size;
    const b0 = divergence[at + i];
    const b1 = divergence[at + width + i];
    const b2 = divergence[at + 2 * width + i];
    const f0 = gamma * (m[9 * t] * b0 + m[9 * t + 1] * b1 + m[9 * t + 2] * b2);
    const f1 = gamma * (m[9 * t + 3] * b0 + m[9 * t + 4] * b1 + m[9 * t + 5] * b2);
    const f2 = gamma * (m[9 * t + 6] * b0 + m[9 * t + 7] * b1 + m[9 * t + 8] * b2);
    for (let j = i & ~1; j < width; j++)
      tangent[row + (j >> 1) * nc + (j & 1)] +=
        f0 * divergence[at + j] + f1 * divergence[at + width + j] + f2 * divergence[at + 2 * width + j];
  }
}

function addBodyForce(context: ElementContext, t: number, q: number, w: number, work: ElementWork): void {
  const { mesh, bodyForce } = context;
  if (!bodyForce) return;
  let [z, r] = [0, 0];
  for (let a = 0; a < 6; a++) {
    z += POINT_SHAPE[q * SHAPE_COUNT + a] * mesh.x[mesh.nodes[6 * t + a]];
    r += POINT_SHAPE[q * SHAPE_COUNT + a] * mesh.y[mesh.nodes[6 * t + a]];
  }
  bodyForce(z, r, work.density);
  for (let a = 0; a < SHAPE_COUNT; a++)
    for (let c = 0; c < 2; c++) work.force[a * work.nc + c] -= w * POINT_SHAPE[q * SHAPE_COUNT + a] * work.density[c];
}

/** Adds the stress terms of one quadrature point. */
function addPoint(
  context: ElementContext,
  t: number,
  q: number,
  state: StokesState,
  work: ElementWork,
  withTangent: boolean,
): void {
  const { tables } = context;
  const { nc, force, shares, pull, strain, stress, size } = work;
  const point = t * POINT_COUNT + q;
  const at = point * SHAPE_COUNT;
  const w = tables.weight[point];
  strainAt(tables, at, nc, work.local, strain);
  const slope = linearStress(state, point, strain, stress);
  sharesOf(tables, at, nc, stress, 0, pull);
  for (let a = 0; a < size; a++) force[a] += w * pull[a];
  work.viscosity += w * state.curve[2 * point];
  if (withTangent) {
    sharesOf(tables, at, nc, state.stress, STRAIN_SIZE * point, shares);
    addTangent(tables, at, work, w * state.curve[2 * point], w * slope);
  }
  addBodyForce(context, t, q, w, work);
}

/**
 * Evaluates one triangle at the linearisation held by the state: residual force, pressure step and (if wanted) the
 * augmented tangent.
 * @param withTangent false leaves `tangent` stale
 */
export function evaluateElement(
  context: ElementContext,
  t: number,
  state: StokesState,
  work: ElementWork,
  withTangent: boolean,
): void {
  const { force, tangent, size } = work;
  gatherVelocity(context.mesh, t, state, work.local);
  force.fill(0);
  if (withTangent) tangent.fill(0);
  work.viscosity = 0;
  let volume = 0;
  for (let q = 0; q < POINT_COUNT; q++) {
    addPoint(context, t, q, state, work, withTangent);
    volume += context.tables.weight[t * POINT_COUNT + q];
  }
  work.viscosity /= volume;
  addPressure(context, t, state, work);
  if (!withTangent) return;
  augment(context.tables, t, work);
  for (let i = 1; i < size; i++) for (let j = 0; j < i; j++) tangent[i * size + j] = tangent[j * size + i];
}
