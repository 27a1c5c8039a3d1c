/** Flow between plates of power-law melt against exact and independently computed numbers. */

import { describe, expect, test } from 'vitest';
import { newtonian, powerLaw } from '../../core/checks/textbookScrew.ts';
import { createPlateSolver, type PlateDirection, solvePlate } from '../../core/flow/plate.ts';
import { gaussLegendre } from '../../core/math/gaussLegendre.ts';

const within = (got: number, expected: number, relative: number) =>
  expect(Math.abs(got / expected - 1), `${got} against ${expected}`).toBeLessThan(relative);

describe('power-law melt between plates', () => {
  const gap = 0.003;
  const speed = 0.1;
  const consistency = 1000;
  const still: PlateDirection = { wallSpeed: 0, given: 'flow', value: 0 };
  const scaleOf = (n: number, v: number) => (consistency * v ** n) / gap ** (n + 1);

  /** 1-D exact, q = Q/(V W H) at G = H^(n+1)(dp/dz)/(K V^n) of 1, 2, 3 and G at closed discharge; computed. */
  test.each([
    [1.0, 0.41667, 0.33333, 0.25, 6.0],
    [0.8, 0.39663, 0.30006, 0.21073, 4.97471],
    [0.6, 0.36459, 0.25499, 0.15765, 4.10554],
    [0.5, 0.340427, 0.22646, 0.12254, 3.71934],
    [0.4, 0.30704, 0.19286, 0.07671, 3.35981],
    [0.3, 0.25958, 0.15332, 0.0065, 3.02202],
    [0.2, 0.19233, 0.10715, -0.16285, 2.69932],
  ])('without cross flow, n = %s', (n, one, two, three, closed) => {
    const law = powerLaw(consistency, n);
    const flowAt = (g: number) =>
      solvePlate(
        createPlateSolver(gaussLegendre(60)),
        law,
        gap,
        { wallSpeed: speed, given: 'gradient', value: g * scaleOf(n, speed) },
        still,
      ).down.flow /
      (speed * gap);
    expect(flowAt(1)).toBeCloseTo(one, 4);
    expect(flowAt(2)).toBeCloseTo(two, 4);
    expect(flowAt(3)).toBeCloseTo(three, 4);
    const shut = solvePlate(
      createPlateSolver(gaussLegendre(60)),
      law,
      gap,
      { wallSpeed: speed, given: 'flow', value: 0 },
      still,
    );
    within(shut.down.gradient / scaleOf(n, speed), closed, 1e-4);
  });

  /** Coupled down- and cross-channel flow (the problem of Griffith 1962), by two other methods; computed. */
  const helix = Math.atan(1 / Math.PI);
  const down = speed * Math.cos(helix);
  const cross: PlateDirection = { wallSpeed: speed * Math.sin(helix), given: 'flow', value: 0 };
  test.each([
    [1.0, 0.5, 5.7173, 2.8587],
    [0.8, 0.49226, 4.7403, 2.4431],
    [0.6, 0.4806, 3.9121, 1.9922],
    [0.4, 0.46066, 3.2015, 1.4581],
    [0.2, 0.41645, 2.572, 0.8104],
  ])('with cross flow at the square lead, n = %s', (n, open, closed, half) => {
    const law = powerLaw(consistency, n);
    const solve = (given: 'flow' | 'gradient', value: number) =>
      solvePlate(createPlateSolver(), law, gap, { wallSpeed: down, given, value }, cross);
    const free = solve('gradient', 0).down.flow;
    within(free / (down * gap), open, 2e-4);
    within(solve('flow', 0).down.gradient / scaleOf(n, speed), closed, 1e-3);
    within(solve('flow', free / 2).down.gradient / scaleOf(n, speed), half, 1e-3);
  });
});

describe('cross-channel flow', () => {
  test('has the gradient 6 eta V/H² and meets the wall’s speed (Mohr et al. 1957, derived again)', () => {
    const still: PlateDirection = { wallSpeed: 0, given: 'flow', value: 0 };
    const across = solvePlate(createPlateSolver(), newtonian(100), 0.004, still, { ...still, wallSpeed: 0.05 }).cross;
    within(across.gradient, (6 * 100 * 0.05) / 0.004 ** 2, 1e-6);
    const speedAt = (y: number) => (across.rootStress * y + (across.gradient * y * y) / 2) / 100;
    within(speedAt(0.004), 0.05, 1e-6);
  });
});
