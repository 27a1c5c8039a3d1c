/** Numerical integration of smooth functions of one variable. */

import { gaussLegendre } from './gaussLegendre.ts';

const { nodes, weights } = gaussLegendre(5);

/**
 * Integral of `f` from `from` to `to` by the five-point Gauss-Legendre rule: exact for polynomials up to degree 9.
 * Unit: that of `f` times that of its argument. For smooth `f`; split the interval at kinks.
 */
export function integrate(f: (x: number) => number, from: number, to: number): number {
  let sum = 0;
  for (let i = 0; i < 5; i++) sum += (weights[i] as number) * f(from + (to - from) * (nodes[i] as number));
  return (to - from) * sum;
}

/** `integrate` over `parts` equal parts, summed: for functions that one rule does not resolve. `parts` >= 1. */
export function integrateParts(f: (x: number) => number, from: number, to: number, parts: number): number {
  let sum = 0;
  for (let i = 0; i < parts; i++) {
    sum += integrate(f, from + ((to - from) * i) / parts, from + ((to - from) * (i + 1)) / parts);
  }
  return sum;
}
