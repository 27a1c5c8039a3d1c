/** Multifrontal factors of finite-element systems (after Duff & Reid 1983), dense typed-array kernels, no pivoting. */

import type { Dissection, Front } from './sparseDissection.ts';
import { type Dense, dot, eliminate } from './sparseKernels.ts';

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

function addElements(
  front: Front,
  dissection: Dissection,
  matrix: ElementMatrix,
  place: Int32Array,
  dense: Dense,
  block: Float64Array,
): void {
  const { perElement: n, unknowns } = dissection.graph;
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

/** Adds what a child passes on; within it, lower holds i >= j and upper holds i < j. */
function addChild(child: Front, stack: FrontalStore['stack'], at: number, place: Int32Array, dense: Dense): void {
  const { eliminated: start, unknowns } = child;
  const { size } = dense;
  const rest = unknowns.length - start;
  const symmetric = dense.upper === dense.lower;
  const [lower, upper] = stack;
  for (let i = 0; i < rest; i++) {
    const row = place[unknowns[start + i]];
    for (let j = 0; j <= i; j++) {
      const column = place[unknowns[start + j]];
      const low = lower[at + i * rest + j];
      if (symmetric) dense.lower[row > column ? row * size + column : column * size + row] += low;
      else {
        addAt(dense, row, column, low);
        if (i !== j) addAt(dense, column, row, upper[at + i * rest + j]);
      }
    }
  }
}

function addAt(dense: Dense, row: number, column: number, value: number): void {
  if (column <= row) dense.lower[row * dense.size + column] += value;
  else dense.upper[column * dense.size + row] += value;
}

/** Copies the first `count` columns. */
function keepColumns(rows: Float64Array, size: number, count: number, out: Float64Array): void {
  for (let i = 0; i < size; i++) {
    const from = i * size;
    const to = i * count;
    for (let j = 0; j < count; j++) out[to + j] = rows[from + j];
  }
}

/** Copies what a front passes on: the lower half of the block behind the eliminated rows and columns. */
function keepRest(rows: Float64Array, size: number, done: number, out: Float64Array, at: number): void {
  const rest = size - done;
  for (let i = 0; i < rest; i++) {
    const from = (i + done) * size + done;
    const to = at + i * rest;
    for (let j = 0; j <= i; j++) out[to + j] = rows[from + j];
  }
}

/** Memory of a factorisation, so that the next one of the same system need not ask for it again. */
export interface FrontalStore {
  readonly symmetric: boolean;
  readonly lower: readonly Float64Array[];
  readonly upper: readonly Float64Array[];
  /** One front being worked on, and the remainders waiting for their parents, each for the lower and upper half */
  readonly scratch: readonly [Float64Array, Float64Array];
  readonly stack: readonly [Float64Array, Float64Array];
}

/** Most numbers that wait at once: children leave the stack before their parent's remainder enters. */
function stackSize(dissection: Dissection): number {
  const { fronts } = dissection;
  const rest = (front: Front): number => (front.unknowns.length - front.eliminated) ** 2;
  let used = 0;
  let most = 0;
  for (const front of fronts) {
    for (const child of front.children) used -= rest(fronts[child]);
    used += rest(front);
    most = Math.max(most, used);
  }
  return most;
}

/** Memory for factoring a system any number of times. */
export function frontalStore(dissection: Dissection, symmetric: boolean): FrontalStore {
  const { fronts, largestFront } = dissection;
  const columns = (): Float64Array[] =>
    fronts.map((front) => new Float64Array(front.unknowns.length * front.eliminated));
  const twice = (size: number): [Float64Array, Float64Array] => {
    const first = new Float64Array(size);
    return [first, symmetric ? first : new Float64Array(size)];
  };
  const lower = columns();
  const upper = symmetric ? lower : columns();
  return { symmetric, lower, upper, scratch: twice(largestFront * largestFront), stack: twice(stackSize(dissection)) };
}

/**
 * Factors a system given by its element matrices.
 * @param dissection from `dissect`
 * @param matrix element matrices; only the lower half is read for a symmetric system
 * @param store from `frontalStore`, whose symmetry decides: true Cholesky (positive definite), false LU without
 * pivoting (positive symmetric part). Factors made earlier with the same store are overwritten.
 */
export function factorFrontal(dissection: Dissection, matrix: ElementMatrix, store: FrontalStore): FrontalFactor {
  const { fronts, graph } = dissection;
  const { symmetric, lower, upper, scratch, stack } = store;
  const place = new Int32Array(graph.unknownCount);
  const block = new Float64Array(graph.perElement ** 2);
  let top = 0;
  let sound = true;
  fronts.forEach((front, f) => {
    const { unknowns, eliminated, children } = front;
    const size = unknowns.length;
    for (const half of scratch) half.fill(0, 0, size * size);
    const dense: Dense = { size, lower: scratch[0], upper: scratch[1] };
    for (let i = 0; i < size; i++) place[unknowns[i]] = i;
    addElements(front, dissection, matrix, place, dense, block);
    for (let c = children.length - 1; c >= 0; c--) {
      const child = fronts[children[c]];
      top -= (child.unknowns.length - child.eliminated) ** 2;
      addChild(child, stack, top, place, dense);
    }
    sound = eliminate(dense, eliminated, symmetric) && sound;
    keepColumns(dense.lower, size, eliminated, lower[f]);
    keepRest(dense.lower, size, eliminated, stack[0], top);
    if (!symmetric) {
      keepColumns(dense.upper, size, eliminated, upper[f]);
      keepRest(dense.upper, size, eliminated, stack[1], top);
    }
    top += (size - eliminated) ** 2;
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
