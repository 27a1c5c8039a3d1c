import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bracketedRoot } from '../../../core/math/roots.ts';
import { pinned } from '../../helpers/arbitraries.ts';

test('finds the root of any rising cubic between its ends', () => {
  fc.assert(
    fc.property(fc.double({ min: -5, max: 5, noNaN: true }), fc.double({ min: 0, max: 3, noNaN: true }), (at, bend) => {
      const root = bracketedRoot((x) => (x - at) * (1 + bend * (x - at) ** 2), -6, 6, { tolerance: 1e-10 });
      expect(root.converged).toBe(true);
      expect(Math.abs(root.x - at)).toBeLessThan(1e-8);
    }),
    pinned(200),
  );
});

test('takes few evaluations for a smooth function and stays within its limit for a step', () => {
  expect(bracketedRoot((x) => Math.exp(x) - 2, 0, 3, { tolerance: 1e-10 }).evaluations).toBeLessThan(15);
  const step = bracketedRoot((x) => (x < 0.3 ? -1 : 1), 0, 1, { tolerance: 1e-6 });
  expect(step.converged).toBe(true);
  expect(Math.abs(step.x - 0.3)).toBeLessThan(2e-6);
});

test('says so when the signs agree or the evaluations run out', () => {
  expect(bracketedRoot((x) => x * x + 1, -1, 1, { tolerance: 1e-6 }).converged).toBe(false);
  expect(bracketedRoot((x) => x ** 3 - 0.1, -1, 1, { tolerance: 1e-12, maxEvaluations: 4 }).converged).toBe(false);
});

test('an end that is a root is the root', () => {
  expect(bracketedRoot((x) => x, 0, 1, { tolerance: 1e-6 })).toMatchObject({ x: 0, converged: true });
  expect(bracketedRoot((x) => x - 1, 0, 1, { tolerance: 1e-6 })).toMatchObject({ x: 1, converged: true });
});
