/** Deformation rows of all points of a cell, laid out so that the cell's matrix is a product of contiguous vectors. */

import { FLUID, SOLID, WALL } from './quadrature.ts';
import { flatRows, helicalRows, type Jet, ROWS } from './strainRows.ts';

/** Which fields a row sees: only psi, both, only w. Rows of a cell are kept in this order. */
const PSI = 0;
const BOTH = 1;
const ALONG = 2;

/** Rows of one kind of point: index into the row values, and the fields that each sees. */
export interface RowPlan {
  readonly index: readonly number[];
  readonly sees: readonly number[];
}

const FLAT_PLAN: RowPlan = { index: [0, 1, 2, 3], sees: [PSI, PSI, ALONG, ALONG] };
const HELICAL_PLAN: RowPlan = { index: [0, 1, 2, 3, 4], sees: [PSI, BOTH, BOTH, BOTH, BOTH] };
const SPRING_PLAN: RowPlan = { index: [0, 1, 2, 3], sees: [PSI, PSI, PSI, ALONG] };

/** Plan of a point. */
export function rowPlan(kind: number, helical: boolean): RowPlan {
  if (kind === WALL) return SPRING_PLAN;
  return helical ? HELICAL_PLAN : FLAT_PLAN;
}

/** Place of a point in a channel. */
export interface RowPlace {
  readonly kind: number;
  /** Radius in depths (1 in a straight channel). */
  readonly r: number;
  /** 2 pi / lead times depth, 0 in a straight channel. */
  readonly twist: number;
  /** Local cell size, for springs. */
  readonly spacing: number;
}

/** Row values of one function used as psi (out[0..ROWS-1]) and as w (the rest). */
export function writeRows(jet: Jet, place: RowPlace, out: Float64Array): void {
  if (place.kind === WALL) springRows(jet, place.r, place.spacing, out);
  else if (place.twist > 0) helicalRows(jet, place.r, place.twist, out);
  else flatRows(jet, out);
}

/** Rows whose squares are the velocities (and, scaled, psi itself) that a fillet holds to zero. */
function springRows(jet: Jet, r: number, spacing: number, out: Float64Array): void {
  out.fill(0);
  out[0] = jet.fx / r;
  out[1] = jet.fy / r;
  out[2] = (3 * jet.f) / (r * spacing);
  out[ROWS + 3] = jet.f;
}

/** Stiffness of the solid behind a fillet against the fluid's, and of the springs that hold its surface. */
const SOLID_STIFFNESS = 1e-5;
/** Balances slip of soft springs against locking of stiff ones: half pipe within 0.2 % on the standard mesh. */
const WALL_STIFFNESS = 100;

/** Factor on the energy of a point of a kind. */
export function stiffnessOf(kind: number, spacing: number): number {
  if (kind === FLUID) return 1;
  return kind === SOLID ? SOLID_STIFFNESS : WALL_STIFFNESS / spacing;
}
