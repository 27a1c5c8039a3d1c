/** Shape functions of a turned triangle at its quadrature points. */

import { newTriGeometry, type TriMesh, triGeometry } from '../../math/triMesh.ts';
import {
  POINT_BARYCENTRIC,
  POINT_COUNT,
  POINT_SHAPE,
  POINT_SLOPE,
  POINT_WEIGHT,
  SHAPE_COUNT,
} from '../../math/triQuadrature.ts';

/** Shape values and slopes at one quadrature point of one triangle. */
export interface PointShapes {
  readonly value: Float64Array;
  readonly dr: Float64Array;
  readonly dz: Float64Array;
  /** m */
  r: number;
  z: number;
  /** r dA, m3 per radian */
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

/** Fills the shapes at quadrature point `q` of triangle `t`; points of a triangle must be visited from q = 0. */
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

/** What of all triangles does not change while the flow is sought. */
export interface ElementTables {
  /** d shape / dr and / dz, 1/m, [triangle][point][shape] */
  readonly dr: Float64Array;
  readonly dz: Float64Array;
  /** shape / r, 1/m, same order */
  readonly overR: Float64Array;
  /** r dA, [triangle][point] */
  readonly weight: Float64Array;
  /** int lambda_k div(v_a) r dA for components r and z, [triangle][k][shape][component] */
  readonly divergence: Float64Array;
  /** Inverse of int lambda_k lambda_l r dA, [triangle][k][l] */
  readonly massInverse: Float64Array;
}

/** Numbers per triangle in `divergence`. */
export const DIVERGENCE_SIZE = 3 * SHAPE_COUNT * 2;

/** Inverse of a small symmetric positive matrix (n <= 3), row-major from `at`, in place; Gauss-Jordan. */
export function invertSmall(m: Float64Array, n: number, at = 0): void {
  for (let k = 0; k < n; k++) {
    const pivot = 1 / m[at + k * n + k];
    m[at + k * n + k] = 1;
    for (let j = 0; j < n; j++) m[at + k * n + j] *= pivot;
    for (let i = 0; i < n; i++) {
      if (i === k) continue;
      const f = m[at + i * n + k];
      m[at + i * n + k] = 0;
      for (let j = 0; j < n; j++) m[at + i * n + j] -= f * m[at + k * n + j];
    }
  }
}

function addPressureTerms(tables: ElementTables, t: number, q: number, p: PointShapes): void {
  for (let k = 0; k < 3; k++) {
    const w = p.weight * POINT_BARYCENTRIC[3 * q + k];
    const at = t * DIVERGENCE_SIZE + k * SHAPE_COUNT * 2;
    for (let a = 0; a < SHAPE_COUNT; a++) {
      tables.divergence[at + 2 * a] += w * (p.dr[a] + p.value[a] / p.r);
      tables.divergence[at + 2 * a + 1] += w * p.dz[a];
    }
    for (let l = 0; l < 3; l++) tables.massInverse[9 * t + 3 * k + l] += w * POINT_BARYCENTRIC[3 * q + l];
  }
}

/** Tabulates all triangles of a mesh. */
export function elementTables(mesh: TriMesh): ElementTables {
  const points = mesh.triangleCount * POINT_COUNT;
  const make = (n: number): Float64Array => new Float64Array(n);
  const tables: ElementTables = {
    ...{ dr: make(points * SHAPE_COUNT), dz: make(points * SHAPE_COUNT), overR: make(points * SHAPE_COUNT) },
    ...{ weight: make(points), divergence: make(mesh.triangleCount * DIVERGENCE_SIZE) },
    massInverse: make(9 * mesh.triangleCount),
  };
  const point = newPointShapes();
  for (let t = 0; t < mesh.triangleCount; t++) {
    for (let q = 0; q < POINT_COUNT; q++) {
      pointShapes(mesh, t, q, point);
      const at = (t * POINT_COUNT + q) * SHAPE_COUNT;
      tables.dr.set(point.dr, at);
      tables.dz.set(point.dz, at);
      for (let a = 0; a < SHAPE_COUNT; a++) tables.overR[at + a] = point.value[a] / point.r;
      tables.weight[t * POINT_COUNT + q] = point.weight;
      addPressureTerms(tables, t, q, point);
    }
    invertSmall(tables.massInverse, 3, 9 * t);
  }
  return tables;
}
