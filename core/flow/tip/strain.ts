/** Strain, stress and their shares in the test functions at one quadrature point. */

import { SHAPE_COUNT } from '../../math/triQuadrature.ts';
import type { ElementTables } from './pointShapes.ts';
import { type ComponentCount, STRAIN_SIZE, type StokesState } from './stokesState.ts';

/**
 * Strain at the point whose tables begin at `at`: sqrt2 (Drr, Dzz, Dtt), 2 Drz, 2 Drt, 2 Dzt; 1/s.
 * @returns e.e, the squared shear rate
 */
export function strainAt(
  tables: ElementTables,
  at: number,
  nc: ComponentCount,
  local: Float64Array,
  out: Float64Array,
): number {
  const { dr, dz, overR } = tables;
  let e0 = 0;
  let e1 = 0;
  let e2 = 0;
  let e3 = 0;
  let e4 = 0;
  let e5 = 0;
  for (let a = 0; a < SHAPE_COUNT; a++) {
    const ur = local[a * nc];
    const uz = local[a * nc + 1];
    e0 += dr[at + a] * ur;
    e1 += dz[at + a] * uz;
    e2 += overR[at + a] * ur;
    e3 += dz[at + a] * ur + dr[at + a] * uz;
    if (nc === 3) {
      e4 += (dr[at + a] - overR[at + a]) * local[a * nc + 2];
      e5 += dz[at + a] * local[a * nc + 2];
    }
  }
  out[0] = Math.SQRT2 * e0;
  out[1] = Math.SQRT2 * e1;
  out[2] = Math.SQRT2 * e2;
  out[3] = e3;
  out[4] = e4;
  out[5] = e5;
  return 2 * (e0 * e0 + e1 * e1 + e2 * e2) + e3 * e3 + e4 * e4 + e5 * e5;
}

/** s . e_a for every local unknown a: the share of a stress (from `sAt` in `s`) in each test function. */
export function sharesOf(
  tables: ElementTables,
  at: number,
  nc: ComponentCount,
  s: Float64Array,
  sAt: number,
  out: Float64Array,
): void {
  const { dr, dz, overR } = tables;
  const s0 = Math.SQRT2 * s[sAt];
  const s1 = Math.SQRT2 * s[sAt + 1];
  const s2 = Math.SQRT2 * s[sAt + 2];
  const s3 = s[sAt + 3];
  const s4 = s[sAt + 4];
  const s5 = s[sAt + 5];
  for (let a = 0; a < SHAPE_COUNT; a++) {
    out[a * nc] = dr[at + a] * s0 + overR[at + a] * s2 + dz[at + a] * s3;
    out[a * nc + 1] = dz[at + a] * s1 + dr[at + a] * s3;
    if (nc === 3) out[a * nc + 2] = (dr[at + a] - overR[at + a]) * s4 + dz[at + a] * s5;
  }
}

/**
 * Stress of the linearised law at strain e: D e + (1 - n) tau, where D is the tangent of the curve at the stress tau of
 * the last step, D = eta I + (n - 1) eta tau tau / |tau|^2. Linearising at a stress instead of at a strain keeps Newton
 * from overshooting where melt nearly rests (a primal-dual step, after Chan, Golub & Mulet 1999).
 * @returns eta (n - 1) / |tau|^2, the weight of tau tau in D
 */
export function linearStress(state: StokesState, point: number, e: Float64Array, out: Float64Array): number {
  const { stress, curve } = state;
  const eta = curve[2 * point];
  const index = curve[2 * point + 1];
  const at = STRAIN_SIZE * point;
  let along = 0;
  let square = 0;
  for (let i = 0; i < STRAIN_SIZE; i++) {
    along += e[i] * stress[at + i];
    square += stress[at + i] * stress[at + i];
  }
  const slope = square > 0 ? (eta * (index - 1)) / square : 0;
  const f = slope * along + 1 - index;
  for (let i = 0; i < STRAIN_SIZE; i++) out[i] = eta * e[i] + f * stress[at + i];
  return slope;
}
