/** Gauss-Legendre quadrature on the unit interval. */

/** Nodes and weights of a rule on [0, 1]; the weights add up to 1. */
export interface QuadratureRule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

/**
 * Gauss-Legendre rule on [0, 1], exact for polynomials up to degree 2 count - 1.
 * @param count number of nodes, integer, 1 to about 60
 * Nodes are roots of the Legendre polynomial found by Newton from the cosine estimate (Abramowitz & Stegun 1964, 25.4.29).
 */
export function gaussLegendre(count: number): QuadratureRule {
  const nodes = new Float64Array(count);
  const weights = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const root = legendreRoot(count, i);
    nodes[i] = (1 - root.x) / 2;
    weights[i] = 1 / ((1 - root.x * root.x) * root.slope * root.slope);
  }
  return { nodes, weights };
}

function legendreRoot(count: number, index: number): { x: number; slope: number } {
  let x = Math.cos((Math.PI * (index + 0.75)) / (count + 0.5));
  let slope = 1;
  for (let pass = 0; pass < 20; pass++) {
    const p = legendre(count, x);
    slope = p.slope;
    const step = p.value / slope;
    x -= step;
    if (Math.abs(step) < 1e-15) break;
  }
  return { x, slope };
}

function legendre(degree: number, x: number): { value: number; slope: number } {
  let previous = 1;
  let value = x;
  for (let k = 2; k <= degree; k++) {
    const next = ((2 * k - 1) * x * value - (k - 1) * previous) / k;
    previous = value;
    value = next;
  }
  if (degree === 0) return { value: 1, slope: 0 };
  return { value, slope: (degree * (x * value - previous)) / (x * x - 1) };
}
