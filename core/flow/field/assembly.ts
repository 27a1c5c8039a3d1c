/** Energy, residual and tangent of the discrete channel flow. */

import type { BandMatrix } from '../../math/bandedCholesky.ts';
import type { ChannelSpace } from './channelSpace.ts';
import { FLUID } from './quadrature.ts';
import { ROWS } from './strainRows.ts';

/** Dimensionless viscosity as seen by the assembly. */
export interface Rheology {
  /** Viscosity at a dimensionless shear rate. */
  viscosity(rate: number): number;
  /** Local index d ln(stress) / d ln(rate). */
  index(rate: number): number;
  /** Viscosity given to solid and springs. */
  readonly stiff: number;
}

/** Sums of one pass over the points. */
export interface Sums {
  /** Half-section integral of viscosity times shear rate squared, fluid only. */
  dissipation: number;
  /** Half-section integral of w. */
  flow: number;
}

/** Scratch of one assembly, kept between calls. */
export interface Workspace {
  readonly tangent: BandMatrix;
  readonly residual: Float64Array;
  readonly cellTangent: Float64Array;
  readonly cellResidual: Float64Array;
  readonly cellValues: Float64Array;
  readonly scaled: Float64Array;
}

/** Scratch for a space. */
export function workspace(space: ChannelSpace, tangent: BandMatrix): Workspace {
  const { local, dofs } = space;
  return {
    tangent,
    residual: new Float64Array(dofs),
    cellTangent: new Float64Array(local * local),
    cellResidual: new Float64Array(local),
    cellValues: new Float64Array(local),
    scaled: new Float64Array((ROWS + 1) * local),
  };
}

/**
 * Residual R = dJ/du and, if asked, tangent of J = half-section integral of (potential + load w).
 * @param coefs coefficients of both fields
 * @param load dimensionless pressure load on w
 * @param newton true for the full tangent, false for the secant (fixed viscosity) one
 */
export function assemble(
  space: ChannelSpace,
  rheology: Rheology,
  coefs: Float64Array,
  load: number,
  work: Workspace,
  mode: 'residual' | 'secant' | 'newton',
): Sums {
  const { residual, tangent, cellTangent, cellResidual, cellValues } = work;
  const { local, coefOf, first, size, dofOf, flux } = space;
  const sums: Sums = { dissipation: 0, flow: 0 };
  residual.fill(0);
  if (mode !== 'residual') tangent.values.fill(0);
  for (let c = 0; c + 1 < first.length; c++) {
    for (let a = 0; a < local; a++) cellValues[a] = coefs[coefOf[c * local + a]];
    cellResidual.fill(0);
    if (mode !== 'residual') cellTangent.fill(0);
    for (let q = first[c]; q < first[c + 1]; q++) addPoint(space, rheology, q, work, mode, sums);
    scatter(space, c, work, mode !== 'residual');
  }
  for (let k = 0; k < size; k++) {
    const dof = dofOf[size + k];
    if (dof >= 0) residual[dof] += load * flux[k];
    sums.flow += flux[k] * coefs[size + k];
  }
  return sums;
}

/** One point's share of the cell residual and tangent. */
function addPoint(
  space: ChannelSpace,
  rheology: Rheology,
  q: number,
  work: Workspace,
  mode: 'residual' | 'secant' | 'newton',
  sums: Sums,
): void {
  const { local, rows, kind, weight } = space;
  const { cellValues, cellResidual, scaled } = work;
  const base = q * ROWS * local;
  const top = ROWS * local;
  scaled.fill(0, top);
  let squared = 0;
  for (let m = 0; m < ROWS; m++) {
    const row = base + m * local;
    let strain = 0;
    for (let a = 0; a < local; a++) strain += rows[row + a] * cellValues[a];
    if (strain === 0) continue;
    squared += strain * strain;
    for (let a = 0; a < local; a++) scaled[top + a] += strain * rows[row + a];
  }
  const fluid = kind[q] === FLUID;
  const rate = Math.sqrt(squared);
  const viscosity = fluid ? rheology.viscosity(rate) : rheology.stiff;
  const factor = weight[q] * viscosity;
  if (fluid) sums.dissipation += factor * squared;
  for (let a = 0; a < local; a++) cellResidual[a] += factor * scaled[top + a];
  if (mode === 'residual') return;
  const bend = mode === 'newton' && fluid && squared > 0 ? (factor * (rheology.index(rate) - 1)) / squared : 0;
  for (let k = 0; k < top; k++) scaled[k] = rows[base + k];
  addOuter(work, local, factor, bend, space.shape.twist === 0 && fluid);
}

/** Adds factor * sum(row row^T) + bend * g g^T to the lower triangle of the cell tangent. */
function addOuter(work: Workspace, local: number, factor: number, bend: number, flat: boolean): void {
  if (flat) {
    addPair(work, local, factor, bend, 0, local / 2, 0);
    addPair(work, local, factor, bend, local / 2, local, 2);
    if (bend !== 0) addCoupling(work, local, bend);
    return;
  }
  const { cellTangent: t, scaled: r } = work;
  const [l2, l3, l4, l5] = [2 * local, 3 * local, 4 * local, 5 * local];
  for (let a = 0; a < local; a++) {
    const r0 = factor * r[a];
    const r1 = factor * r[local + a];
    const r2 = factor * r[l2 + a];
    const r3 = factor * r[l3 + a];
    const r4 = factor * r[l4 + a];
    const g = bend * r[l5 + a];
    const row = a * local;
    for (let b = 0; b <= a; b++) {
      t[row + b] +=
        r0 * r[b] + r1 * r[local + b] + (r2 * r[l2 + b] + r3 * r[l3 + b]) + (r4 * r[l4 + b] + g * r[l5 + b]);
    }
  }
}

/** The two rows of one field of a straight channel, which do not see the other field. */
function addPair(
  work: Workspace,
  local: number,
  factor: number,
  bend: number,
  from: number,
  to: number,
  row: number,
): void {
  const { cellTangent: t, scaled: r } = work;
  const [p, q, g] = [row * local, (row + 1) * local, ROWS * local];
  for (let a = from; a < to; a++) {
    const r0 = factor * r[p + a];
    const r1 = factor * r[q + a];
    const r2 = bend * r[g + a];
    const line = a * local;
    for (let b = from; b <= a; b++) t[line + b] += r0 * r[p + b] + r1 * r[q + b] + r2 * r[g + b];
  }
}

/** The block by which the viscosity couples the fields of a straight channel. */
function addCoupling(work: Workspace, local: number, bend: number): void {
  const { cellTangent: t, scaled: r } = work;
  const g = ROWS * local;
  for (let a = local / 2; a < local; a++) {
    const r0 = bend * r[g + a];
    const line = a * local;
    for (let b = 0; b < local / 2; b++) t[line + b] += r0 * r[g + b];
  }
}

/** Adds a cell to the global residual and tangent. */
function scatter(space: ChannelSpace, cell: number, work: Workspace, withTangent: boolean): void {
  const { local, coefOf, dofOf } = space;
  const { residual, cellResidual, cellTangent, tangent } = work;
  const stride = tangent.bandwidth + 1;
  for (let a = 0; a < local; a++) {
    const row = dofOf[coefOf[cell * local + a]];
    if (row < 0) continue;
    residual[row] += cellResidual[a];
    if (!withTangent) continue;
    for (let b = 0; b <= a; b++) {
      const column = dofOf[coefOf[cell * local + b]];
      if (column < 0) continue;
      // tied coefficients meet twice off the diagonal
      const share = row === column && a !== b ? 2 * cellTangent[a * local + b] : cellTangent[a * local + b];
      if (row >= column) tangent.values[row * stride + column - row + stride - 1] += share;
      else tangent.values[column * stride + row - column + stride - 1] += share;
    }
  }
}
