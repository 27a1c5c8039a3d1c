/** Discrete space of a half channel: splines for psi and w, which coefficients are free, and rows at all points. */

import type { SplineBasis } from '../../math/splineBasis.ts';
import { channelBases, type SpaceOptions } from './bases.ts';
import { rowPlan, stiffnessOf, writeRows } from './cellRows.ts';
import { cellJets, functionJet } from './jets.ts';
import { type CellPoint, cellPoints, FLUID, filletPoints } from './quadrature.ts';
import type { SectionShape } from './sectionShape.ts';
import { type Jet, ROWS } from './strainRows.ts';
import { bandPlaces, bandwidthOf, localCoefficients, numberUnknowns } from './unknowns.ts';

/** Points and deformation rows of one cell. Row k of function a is rows[a * count + k]. */
export interface SpaceCell {
  /** Kind of each point. */
  readonly kind: Uint8Array;
  /** Weight of the energy at each point (with r in a helical channel). */
  readonly weight: Float64Array;
  /** Number of rows. */
  readonly count: number;
  /** Rows below `bothFrom` see psi only, from `alongFrom` on w only. */
  readonly bothFrom: number;
  readonly alongFrom: number;
  /** Point of each row. */
  readonly pointOf: Int32Array;
  readonly rows: Float64Array;
}

/** Everything that depends on the shape alone. Coefficients of psi come first, then those of w, across-major. */
export interface ChannelSpace {
  readonly shape: SectionShape;
  readonly across: SplineBasis;
  readonly up: SplineBasis;
  /** Coefficients per field. */
  readonly size: number;
  /** Free unknown of a coefficient, -1 where it is fixed; tied coefficients share one. */
  readonly dofOf: Int32Array;
  readonly dofs: number;
  readonly bandwidth: number;
  /** Local functions per cell, both fields, psi first. */
  readonly local: number;
  /** Coefficient of each local function of each cell. */
  readonly coefOf: Int32Array;
  /** Place in the band matrix of each pair (a, b <= a) of each cell, see bandPlaces. */
  readonly places: Int32Array;
  readonly cells: readonly SpaceCell[];
  /** Integral of each function over half the fluid section, per coefficient of w. */
  readonly flux: Float64Array;
  /** Half the fluid section. */
  readonly area: number;
}

/**
 * Builds the space of a shape. About 5 to 20 ms; reusable for any law, speed and gradient.
 * @param shape valid shape, from sectionShape
 */
export function channelSpace(shape: SectionShape, options: SpaceOptions): ChannelSpace {
  const { across, up } = channelBases(shape, options);
  const size = across.count * up.count;
  const local = 2 * (options.degree + 1) ** 2;
  const { dofOf, dofs } = numberUnknowns(across, up);
  const coefOf = localCoefficients(across, up);
  const bandwidth = bandwidthOf(coefOf, dofOf, local);
  const places = bandPlaces(coefOf, dofOf, local, bandwidth);
  const base = { shape, across, up, size, dofOf, dofs, bandwidth, local, coefOf, places };
  const flux = new Float64Array(size);
  const points = allPoints(shape, across, up);
  const cells = points.map((list, c) => buildCell(base, c, list, flux));
  const area = points.flat().reduce((sum, point) => sum + (point.kind === FLUID ? point.weight : 0), 0);
  return { ...base, cells, flux, area };
}

type Base = Pick<ChannelSpace, 'shape' | 'across' | 'up' | 'size' | 'local' | 'coefOf'>;

/** Position of every row of every point in the cell's order: psi only, both, w only. */
function orderRows(points: readonly CellPoint[], helical: boolean): { position: number[][]; from: number[] } {
  const totals = [0, 0, 0];
  for (const { kind } of points) for (const sees of rowPlan(kind, helical).sees) totals[sees]++;
  const next = [0, totals[0], totals[0] + totals[1]];
  const from = [...next, totals[0] + totals[1] + totals[2]];
  const position = points.map(({ kind }) => rowPlan(kind, helical).sees.map((sees) => next[sees]++));
  return { position, from };
}

function buildCell(base: Base, c: number, points: readonly CellPoint[], flux: Float64Array): SpaceCell {
  const { position, from } = orderRows(points, base.shape.twist > 0);
  const cell: SpaceCell = {
    kind: Uint8Array.from(points, (point) => point.kind),
    weight: new Float64Array(points.length),
    count: from[3],
    bothFrom: from[1],
    alongFrom: from[2],
    pointOf: new Int32Array(from[3]),
    rows: new Float64Array(base.local * from[3]),
  };
  for (let q = 0; q < points.length; q++) fillPoint(base, cell, c, q, points[q], position[q], flux);
  return cell;
}

/** Writes rows, weight and flow of one point. */
function fillPoint(
  base: Base,
  cell: SpaceCell,
  c: number,
  q: number,
  at: CellPoint,
  position: readonly number[],
  flux: Float64Array,
): void {
  const { shape, across, up, local, size, coefOf } = base;
  const [ci, cj] = [Math.floor(c / up.cells), c % up.cells];
  const n = across.degree + 1;
  const half = local / 2;
  const jets = cellJets(shape, across, up, [ci, cj], at.s, at.y);
  const area = (across.breaks[ci + 1] - across.breaks[ci]) * (up.breaks[cj + 1] - up.breaks[cj]) * jets.halfWidth;
  const r = shape.twist > 0 ? shape.rootRadius + at.y : 1;
  const place = { kind: at.kind, r, twist: shape.twist, spacing: Math.sqrt(area) };
  const jet: Jet = { f: 0, fx: 0, fy: 0, fxx: 0, fxy: 0, fyy: 0 };
  const values = new Float64Array(2 * ROWS);
  const { index } = rowPlan(at.kind, shape.twist > 0);
  for (let a = 0; a < half; a++) {
    functionJet(jets, across.degree, Math.floor(a / n), a % n, jet);
    writeRows(jet, place, values);
    for (let m = 0; m < index.length; m++) {
      cell.rows[a * cell.count + position[m]] = values[index[m]];
      cell.rows[(half + a) * cell.count + position[m]] = values[ROWS + index[m]];
    }
    if (at.kind === FLUID) flux[coefOf[c * local + half + a] - size] += at.weight * jet.f;
  }
  for (const k of position) cell.pointOf[k] = q;
  cell.weight[q] = stiffnessOf(at.kind, place.spacing) * at.weight * r;
}

/** Points of all cells in order. */
function allPoints(shape: SectionShape, across: SplineBasis, up: SplineBasis): CellPoint[][] {
  const walls = filletPoints(shape, across, up);
  const out: CellPoint[][] = [];
  for (let ci = 0; ci < across.cells; ci++) {
    for (let cj = 0; cj < up.cells; cj++) {
      const box = [across.breaks[ci], across.breaks[ci + 1], up.breaks[cj], up.breaks[cj + 1]] as const;
      out.push([...cellPoints(shape, box, across.degree), ...(walls.get(out.length) ?? [])]);
    }
  }
  return out;
}
