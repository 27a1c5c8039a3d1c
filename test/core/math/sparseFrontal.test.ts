import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dissect, type ElementGraph } from '../../../core/math/sparseDissection.ts';
import { factorFrontal, frontalStore, solveFrontal } from '../../../core/math/sparseFrontal.ts';

/** Square cells of an n by n grid, four unknowns each; the left edge is given. */
function gridGraph(n: number): ElementGraph {
  const unknownOf = (i: number, j: number): number => (i === 0 ? -1 : (i - 1) * (n + 1) + j);
  const cells = Array.from({ length: n * n }, (_, e) => [Math.floor(e / n), e % n]);
  return {
    elementCount: n * n,
    unknownCount: n * (n + 1),
    perElement: 4,
    unknowns: Int32Array.from(
      cells.flatMap(([i, j]) => [unknownOf(i, j), unknownOf(i + 1, j), unknownOf(i, j + 1), unknownOf(i + 1, j + 1)]),
    ),
    centreX: cells.map(([i]) => i),
    centreY: cells.map(([, j]) => j),
  };
}

/** Diffusion-like element matrix plus an optional skew part. */
function cellMatrix(weights: readonly number[], skew: number): (e: number, out: Float64Array) => void {
  return (e, out) => {
    const w = weights[e % weights.length];
    for (let a = 0; a < 4; a++)
      for (let b = 0; b < 4; b++) out[4 * a + b] = w * (a === b ? 3.1 : -1) + skew * w * Math.sign(b - a);
  };
}

function multiply(graph: ElementGraph, matrix: (e: number, out: Float64Array) => void, x: Float64Array): Float64Array {
  const out = new Float64Array(graph.unknownCount);
  const block = new Float64Array(16);
  for (let e = 0; e < graph.elementCount; e++) {
    matrix(e, block);
    for (let a = 0; a < 4; a++)
      for (let b = 0; b < 4; b++) {
        const [i, j] = [graph.unknowns[4 * e + a], graph.unknowns[4 * e + b]];
        if (i >= 0 && j >= 0) out[i] += block[4 * a + b] * x[j];
      }
  }
  return out;
}

describe('multifrontal factors', () => {
  it('recover a known solution, symmetric and not, on grids of any size', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 14 }),
        fc.array(fc.double({ min: 0.1, max: 10, noNaN: true }), { minLength: 1, maxLength: 7 }),
        fc.boolean(),
        (n, weights, symmetric) => {
          const graph = gridGraph(n);
          const matrix = cellMatrix(weights, symmetric ? 0 : 0.7);
          const dissection = dissect(graph);
          const store = frontalStore(dissection, symmetric);
          factorFrontal(dissection, cellMatrix([0.3], 0), store); // memory is used a second time
          const factor = factorFrontal(dissection, matrix, store);
          const wanted = Float64Array.from({ length: graph.unknownCount }, (_, i) => Math.sin(3 * i) + 2);
          const x = multiply(graph, matrix, wanted);
          solveFrontal(factor, x);
          expect(factor.sound).toBe(true);
          x.forEach((value, i) => {
            expect(Math.abs(value - wanted[i])).toBeLessThan(1e-9);
          });
        },
      ),
      { seed: 20, numRuns: 40 },
    );
  });

  it('eliminates every unknown exactly once and keeps separators of the order of the side', () => {
    const graph = gridGraph(32);
    const { fronts, largestFront } = dissect(graph);
    const met = new Int32Array(graph.unknownCount);
    for (const front of fronts) for (const u of front.unknowns.subarray(0, front.eliminated)) met[u]++;
    expect(met.every((times) => times === 1)).toBe(true);
    expect(largestFront).toBeLessThan(4 * 33);
  });

  it('says so when a symmetric matrix is not positive', () => {
    const dissection = dissect(gridGraph(4));
    expect(factorFrontal(dissection, cellMatrix([-1], 0), frontalStore(dissection, true)).sound).toBe(false);
  });
});
