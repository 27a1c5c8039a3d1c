/** Dense kernels of the multifrontal factors. */

/** Dense work of one front: `lower` holds rows on and below the diagonal, `upper` columns on and above, as rows. */
export interface Dense {
  readonly size: number;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
}

/** sum over k < n of a[p + k] b[q + k] */
export function dot(a: Float64Array, p: number, b: Float64Array, q: number, n: number): number {
  let s0 = 0;
  let s1 = 0;
  let k = 0;
  for (; k + 3 < n; k += 4) {
    s0 += a[p + k] * b[q + k] + a[p + k + 1] * b[q + k + 1];
    s1 += a[p + k + 2] * b[q + k + 2] + a[p + k + 3] * b[q + k + 3];
  }
  for (; k < n; k++) s0 += a[p + k] * b[q + k];
  return s0 + s1;
}

const quad = new Float64Array(4);

/** Four dot products of rows p, p + step, ... of `a` with one row of `b`. */
function dot4(a: Float64Array, p: number, step: number, b: Float64Array, q: number, n: number): void {
  const p1 = p + step;
  const p2 = p1 + step;
  const p3 = p2 + step;
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  for (let k = 0; k < n; k++) {
    const v = b[q + k];
    s0 += a[p + k] * v;
    s1 += a[p1 + k] * v;
    s2 += a[p2 + k] * v;
    s3 += a[p3 + k] * v;
  }
  quad[0] = s0;
  quad[1] = s1;
  quad[2] = s2;
  quad[3] = s3;
}

/** rows[i][j] -= rows[i] . other[j] over min(j, done) entries for rows from `from`, all columns up to `upTo(i)`. */
function reduceColumn(
  rows: Float64Array,
  other: Float64Array,
  size: number,
  j: number,
  done: number,
  from: number,
): void {
  const n = Math.min(j, done);
  if (n === 0) return;
  let i = from;
  for (; i + 3 < size; i += 4) {
    dot4(rows, i * size, size, other, j * size, n);
    rows[i * size + j] -= quad[0];
    rows[(i + 1) * size + j] -= quad[1];
    rows[(i + 2) * size + j] -= quad[2];
    rows[(i + 3) * size + j] -= quad[3];
  }
  for (; i < size; i++) rows[i * size + j] -= dot(rows, i * size, other, j * size, n);
}

/** Crout LU (or Cholesky when both halves are one array) of the first `done` columns; the rest becomes the Schur part. */
export function eliminate(dense: Dense, done: number, symmetric: boolean): boolean {
  const { size, lower, upper } = dense;
  let sound = true;
  for (let j = 0; j < size; j++) {
    reduceColumn(lower, upper, size, j, done, j);
    if (!symmetric) reduceColumn(upper, lower, size, j, done, j + 1);
    if (j >= done) continue;
    const pivot = lower[j * size + j];
    if (symmetric ? !(pivot > 0) : !(Math.abs(pivot) > 1e-300)) sound = false;
    const scale = 1 / (symmetric ? Math.sqrt(pivot) : pivot);
    if (symmetric) for (let i = j; i < size; i++) lower[i * size + j] *= scale;
    else for (let i = j + 1; i < size; i++) upper[i * size + j] *= scale;
  }
  return sound;
}
