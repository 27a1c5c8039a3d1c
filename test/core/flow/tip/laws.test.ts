/** Laws that hold whatever the region. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TipRegion } from '../../../../core/flow/tip/region.ts';
import { DEG, head, newtonian, powerLaw, solved } from './regions.ts';

const coarse = { fineness: 1.6 };
const Q = 5e-9;
const scaled = (region: TipRegion, by: number): TipRegion => ({
  ...region,
  screwRadius: by * region.screwRadius,
  annulusLength: by * region.annulusLength,
  ...(region.pin ? { pin: { radius: by * region.pin.radius, length: by * region.pin.length } } : {}),
  outer: region.outer.map((point) => ({ z: by * point.z, r: by * point.r })),
});

describe('any head', () => {
  const region = head({ kind: 'cone', includedAngle: 60 * DEG }, 120 * DEG);

  it('needs a pressure that grows as Q^n', () => {
    const drop = (flow: number): number =>
      solved(
        region,
        { ...powerLaw(0.4), regularisingRate: 0 } as never,
        { volumeFlow: flow },
        { ...coarse, withAge: false },
      ).field.pressureDrop;
    expect(Math.log(drop(4 * Q) / drop(Q)) / Math.log(4)).toBeCloseTo(0.4, 4);
  });

  it('has the same shape of flow at any size', () => {
    const small = solved(region, newtonian, { volumeFlow: Q }, coarse).field;
    const large = solved(scaled(region, 3), newtonian, { volumeFlow: 27 * Q }, coarse).field;
    expect(large.pressureDrop / small.pressureDrop).toBeCloseTo(1, 6);
    expect(large.volume / small.volume / 27).toBeCloseTo(1, 9);
    expect(large.statistics?.fractionOver3).toBeCloseTo(small.statistics?.fractionOver3 ?? Number.NaN, 3);
  });

  it('gives an outlet age of V/Q and a through flow of Q, for any angles, gap, pin and turning', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('flat', 'cone', 'hemisphere'),
        fc.integer({ min: 40, max: 180 }),
        fc.double({ min: 0.2e-3, max: 4e-3, noNaN: true }),
        fc.boolean(),
        fc.constantFrom(0, 6),
        (kind, angle, gap, pinned, turnRate) => {
          const tip = kind === 'cone' ? ({ kind, includedAngle: 70 * DEG } as const) : ({ kind } as { kind: 'flat' });
          const extra = pinned ? { pin: { radius: 1e-3, length: 1.5e-3 } } : {};
          const made = head(tip, angle * DEG, gap, extra);
          const { field } = solved(made, powerLaw(0.45), { volumeFlow: Q, turnRate }, coarse);
          expect(field.convergence.converged).toBe(true);
          expect(field.meshComplete).toBe(true);
          const { outletMean = 0, meanTime = 1 } = field.statistics ?? {};
          expect(Math.abs(outletMean / meanTime - 1)).toBeLessThan(1e-5);
          expect(Math.max(...field.psi.filter((_, i) => field.r[i] === 0)) / (Q / (2 * Math.PI))).toBeCloseTo(1, 5);
        },
      ),
      { seed: 11, numRuns: 5 },
    );
  }, 120_000);
});

describe('turning', () => {
  const region = head({ kind: 'cone', includedAngle: 60 * DEG }, 120 * DEG);
  it('does not change the through flow of a Newtonian melt, and thins others', () => {
    const drop = (law: typeof newtonian, turnRate: number): number =>
      solved(region, law, { volumeFlow: Q, turnRate }, { ...coarse, withAge: false }).field.pressureDrop;
    expect(drop(newtonian, 20) / drop(newtonian, 0)).toBeCloseTo(1, 6);
    expect(drop(powerLaw(0.4), 20) / drop(powerLaw(0.4), 0)).toBeLessThan(0.98);
  });

  it('costs a torque proportional to speed for a Newtonian melt', () => {
    const torque = (turnRate: number): number =>
      solved(region, newtonian, { volumeFlow: Q, turnRate }, { ...coarse, withAge: false }).field.torque;
    expect(torque(8) / torque(2)).toBeCloseTo(4, 8);
    expect(solved(region, newtonian, { volumeFlow: Q }, { ...coarse, withAge: false }).field.torque).toBe(0);
  });
});

describe('hard laws', () => {
  const region = head({ kind: 'hemisphere' }, Math.PI);
  it.each([0.2, 0.3])('converge quadratically at n = %f', (n) => {
    const { convergence } = solved(region, powerLaw(n), { volumeFlow: Q }, { ...coarse, withAge: false }).field;
    expect(convergence.converged).toBe(true);
    expect(convergence.iterations).toBeLessThan(16);
  });

  it('say so when stopped early', () => {
    const options = { ...coarse, withAge: false, maxIterations: 2 };
    const { convergence } = solved(region, powerLaw(0.2), { volumeFlow: Q }, options).field;
    expect(convergence.converged).toBe(false);
    expect(convergence.iterations).toBe(2);
    expect(convergence.residual).toBeGreaterThan(1e-6);
  });

  it('thin at high flow: Cross and Carreau-Yasuda lie between their limits', () => {
    const drop = (law: Parameters<typeof solved>[1], flow: number): number =>
      solved(region, law, { volumeFlow: flow }, { ...coarse, withAge: false }).field.pressureDrop;
    const cross = { model: 'cross', zeroShearViscosity: 1000, criticalStress: 3e4, index: 0.3 } as const;
    const carreau = {
      ...({ model: 'carreauYasuda', zeroShearViscosity: 1000, infiniteShearViscosity: 0 } as const),
      ...{ timeConstant: 0.03, transition: 2, index: 0.4 },
    };
    for (const law of [cross, carreau]) {
      expect(drop(law, 1e-14) / drop(newtonian, 1e-14)).toBeCloseTo(1, 2);
      expect(drop(law, 5e-8) / drop(newtonian, 5e-8)).toBeLessThan(0.8);
    }
  });
});
