/** Symmetric products of the rows of a cell: lower triangle of left right^T, two by two functions at a time. */

/** Vectors of all local functions, one after the other at a stride, and their products. */
export interface CellProducts {
  readonly local: number;
  readonly stride: number;
  readonly left: Float64Array;
  readonly right: Float64Array;
  /** local x local, lower triangle in use. */
  readonly matrix: Float64Array;
  /** First of each pair of functions; pairs stay within a field, so the last of an odd number overlaps its neighbour. */
  readonly starts: Int32Array;
}

/** Scratch for the functions of both fields and vectors of a greatest length. */
export function cellProducts(local: number, longest: number): CellProducts {
  const half = local / 2;
  const starts: number[] = [];
  for (let field = 0; field < 2; field++) {
    for (let i = 0; i < half; i += 2) starts.push(field * half + Math.min(i, half - 2));
  }
  return {
    local,
    stride: longest,
    left: new Float64Array(local * longest),
    right: new Float64Array(local * longest),
    matrix: new Float64Array(local * local),
    starts: Int32Array.from(starts),
  };
}

/** Parts of the vectors: psi only, both, w only, then the bending part, which all functions see. */
export interface RowRanges {
  readonly bothFrom: number;
  readonly alongFrom: number;
  readonly count: number;
  readonly end: number;
}

/** Fills the lower triangle of the matrix. The functions of psi are the first half. */
export function multiplyCell(products: CellProducts, ranges: RowRanges): void {
  const { starts } = products;
  const half = products.local / 2;
  const { bothFrom, alongFrom, count, end } = ranges;
  for (let i = 0; i < starts.length; i++) {
    const a = starts[i];
    for (let j = 0; j <= i; j++) {
      const b = starts[j];
      const from = a < half ? 0 : bothFrom;
      const to = b < half ? alongFrom : count;
      block(products, a, b, from, to, count, end);
    }
  }
}

/** Four products of functions a, a + 1 and b, b + 1 over two index ranges. */
function block(
  products: CellProducts,
  a: number,
  b: number,
  from: number,
  to: number,
  from2: number,
  to2: number,
): void {
  const { left, right, stride, matrix, local } = products;
  const a0 = a * stride;
  const a1 = a0 + stride;
  const b0 = b * stride;
  const b1 = b0 + stride;
  let s00 = 0;
  let s01 = 0;
  let s10 = 0;
  let s11 = 0;
  for (let range = 0; range < 2; range++) {
    const last = range === 0 ? to : to2;
    for (let k = range === 0 ? from : from2; k < last; k++) {
      const l0 = left[a0 + k];
      const l1 = left[a1 + k];
      const r0 = right[b0 + k];
      const r1 = right[b1 + k];
      s00 += l0 * r0;
      s01 += l0 * r1;
      s10 += l1 * r0;
      s11 += l1 * r1;
    }
  }
  matrix[a * local + b] = s00;
  matrix[a * local + b + 1] = s01;
  matrix[(a + 1) * local + b] = s10;
  matrix[(a + 1) * local + b + 1] = s11;
}
