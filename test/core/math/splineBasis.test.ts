import { expect, test } from 'vitest';
import { gaussLegendre } from '../../../core/math/gaussLegendre.ts';
import { gradedBreaks } from '../../../core/math/gradedBreaks.ts';
import { cellOf, splineBasis, splineJets } from '../../../core/math/splineBasis.ts';

const breaks = Float64Array.from([0, 0.1, 0.35, 0.8, 1]);

test.each([2, 3])('functions of degree %i add up to 1 and their derivatives to 0', (degree) => {
  const basis = splineBasis(breaks, degree);
  for (const x of [0, 0.05, 0.35, 0.6, 0.99, 1]) {
    const jets = splineJets(basis, cellOf(basis, x), x);
    const sums = [0, 1, 2].map((row) =>
      jets.slice(row * (degree + 1), (row + 1) * (degree + 1)).reduce((a, b) => a + b),
    );
    expect(sums[0]).toBeCloseTo(1, 12);
    expect(sums[1]).toBeCloseTo(0, 9);
    expect(sums[2]).toBeCloseTo(0, 8);
  }
});

test.each([2, 3])('derivatives of degree %i agree with differences of values', (degree) => {
  const basis = splineBasis(breaks, degree);
  const [x, h] = [0.52, 1e-4];
  const at = (place: number) => splineJets(basis, cellOf(basis, x), place);
  const [below, here, above] = [at(x - h), at(x), at(x + h)];
  const n = degree + 1;
  for (let k = 0; k < n; k++) {
    expect(here[n + k]).toBeCloseTo((above[k] - below[k]) / (2 * h), 5);
    expect(here[2 * n + k]).toBeCloseTo((above[k] - 2 * here[k] + below[k]) / (h * h), 4);
  }
});

test('values are smooth across a breakpoint', () => {
  const basis = splineBasis(breaks, 3);
  const left = splineJets(basis, 0, 0.1);
  const right = splineJets(basis, 1, 0.1);
  for (const row of [0, 4, 8]) {
    // function k + 1 of the left cell is function k of the right cell
    for (let k = 0; k < 3; k++) expect(right[row + k]).toBeCloseTo(left[row + k + 1], 9);
  }
});

test.each([1, 3, 6])('Gauss-Legendre with %i nodes is exact to degree 2 n - 1', (count) => {
  const { nodes, weights } = gaussLegendre(count);
  const power = 2 * count - 1;
  const integral = nodes.reduce((sum, x, k) => sum + weights[k] * x ** power, 0);
  expect(integral).toBeCloseTo(1 / (power + 1), 13);
});

test('graded breakpoints span the line and keep near the wanted sizes', () => {
  const grading = { atStart: 0.01, atEnd: 0.05, growth: 0.5, largest: 0.2 };
  const line = gradedBreaks(2, grading);
  expect(line[0]).toBe(0);
  expect(line[line.length - 1]).toBe(2);
  expect(line[1]).toBeGreaterThan(0.007);
  expect(line[1]).toBeLessThan(0.0135);
  for (let k = 1; k < line.length; k++) {
    expect(line[k]).toBeGreaterThan(line[k - 1]);
    expect(line[k] - line[k - 1]).toBeLessThan(0.201);
  }
});
