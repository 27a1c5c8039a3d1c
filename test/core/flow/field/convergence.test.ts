import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ChannelSection, largestRootFillet } from '../../../../core/flow/field/channelSection.ts';
import { channelCurve, solveChannelForFlow } from '../../../../core/flow/field/channelSolver.ts';
import { prepareChannel } from '../../../../core/flow/field/prepared.ts';
import type { ViscosityLaw } from '../../../../core/material/viscosityLaw.ts';

const motion = { barrelSpeed: 0.0125 };
const flat = { kind: 'flat', depth: 2e-3, width: 6.7e-3, helixAngle: 0.308, rootFillet: 0, flankAngle: 0 } as const;
const helical = {
  kind: 'helical',
  barrelRadius: 4e-3,
  rootRadius: 2.25e-3,
  lead: 8e-3,
  starts: 1,
  flightAxialWidth: 1e-3,
  flankAngle: 0,
  rootFillet: 0,
} as const;

describe('flow converges with the mesh (n = 0.5): error of cells of 1.6 over that of 0.8, against 0.3', () => {
  const law: ViscosityLaw = { model: 'powerLaw', consistency: 1e4, index: 0.5, regularisingRate: 0.5 };
  const flowAt = (section: ChannelSection, coarseness: number, gradient: number) =>
    channelCurve(prepareChannel(section, { coarseness }), law, motion, [gradient], { tolerance: 1e-8 })[0].flowRate;
  const orderOf = (section: ChannelSection, gradient: number) => {
    const exact = flowAt(section, 0.3, gradient);
    const error = (coarseness: number) => Math.abs(flowAt(section, coarseness, gradient) / exact - 1);
    return Math.log2(error(1.6) / error(0.8));
  };
  test.each<[string, ChannelSection, number]>([
    ['square, open', flat, 0],
    ['square, against pressure', flat, 2e7],
    ['leaning flanks, against pressure', { ...flat, flankAngle: 0.3 }, 2e7],
    ['helical, open', helical, 0],
  ])('%s: order above 3.3', (_, section, gradient) => {
    expect(orderOf(section, gradient)).toBeGreaterThan(3.3);
  });
  test('fillet held by springs: order above 1.8', () => {
    expect(orderOf({ ...flat, rootFillet: 8e-4 }, 0)).toBeGreaterThan(1.8);
  });
});

const part = fc.double({ min: 0, max: 1, noNaN: true });
/** Any section a turner might make, from a shallow square channel to a V thread with a full-round root. */
const anySection = fc
  .tuple(fc.boolean(), part, part, part, part)
  .map(([wound, deep, wide, lean, round]): ChannelSection => {
    const radius = 8e-3;
    const rootRadius = radius * (0.4 + 0.55 * deep);
    const depth = radius - rootRadius;
    const width = wound ? 4e-3 + 12e-3 * wide : depth * (1 + 30 * wide);
    const flankAngle = Math.min(0.6 * lean, Math.atan((0.4 * width) / depth));
    const section: ChannelSection = wound
      ? { ...helical, barrelRadius: radius, rootRadius, lead: width + 2e-3, flightAxialWidth: 2e-3, flankAngle }
      : { ...flat, depth, width, flankAngle };
    return { ...section, rootFillet: round * largestRootFillet(section) };
  });
const anyLaw = fc
  .tuple(fc.constantFrom('powerLaw', 'carreauYasuda', 'cross'), part, part)
  .map(([model, a, b]): ViscosityLaw => {
    const index = 0.2 + 0.7 * a;
    const scale = 10 ** (1 + 3 * b);
    if (model === 'powerLaw') return { model, consistency: scale, index, regularisingRate: 1e-3 };
    if (model === 'cross') return { model, zeroShearViscosity: scale, criticalStress: scale, index };
    return {
      model,
      zeroShearViscosity: scale,
      infiniteShearViscosity: 0,
      timeConstant: 10 * b,
      transition: 1.2,
      index,
    };
  });

test('any section and law: closed discharge exists, flow falls with gradient, all solves converge (seed 5)', () => {
  fc.assert(
    fc.property(anySection, anyLaw, (section, law) => {
      const prepared = prepareChannel(section);
      const closed = solveChannelForFlow(prepared, law, motion, 0);
      expect(closed.converged).toBe(true);
      expect(closed.gradient).toBeGreaterThan(0);
      const curve = channelCurve(
        prepared,
        law,
        motion,
        [-1, 0, 0.5, 1.5, 3].map((f) => f * closed.gradient),
      );
      expect(curve.every((state) => state.converged)).toBe(true);
      for (let k = 1; k < curve.length; k++) expect(curve[k].flowRate).toBeLessThan(curve[k - 1].flowRate);
      expect(curve[2].flowRate).toBeGreaterThan(0);
      expect(curve[3].flowRate).toBeLessThan(0);
    }),
    { seed: 5, numRuns: 15 },
  );
}, 60_000);
