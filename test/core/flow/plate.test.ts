import fc from 'fast-check';
import { expect, test } from 'vitest';
import { moveToStress, slopeAt } from '../../../core/flow/lawInverse.ts';
import { createPlateSolver, type PlateDirection, solvePlate } from '../../../core/flow/plate.ts';
import { localIndex, type ViscosityLaw, viscosityAt } from '../../../core/material/viscosityLaw.ts';
import { gaussLegendre } from '../../../core/math/gaussLegendre.ts';
import { pinned } from '../../helpers/arbitraries.ts';

const anyLaw: fc.Arbitrary<ViscosityLaw> = fc.oneof(
  fc.record({ model: fc.constant('newtonian' as const), viscosity: fc.double({ min: 0.01, max: 1e5, noNaN: true }) }),
  fc.record({
    model: fc.constant('powerLaw' as const),
    consistency: fc.double({ min: 1, max: 1e5, noNaN: true }),
    index: fc.double({ min: 0.2, max: 1.4, noNaN: true }),
    regularisingRate: fc.constantFrom(0, 1e-3, 1),
  }),
  fc.record({
    model: fc.constant('carreauYasuda' as const),
    zeroShearViscosity: fc.double({ min: 1, max: 1e5, noNaN: true }),
    infiniteShearViscosity: fc.constantFrom(0, 0.5),
    timeConstant: fc.double({ min: 1e-4, max: 10, noNaN: true }),
    transition: fc.double({ min: 0.5, max: 3, noNaN: true }),
    index: fc.double({ min: 0.15, max: 1, noNaN: true }),
  }),
  fc.record({
    model: fc.constant('cross' as const),
    zeroShearViscosity: fc.double({ min: 1, max: 1e5, noNaN: true }),
    criticalStress: fc.double({ min: 100, max: 1e6, noNaN: true }),
    index: fc.double({ min: 0.15, max: 1, noNaN: true }),
  }),
);

const rate = fc.double({ min: -3, max: 4, noNaN: true }).map((power) => 10 ** power);

test('the inverse of every law gives back its rate, from any starting point', () => {
  fc.assert(
    fc.property(anyLaw, rate, rate, (law, wanted, guess) => {
      const stress = viscosityAt(law, wanted) * wanted;
      const point = { stress, rate: guess, slope: 1, bend: 0 };
      moveToStress(law, stress, point);
      expect(Math.abs(point.rate / wanted - 1)).toBeLessThan(1e-7);
    }),
    pinned(500),
  );
});

test('the analytic slope is the local index', () => {
  fc.assert(
    fc.property(anyLaw, rate, (law, at) => {
      expect(slopeAt(law, at, viscosityAt(law, at))).toBeCloseTo(localIndex(law, at), 4);
    }),
    pinned(300),
  );
});

test('a moved point of the flow curve lies on it', () => {
  const law: ViscosityLaw = { model: 'cross', zeroShearViscosity: 3000, criticalStress: 5e4, index: 0.3 };
  const point = { stress: 1e3, rate: 0.5, slope: 1, bend: 0 };
  moveToStress(law, 8e4, point);
  expect(viscosityAt(law, point.rate) * point.rate).toBeCloseTo(8e4, 1);
  expect(point.slope).toBeCloseTo(slopeAt(law, point.rate, viscosityAt(law, point.rate)), 5);
});

const direction = (wallSpeed: number, given: 'flow' | 'gradient', value: number): PlateDirection => ({
  wallSpeed,
  given,
  value,
});

test('any law, any speeds: converges, and prescribing the flow that a gradient gave returns the gradient', () => {
  fc.assert(
    fc.property(
      anyLaw,
      fc.double({ min: 0.01, max: 0.5, noNaN: true }),
      fc.double({ min: -3, max: 3, noNaN: true }),
      (law, speed, push) => {
        const gap = 0.002;
        const gradient = (push * viscosityAt(law, speed / gap) * speed) / gap ** 2;
        const cross = direction(speed / 3, 'flow', 0);
        const first = solvePlate(createPlateSolver(), law, gap, direction(speed, 'gradient', gradient), cross);
        expect(first.converged).toBe(true);
        const back = solvePlate(createPlateSolver(), law, gap, direction(speed, 'flow', first.down.flow), cross);
        expect(back.converged).toBe(true);
        const scale = (viscosityAt(law, speed / gap) * speed) / gap ** 2;
        expect(Math.abs(back.down.gradient - gradient) / scale).toBeLessThan(1e-3);
      },
    ),
    pinned(200),
  );
});

test('heat plus work against the gradients equals the power of the moving plate', () => {
  fc.assert(
    fc.property(anyLaw, fc.double({ min: 0.01, max: 0.5, noNaN: true }), (law, speed) => {
      const gap = 0.003;
      const down = direction(speed, 'flow', 0.3 * speed * gap);
      const cross = direction(speed / 4, 'flow', 0);
      const flow = solvePlate(createPlateSolver(gaussLegendre(24)), law, gap, down, cross);
      const power = flow.down.lidStress * speed + (flow.cross.lidStress * speed) / 4;
      const pumped = flow.down.gradient * flow.down.flow + flow.cross.gradient * flow.cross.flow;
      expect(Math.abs((flow.dissipation + pumped) / power - 1)).toBeLessThan(1e-6);
    }),
    pinned(200),
  );
});

test('a warm solver gives what a fresh one gives, whatever it solved before', () => {
  const law: ViscosityLaw = { model: 'cross', zeroShearViscosity: 4000, criticalStress: 8e4, index: 0.25 };
  const warm = createPlateSolver();
  for (const speed of [0.01, 1, 0.001, 0.1]) {
    for (const other of [law, { model: 'newtonian', viscosity: 1 } as const]) {
      const down = direction(speed, 'flow', 0.2 * speed * 0.002);
      const cross = direction(speed / 3, 'flow', 0);
      const a = solvePlate(warm, other, 0.002, down, cross);
      const b = solvePlate(createPlateSolver(), other, 0.002, down, cross);
      expect(a.converged).toBe(true);
      expect(Math.abs(a.down.gradient / b.down.gradient - 1)).toBeLessThan(1e-5);
    }
  }
});

test('nothing moves between resting plates', () => {
  const still = direction(0, 'gradient', 0);
  expect(solvePlate(createPlateSolver(), { model: 'newtonian', viscosity: 5 }, 0.001, still, still).down.flow).toBe(0);
});
