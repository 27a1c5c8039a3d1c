/** Multifrontal factors of finite-element systems (after Duff & Reid 1983), dense typed-array kernels, no pivoting. */

import type { Dissection, Front } from './sparseDissection.ts';

/** Writes the dense matrix of one element, row-major over its `perElement` unknowns. */
export type ElementMatrix = (element: number, out: Float64Array) => void;

/** A factored system. */
export interface FrontalFactor {
  readonly dissection: Dissection;
  /** Rows of L (Cholesky) or unit-upper Crout L, `eliminated` columns per front unknown. */
  readonly lower: readonly Float64Array[];
  /** Columns of the upper factor stored as rows; the same arrays as `lower` for a symmetric system. */
  readonly upper: readonly Float64Array[];
  readonly symmetric: boolean;
  /** False if a pivot vanished (or was not positive in a symmetric system). */
  readonly sound: boolean;
}

/** Dense work of one front: `lower` holds rows on and below the diagonal, `upper` columns on and above, as rows. */
interface Dense {
  readonly size: number;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
}

/** sum over k < n of a[p + k] b[q + k] */
function dot(a: Float64Array, p: number, b: Float64Array, q: number, n: number): number {
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
function eliminate(dense: Dense, done: number, symmetric: boolean): boolean {
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

function addElements(
  front: Front,
  dissection: Dissection,
  matrix: ElementMatrix,
  place: Int32Array,
  dense: Dense,
): void {
  const { perElement: n, unknowns } = dissection.graph;
  const block = new Float64Array(n * n);
  for (const e of front.elements) {
    matrix(e, block);
    for (let a = 0; a < n; a++) {
      const row = unknowns[e * n + a] < 0 ? -1 : place[unknowns[e * n + a]];
      if (row < 0) continue;
      for (let b = 0; b < n; b++) {
        const column = unknowns[e * n + b] < 0 ? -1 : place[unknowns[e * n + b]];
        if (column < 0) continue;
        if (column <= row) dense.lower[row * dense.size + column] += block[a * n + b];
        else if (dense.upper !== dense.lower) dense.upper[column * dense.size + row] += block[a * n + b];
      }
    }
  }
}

/** Adds a child's Schur part; within it, lower holds i >= j and upper holds i < j. */
function addChild(child: Front, part: Dense, place: Int32Array, dense: Dense): void {
  const start = child.eliminated;
  const { size } = dense;
  const symmetric = dense.upper === dense.lower;
  for (let i = start; i < part.size; i++) {
    const row = place[child.unknowns[i]];
    for (let j = start; j <= i; j++) {
      const column = place[child.unknowns[j]];
      const low = part.lower[i * part.size + j];
      if (symmetric) dense.lower[row > column ? row * size + column : column * size + row] += low;
      else {
        addAt(dense, row, column, low);
        if (i !== j) addAt(dense, column, row, part.upper[i * part.size + j]);
      }
    }
  }
}

function addAt(dense: Dense, row: number, column: number, value: number): void {
  if (column <= row) dense.lower[row * dense.size + column] += value;
  else dense.upper[column * dense.size + row] += value;
}

function firstColumns(rows: Float64Array, size: number, count: number): Float64Array {
  const kept = new Float64Array(size * count);
  for (let i = 0; i < size; i++) kept.set(rows.subarray(i * size, i * size + count), i * count);
  return kept;
}

/**
 * Factors a system given by its element matrices.
 * @param dissection from `dissect`
 * @param matrix element matrices; only the lower half is read for a symmetric system
 * @param symmetric true: Cholesky (positive definite); false: LU without pivoting (positive symmetric part)
 */
export function factorFrontal(dissection: Dissection, matrix: ElementMatrix, symmetric: boolean): FrontalFactor {
  const { fronts, graph } = dissection;
  const place = new Int32Array(graph.unknownCount);
  const parts = new Map<number, Dense>();
  const lower: Float64Array[] = [];
  const upper: Float64Array[] = [];
  let sound = true;
  fronts.forEach((front, f) => {
    const size = front.unknowns.length;
    const rows = new Float64Array(size * size);
    const dense: Dense = { size, lower: rows, upper: symmetric ? rows : new Float64Array(size * size) };
    front.unknowns.forEach((u, i) => {
      place[u] = i;
    });
    addElements(front, dissection, matrix, place, dense);
    for (const child of front.children) {
      addChild(fronts[child], parts.get(child) as Dense, place, dense);
      parts.delete(child);
    }
    sound = eliminate(dense, front.eliminated, symmetric) && sound;
    lower.push(firstColumns(dense.lower, size, front.eliminated));
    upper.push(symmetric ? (lower[f] as Float64Array) : firstColumns(dense.upper, size, front.eliminated));
    parts.set(f, dense);
  });
  return { dissection, lower, upper, symmetric, sound };
}

/** Front part of the right-hand side, reused. */
function gathered(front: Front, x: Float64Array, out: Float64Array): void {
  for (let i = 0; i < front.unknowns.length; i++) out[i] = x[front.unknowns[i]];
}

function forward(front: Front, rows: Float64Array, x: Float64Array, y: Float64Array): void {
  const { unknowns, eliminated: n } = front;
  gathered(front, x, y);
  for (let i = 0; i < unknowns.length; i++) {
    const value = y[i] - dot(rows, i * n, y, 0, Math.min(i, n));
    y[i] = i < n ? value / rows[i * n + i] : value;
    x[unknowns[i]] = y[i];
  }
}

function backward(front: Front, rows: Float64Array, symmetric: boolean, x: Float64Array, y: Float64Array): void {
  const { unknowns, eliminated: n } = front;
  gathered(front, x, y);
  for (let i = unknowns.length - 1; i >= 0; i--) {
    if (i < n && symmetric) y[i] /= rows[i * n + i];
    const value = y[i];
    const from = i * n;
    for (let j = Math.min(i, n) - 1; j >= 0; j--) y[j] -= rows[from + j] * value;
    if (i < n) x[unknowns[i]] = value;
  }
}

/**
 * Solves with a factored system.
 * @param x right-hand side on entry, solution on return
 */
export function solveFrontal(factor: FrontalFactor, x: Float64Array): void {
  const { fronts, largestFront } = factor.dissection;
  const y = new Float64Array(largestFront);
  for (let f = 0; f < fronts.length; f++) forward(fronts[f], factor.lower[f], x, y);
  for (let f = fronts.length - 1; f >= 0; f--) backward(fronts[f], factor.upper[f], factor.symmetric, x, y);
}
