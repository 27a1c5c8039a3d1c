/** Energy, residual and tangent of the discrete channel flow. */

import type { BandMatrix } from '../../math/bandedCholesky.ts';
import { type CellProducts, cellProducts, multiplyCell } from './cellProducts.ts';
import type { ChannelSpace, SpaceCell } from './channelSpace.ts';
import { FLUID } from './quadrature.ts';

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
  readonly products: CellProducts;
  /** Coefficients of the local functions. */
  readonly values: Float64Array;
  /** Deformation per row. */
  readonly strain: Float64Array;
  /** Per point: shear rate squared, then viscosity times weight. */
  readonly squared: Float64Array;
  readonly factor: Float64Array;
  /** Per point: change of the factor along the deformation. */
  readonly bend: Float64Array;
}

/** Scratch for a space. */
export function workspace(space: ChannelSpace, tangent: BandMatrix): Workspace {
  const rows = space.cells.reduce((most, cell) => Math.max(most, cell.count), 0);
  const points = space.cells.reduce((most, cell) => Math.max(most, cell.kind.length), 0);
  return {
    tangent,
    residual: new Float64Array(space.dofs),
    products: cellProducts(space.local, rows + points),
    values: new Float64Array(space.local),
    strain: new Float64Array(rows),
    squared: new Float64Array(points),
    factor: new Float64Array(points),
    bend: new Float64Array(points),
  };
}

/** What an assembly is for: the residual alone, or with the full tangent. */
export type AssemblyMode = 'residual' | 'newton';

/**
 * Residual R = dJ/du and, if asked, tangent of J = half-section integral of (potential + load w).
 * @param coefs coefficients of both fields
 * @param load dimensionless pressure load on w
 */
export function assemble(
  space: ChannelSpace,
  rheology: Rheology,
  coefs: Float64Array,
  load: number,
  work: Workspace,
  mode: AssemblyMode,
): Sums {
  const { residual, tangent } = work;
  const { size, dofOf, flux, cells } = space;
  const sums: Sums = { dissipation: 0, flow: 0 };
  residual.fill(0);
  if (mode === 'newton') tangent.values.fill(0);
  for (let c = 0; c < cells.length; c++) {
    strainOfCell(space, c, coefs, work);
    sums.dissipation += viscosityOfCell(cells[c], rheology, work);
    residualOfCell(space, c, work);
    if (mode === 'newton') tangentOfCell(space, c, work);
  }
  for (let k = 0; k < size; k++) {
    const dof = dofOf[size + k];
    if (dof >= 0) residual[dof] += load * flux[k];
    sums.flow += flux[k] * coefs[size + k];
  }
  return sums;
}

/** Deformation rows and shear rate squared of all points of a cell. */
function strainOfCell(space: ChannelSpace, c: number, coefs: Float64Array, work: Workspace): void {
  const { local, coefOf } = space;
  const { rows, count, bothFrom, alongFrom, pointOf, kind } = space.cells[c];
  const { values, strain, squared } = work;
  strain.fill(0, 0, count);
  squared.fill(0, 0, kind.length);
  for (let a = 0; a < local; a++) {
    const value = coefs[coefOf[c * local + a]];
    values[a] = value;
    const ofPsi = a < local / 2;
    const end = ofPsi ? alongFrom : count;
    for (let k = ofPsi ? 0 : bothFrom; k < end; k++) strain[k] += value * rows[a * count + k];
  }
  for (let k = 0; k < count; k++) squared[pointOf[k]] += strain[k] * strain[k];
}

/** Factors of all points of a cell; returns the fluid's dissipation. */
function viscosityOfCell(cell: SpaceCell, rheology: Rheology, work: Workspace): number {
  const { squared, factor, bend } = work;
  const { kind, weight } = cell;
  let dissipation = 0;
  for (let q = 0; q < kind.length; q++) {
    if (kind[q] !== FLUID) {
      factor[q] = weight[q] * rheology.stiff;
      bend[q] = 0;
      continue;
    }
    const rate = Math.sqrt(squared[q]);
    factor[q] = weight[q] * rheology.viscosity(rate);
    bend[q] = rate > 0 ? (factor[q] * (rheology.index(rate) - 1)) / squared[q] : 0;
    dissipation += factor[q] * squared[q];
  }
  return dissipation;
}

/** Adds a cell to the residual; leaves in `products.left` each function's rows times its points' factors. */
function residualOfCell(space: ChannelSpace, c: number, work: Workspace): void {
  const { local, coefOf, dofOf } = space;
  const { rows, count, bothFrom, alongFrom, pointOf } = space.cells[c];
  const { strain, factor, residual } = work;
  for (let a = 0; a < local; a++) {
    const dof = dofOf[coefOf[c * local + a]];
    if (dof < 0) continue;
    const ofPsi = a < local / 2;
    const end = ofPsi ? alongFrom : count;
    let sum = 0;
    for (let k = ofPsi ? 0 : bothFrom; k < end; k++) sum += factor[pointOf[k]] * strain[k] * rows[a * count + k];
    residual[dof] += sum;
  }
}

/** Adds a cell to the tangent: sum over rows of factor row row^T, and over points of bend g g^T with g = rows^T strain. */
function tangentOfCell(space: ChannelSpace, c: number, work: Workspace): void {
  const { local } = space;
  const { rows, count, bothFrom, alongFrom, pointOf, kind } = space.cells[c];
  const { products, strain, factor, bend } = work;
  const { left, right, stride } = products;
  const end = count + kind.length;
  for (let a = 0; a < local; a++) {
    const base = a * stride;
    right.fill(0, base + count, base + end);
    const ofPsi = a < local / 2;
    const last = ofPsi ? alongFrom : count;
    for (let k = ofPsi ? 0 : bothFrom; k < last; k++) {
      const value = rows[a * count + k];
      const q = pointOf[k];
      right[base + k] = value;
      left[base + k] = factor[q] * value;
      right[base + count + q] += value * strain[k];
    }
    for (let q = 0; q < kind.length; q++) left[base + count + q] = bend[q] * right[base + count + q];
  }
  multiplyCell(products, { bothFrom, alongFrom, count, end });
  scatterCell(space, c, work);
}

function scatterCell(space: ChannelSpace, c: number, work: Workspace): void {
  const { local, places } = space;
  const { values } = work.tangent;
  const { matrix } = work.products;
  let k = (c * local * (local + 1)) / 2;
  for (let a = 0; a < local; a++) {
    const row = a * local;
    for (let b = 0; b <= a; b++) {
      const place = places[k++];
      if (place >= 0) values[place] += matrix[row + b];
      else if (place < -1) values[-2 - place] += 2 * matrix[row + b];
    }
  }
}
