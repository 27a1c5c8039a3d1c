/** B-spline bases of one variable with simple inner knots (smoothness degree - 1). */

/** A basis over breakpoints 0 = b0 < b1 < ... with clamped ends. */
export interface SplineBasis {
  readonly degree: number;
  readonly breaks: Float64Array;
  readonly knots: Float64Array;
  /** Number of basis functions: cells + degree. */
  readonly count: number;
  /** Number of cells. */
  readonly cells: number;
}

/** Basis of a degree (1 to 5) over strictly increasing breakpoints. */
export function splineBasis(breaks: Float64Array, degree: number): SplineBasis {
  const cells = breaks.length - 1;
  const knots = new Float64Array(cells + 1 + 2 * degree);
  for (let k = 0; k < knots.length; k++) knots[k] = breaks[Math.min(cells, Math.max(0, k - degree))];
  return { degree, breaks, knots, count: cells + degree, cells };
}

/** Index of the cell that holds a point; points outside belong to the end cells. */
export function cellOf(basis: SplineBasis, x: number): number {
  let low = 0;
  let high = basis.cells;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (basis.breaks[middle] <= x) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * Values, first and second derivatives of the degree + 1 functions that live on a cell; function k is number cell + k.
 * @returns rows [values, first, second], each degree + 1 long, laid end to end
 * Recurrence of Cox and de Boor (1972).
 */
export function splineJets(basis: SplineBasis, cell: number, x: number): Float64Array {
  const p = basis.degree;
  const out = new Float64Array(3 * (p + 1));
  const top = valuesOfDegree(basis, cell, x, p);
  const below = valuesOfDegree(basis, cell, x, p - 1);
  out.set(top, 0);
  out.set(differentiate(basis, cell, below, p), p + 1);
  if (p >= 2) {
    const base = valuesOfDegree(basis, cell, x, p - 2);
    out.set(differentiate(basis, cell, differentiate(basis, cell, base, p - 1), p), 2 * (p + 1));
  }
  return out;
}

/** The q + 1 functions of degree q that live on a cell. */
function valuesOfDegree(basis: SplineBasis, cell: number, x: number, q: number): Float64Array {
  const { knots, degree } = basis;
  const span = cell + degree;
  const out = new Float64Array(q + 1);
  out[0] = 1;
  for (let d = 1; d <= q; d++) {
    let saved = 0;
    for (let r = 0; r < d; r++) {
      const right = knots[span + r + 1];
      const left = knots[span + 1 - d + r];
      const part = out[r] / (right - left);
      out[r] = saved + (right - x) * part;
      saved = (x - left) * part;
    }
    out[d] = saved;
  }
  return out;
}

/** Derivatives of the degree-q functions of a cell from the degree q - 1 rows (or the derivatives of those). */
function differentiate(basis: SplineBasis, cell: number, lower: Float64Array, q: number): Float64Array {
  const { knots, degree } = basis;
  const span = cell + degree;
  const out = new Float64Array(q + 1);
  for (let r = 0; r <= q; r++) {
    const first = span - q + r;
    const gain = r > 0 ? lower[r - 1] / (knots[first + q] - knots[first]) : 0;
    const loss = r < q ? lower[r] / (knots[first + q + 1] - knots[first + 1]) : 0;
    out[r] = q * (gain - loss);
  }
  return out;
}
