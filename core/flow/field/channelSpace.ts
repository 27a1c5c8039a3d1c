/** Discrete space of a half channel: splines for psi and w, which coefficients are free, and rows at all points. */

import type { SplineBasis } from '../../math/splineBasis.ts';
import { channelBases, type SpaceOptions } from './bases.ts';
import { cellJets, functionJet } from './jets.ts';
import { type CellPoint, cellPoints, FLUID, filletPoints, SOLID, WALL } from './quadrature.ts';
import type { SectionShape } from './sectionShape.ts';
import { flatRows, helicalRows, type Jet, ROWS } from './strainRows.ts';
import { bandwidthOf, localCoefficients, numberUnknowns } from './unknowns.ts';

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
  /** Local functions per cell, both fields. */
  readonly local: number;
  /** Coefficient of each local function of each cell. */
  readonly coefOf: Int32Array;
  /** First point of each cell; one more entry than cells. */
  readonly first: Int32Array;
  readonly kind: Uint8Array;
  /** Weight of the energy at a point (with r in a helical channel). */
  readonly weight: Float64Array;
  /** ROWS x local numbers per point. */
  readonly rows: Float64Array;
  /** Integral of each function over half the fluid section, per coefficient of w. */
  readonly flux: Float64Array;
  /** Half the fluid section, and its integral of r (equal to it in a straight channel). */
  readonly area: number;
  readonly volume: number;
}

/** Stiffness of the solid behind a fillet against the fluid's, and of the springs that hold its surface. */
const SOLID_STIFFNESS = 1e-5;
const WALL_STIFFNESS = 100;

/** Mutable tables while they are filled. */
interface Tables {
  readonly kind: Uint8Array;
  readonly weight: Float64Array;
  readonly rows: Float64Array;
  readonly flux: Float64Array;
  area: number;
  volume: number;
}

/**
 * Builds the space of a shape. About 2 to 20 ms; reusable for any law, speed and gradient.
 * @param shape valid shape, from sectionShape
 */
export function channelSpace(shape: SectionShape, options: SpaceOptions): ChannelSpace {
  const { across, up } = channelBases(shape, options);
  const size = across.count * up.count;
  const local = 2 * (options.degree + 1) ** 2;
  const { dofOf, dofs } = numberUnknowns(across, up);
  const coefOf = localCoefficients(across, up);
  const cells = allPoints(shape, across, up);
  const first = new Int32Array(cells.length + 1);
  for (let c = 0; c < cells.length; c++) first[c + 1] = first[c] + cells[c].length;
  const count = first[cells.length];
  const tables: Tables = {
    kind: new Uint8Array(count),
    weight: new Float64Array(count),
    rows: new Float64Array(count * ROWS * local),
    flux: new Float64Array(size),
    area: 0,
    volume: 0,
  };
  const space = {
    shape,
    across,
    up,
    size,
    dofOf,
    dofs,
    bandwidth: bandwidthOf(coefOf, dofOf, local),
    local,
    coefOf,
    first,
  };
  for (let c = 0; c < cells.length; c++) {
    for (let k = 0; k < cells[c].length; k++) fillPoint(space, tables, c, first[c] + k, cells[c][k]);
  }
  return { ...space, ...tables };
}

/** Writes rows, weight and sums of one point. */
function fillPoint(
  space: Pick<ChannelSpace, 'shape' | 'across' | 'up' | 'size' | 'local' | 'coefOf'>,
  tables: Tables,
  cell: number,
  point: number,
  at: CellPoint,
): void {
  const { shape, across, up, local } = space;
  const [ci, cj] = [Math.floor(cell / up.cells), cell % up.cells];
  const n = across.degree + 1;
  const half = local / 2;
  const r = shape.twist > 0 ? shape.rootRadius + at.y : 1;
  const jets = cellJets(shape, across, up, [ci, cj], at.s, at.y);
  const jet: Jet = { f: 0, fx: 0, fy: 0, fxx: 0, fxy: 0, fyy: 0 };
  const parts = new Float64Array(2 * ROWS);
  const spacing = Math.sqrt(cellArea(across, up, ci, cj) * jets.halfWidth);
  for (let a = 0; a < half; a++) {
    functionJet(jets, across.degree, Math.floor(a / n), a % n, jet);
    if (at.kind === WALL) springRows(jet, r, spacing, parts);
    else if (shape.twist > 0) helicalRows(jet, r, shape.twist, parts);
    else flatRows(jet, parts);
    for (let m = 0; m < ROWS; m++) {
      tables.rows[(point * ROWS + m) * local + a] = parts[m];
      tables.rows[(point * ROWS + m) * local + half + a] = parts[ROWS + m];
    }
    if (at.kind === FLUID) tables.flux[space.coefOf[cell * local + half + a] - space.size] += at.weight * jet.f;
  }
  tables.kind[point] = at.kind;
  const stiffness = at.kind === FLUID ? 1 : at.kind === SOLID ? SOLID_STIFFNESS : WALL_STIFFNESS / spacing;
  tables.weight[point] = stiffness * at.weight * r;
  if (at.kind === FLUID) {
    tables.area += at.weight;
    tables.volume += at.weight * r;
  }
}

function cellArea(across: SplineBasis, up: SplineBasis, ci: number, cj: number): number {
  return (across.breaks[ci + 1] - across.breaks[ci]) * (up.breaks[cj + 1] - up.breaks[cj]);
}

/** Rows whose squares are the velocities (and, scaled, psi itself) that a fillet holds to zero. */
function springRows(jet: Jet, r: number, spacing: number, out: Float64Array): void {
  out.fill(0);
  out[0] = jet.fx / r;
  out[1] = jet.fy / r;
  out[2] = (3 * jet.f) / (r * spacing);
  out[ROWS + 3] = jet.f;
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
