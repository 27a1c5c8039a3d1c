/** Flows with known answers. */

import { describe, expect, it } from 'vitest';
import { curveOf, leftBy } from '../../../../core/checks/leftBy.ts';
import { contractionProfile, type TipRegion } from '../../../../core/flow/tip/region.ts';
import { DEG, head, newtonian, pipe, powerLaw, solved } from './regions.ts';

const Q = 5e-9;

describe('pipe', () => {
  it('has the pressure drop of Poiseuille flow', () => {
    const [radius, length] = [2e-3, 10e-3];
    const { field } = solved(pipe(radius, length), newtonian, { volumeFlow: Q });
    expect(field.pressureDrop / ((8 * 1000 * Q * length) / (Math.PI * radius ** 4))).toBeCloseTo(1, 6);
    expect(field.volume / (Math.PI * radius ** 2 * length)).toBeCloseTo(1, 9);
    expect(Math.max(...field.psi) / (Q / (2 * Math.PI))).toBeCloseTo(1, 9);
    expect(field.eddies).toHaveLength(0);
  });

  // dp/L = (2 K / R) [((3n+1)/n) Q/(pi R^3)]^n; the inlet's parabola settles within about one radius, so compare lengths
  it.each([0.5, 0.3, 0.2])('has the pressure gradient of a power law, n = %f', (n) => {
    const radius = 1e-3;
    const drop = (length: number): number => {
      const options = { withAge: false, fineness: 1.3 };
      const { field } = solved(pipe(radius, length), powerLaw(n), { volumeFlow: Q }, options);
      expect(field.convergence.converged).toBe(true);
      return field.pressureDrop;
    };
    const gradient = (drop(5e-3) - drop(3e-3)) / 2e-3;
    const exact = ((2 * 1e4) / radius) * (((3 * n + 1) / n) * (Q / (Math.PI * radius ** 3))) ** n;
    expect(Math.abs(gradient / exact - 1)).toBeLessThan(0.003);
  });

  it('has the residence times of laminar flow, F = 1 - 1/(4 theta^2)', () => {
    // Levenspiel, Chemical Reaction Engineering, 3rd ed., pp. 343-344
    const { field } = solved(pipe(2e-3, 20e-3), newtonian, { volumeFlow: Q }, { peclet: 1e6 });
    const mean = field.statistics?.meanTime ?? Number.NaN;
    for (const theta of [0.505, 0.55, 0.75, 1, 1.5, 2, 3, 5]) {
      const got = leftBy(curveOf(field.residence ?? []), theta * mean);
      expect(Math.abs(got - (1 - 1 / (4 * theta * theta)))).toBeLessThan(0.015);
    }
    expect(field.residence?.[0].time ?? 0).toBeGreaterThan(0.499 * mean);
    expect((field.statistics?.outletMean ?? 0) / mean).toBeCloseTo(1, 6);
  });
});

describe('annulus', () => {
  const annulus = (length: number): TipRegion => ({ ...head({ kind: 'flat' }, 90 * DEG), ...stretched(length) });
  function stretched(length: number): Pick<TipRegion, 'annulusLength' | 'outer'> {
    const parts = { barrelRadius: 7e-3, straightLength: length + 3e-3, includedAngle: Math.PI / 2 };
    return { annulusLength: length, outer: contractionProfile({ ...parts, orificeRadius: 1e-3, landLength: 1e-3 }) };
  }

  it('has the Newtonian pressure gradient between two lengths', () => {
    const drop = (length: number): number =>
      solved(annulus(length), newtonian, { volumeFlow: Q, inlet: 'developed' }, { withAge: false }).field.pressureDrop;
    const [a, b] = [4.5e-3, 7e-3];
    // Bird, Stewart & Lightfoot, Transport Phenomena, annulus (from memory)
    const shape = b ** 4 - a ** 4 - (b * b - a * a) ** 2 / Math.log(b / a);
    const exact = (8 * 1000 * Q) / (Math.PI * shape);
    expect(Math.abs((drop(8e-3) - drop(4e-3)) / 4e-3 / exact - 1)).toBeLessThan(0.002);
  });
});

describe('hole in a wall', () => {
  it('adds half of Sampson drop to the land: 3 eta Q / (2 r^3)', () => {
    // Sampson 1891; Dagan, Weinbaum & Pfeffer 1982 (from memory)
    const [bore, hole, land] = [4e-3, 0.3e-3, 0.6e-3];
    const parts = { barrelRadius: bore, straightLength: 6e-3, includedAngle: Math.PI };
    const outer = contractionProfile({ ...parts, orificeRadius: hole, landLength: land });
    const region = { ...pipe(bore, 1), outer };
    const { field } = solved(region, newtonian, { volumeFlow: Q }, { withAge: false });
    const pipes = (8 * 1000 * Q * land) / (Math.PI * hole ** 4) + (8 * 1000 * Q * 6e-3) / (Math.PI * bore ** 4);
    const entrance = field.pressureDrop - pipes;
    expect(entrance / ((3 * 1000 * Q) / (2 * hole ** 3))).toBeGreaterThan(0.97);
    expect(entrance / ((3 * 1000 * Q) / (2 * hole ** 3))).toBeLessThan(1.03);
  });
});
