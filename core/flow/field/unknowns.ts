/** Numbering of the spline coefficients of a half channel. */

import type { SplineBasis } from '../../math/splineBasis.ts';

/** Numbers the free coefficients, short direction fastest, psi and w of a place side by side. */
export function numberUnknowns(across: SplineBasis, up: SplineBasis): { dofOf: Int32Array; dofs: number } {
  const nx = across.count;
  const ny = up.count;
  const dofOf = new Int32Array(2 * nx * ny).fill(-1);
  const acrossOuter = ny <= nx;
  let dofs = 0;
  for (let outer = 0; outer < (acrossOuter ? nx : ny); outer++) {
    for (let inner = 0; inner < (acrossOuter ? ny : nx); inner++) {
      const [i, j] = acrossOuter ? [outer, inner] : [inner, outer];
      // even in x: the last two columns are equal; the last follows
      if (i === nx - 1) continue;
      const place = i * ny + j;
      if (i > 1 && j > 1 && j < ny - 2) dofOf[place] = dofs++;
      if (i > 0 && j > 0 && j < ny - 1) dofOf[nx * ny + place] = dofs++;
    }
  }
  for (let field = 0; field < 2; field++) {
    const start = field * nx * ny;
    for (let j = 0; j < ny; j++) dofOf[start + (nx - 1) * ny + j] = dofOf[start + (nx - 2) * ny + j];
  }
  return { dofOf, dofs };
}

/** Coefficients of both fields for each cell. */
export function localCoefficients(across: SplineBasis, up: SplineBasis): Int32Array {
  const n = across.degree + 1;
  const local = 2 * n * n;
  const out = new Int32Array(across.cells * up.cells * local);
  let k = 0;
  for (let ci = 0; ci < across.cells; ci++) {
    for (let cj = 0; cj < up.cells; cj++) {
      for (let field = 0; field < 2; field++) {
        for (let i = 0; i < n; i++) {
          for (let j = 0; j < n; j++) out[k++] = (field * across.count + ci + i) * up.count + cj + j;
        }
      }
    }
  }
  return out;
}

/** Largest distance of two free unknowns of one cell. */
export function bandwidthOf(coefOf: Int32Array, dofOf: Int32Array, local: number): number {
  let widest = 0;
  for (let cell = 0; cell < coefOf.length; cell += local) {
    let low = Number.POSITIVE_INFINITY;
    let high = -1;
    for (let a = 0; a < local; a++) {
      const dof = dofOf[coefOf[cell + a]];
      if (dof < 0) continue;
      low = Math.min(low, dof);
      high = Math.max(high, dof);
    }
    if (high >= 0) widest = Math.max(widest, high - low);
  }
  return widest;
}

/**
 * Place in a band matrix's values of each pair (a, b <= a) of local functions of each cell, pairs in order of a then b:
 * the place itself; -1 for a fixed coefficient; -2 - place where two tied coefficients meet off the diagonal, which counts
 * twice.
 */
export function bandPlaces(coefOf: Int32Array, dofOf: Int32Array, local: number, bandwidth: number): Int32Array {
  const pairs = (local * (local + 1)) / 2;
  const out = new Int32Array((coefOf.length / local) * pairs);
  let k = 0;
  for (let cell = 0; cell < coefOf.length; cell += local) {
    for (let a = 0; a < local; a++) {
      const row = dofOf[coefOf[cell + a]];
      for (let b = 0; b <= a; b++) {
        const column = dofOf[coefOf[cell + b]];
        const [high, low] = row > column ? [row, column] : [column, row];
        const place = high * (bandwidth + 1) + low - high + bandwidth;
        if (low < 0) out[k++] = -1;
        else out[k++] = row === column && a !== b ? -2 - place : place;
      }
    }
  }
  return out;
}
