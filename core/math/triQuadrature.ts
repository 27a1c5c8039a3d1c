/** Seven-point rule on a triangle and the quadratic-plus-bubble shape functions tabulated at its points. */

const A = 0.101286507323456;
const B = 0.470142064105115;
const WEIGHT_A = 0.125939180544827;
const WEIGHT_B = 0.132394152788506;

/** Points of the rule: exact to degree 5 (Radon 1948). */
export const POINT_COUNT = 7;

/** Barycentric coordinates of the points, three per point. */
export const POINT_BARYCENTRIC: readonly number[] = [
  [1 / 3, 1 / 3, 1 / 3],
  [1 - 2 * A, A, A],
  [A, 1 - 2 * A, A],
  [A, A, 1 - 2 * A],
  [1 - 2 * B, B, B],
  [B, 1 - 2 * B, B],
  [B, B, 1 - 2 * B],
].flat();

/** Weights; they sum to 1, so multiply by the triangle's area. */
export const POINT_WEIGHT: readonly number[] = [0.225, WEIGHT_A, WEIGHT_A, WEIGHT_A, WEIGHT_B, WEIGHT_B, WEIGHT_B];

/** Shape functions: 6 quadratic (3 corners, then middles opposite corner 0, 1, 2) and the cubic bubble. */
export const SHAPE_COUNT = 7;

/**
 * Values of the seven shape functions.
 * @param l0 barycentric coordinate of corner 0
 * @param l1 barycentric coordinate of corner 1
 * @param out receives SHAPE_COUNT values from `at`
 */
function shapeValues(l0: number, l1: number, out: Float64Array, at = 0): void {
  const l2 = 1 - l0 - l1;
  out[at] = l0 * (2 * l0 - 1);
  out[at + 1] = l1 * (2 * l1 - 1);
  out[at + 2] = l2 * (2 * l2 - 1);
  out[at + 3] = 4 * l1 * l2;
  out[at + 4] = 4 * l2 * l0;
  out[at + 5] = 4 * l0 * l1;
  out[at + 6] = 27 * l0 * l1 * l2;
}

/**
 * Derivatives of the shape functions with respect to the three barycentric coordinates taken as independent.
 * @param l0 barycentric coordinate of corner 0
 * @param l1 barycentric coordinate of corner 1
 * @param out receives 3 values per shape function from `at`
 */
function shapeSlopes(l0: number, l1: number, out: Float64Array, at = 0): void {
  const l2 = 1 - l0 - l1;
  const rows = [
    [4 * l0 - 1, 0, 0],
    [0, 4 * l1 - 1, 0],
    [0, 0, 4 * l2 - 1],
    [0, 4 * l2, 4 * l1],
    [4 * l2, 0, 4 * l0],
    [4 * l1, 4 * l0, 0],
    [27 * l1 * l2, 27 * l0 * l2, 27 * l0 * l1],
  ];
  out.set(rows.flat(), at);
}

function tabulate(width: number, fill: (l0: number, l1: number, out: Float64Array, at: number) => void): Float64Array {
  const table = new Float64Array(POINT_COUNT * width);
  for (let q = 0; q < POINT_COUNT; q++) fill(POINT_BARYCENTRIC[3 * q], POINT_BARYCENTRIC[3 * q + 1], table, q * width);
  return table;
}

/** Shape values at the points: [point][shape]. */
export const POINT_SHAPE = tabulate(SHAPE_COUNT, shapeValues);

/** Shape slopes at the points: [point][shape][barycentric coordinate]. */
export const POINT_SLOPE = tabulate(3 * SHAPE_COUNT, shapeSlopes);
