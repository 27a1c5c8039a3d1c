/** Strength of the screw, its bearing and the walls against numbers that are not in core/checks/drive.ts. */

import { describe, expect, test } from 'vitest';
import { bearingLoad, ratedTurns } from '../../core/drive/bearing.ts';
import { sharpFactor, shoulderFactor } from '../../core/drive/notch.ts';
import { thickHoop, thinHoop, wallEquivalent } from '../../core/drive/pressureWall.ts';
import { bowing, bucklingLoad, thrustOf, torsionStress, twistOf } from '../../core/drive/strength.ts';

const mm = 1e-3;

describe('steps in torsion', () => {
  /** Web table of shoulders in torsion, D/d = 1.5. */
  test.each([
    [0.02, 2.2],
    [0.05, 1.7],
    [0.1, 1.45],
    [0.2, 1.25],
  ])('fillet over thin diameter %s', (ratio, printed) => {
    expect(Math.abs(shoulderFactor(1.5, 1, ratio) / printed - 1)).toBeLessThan(0.03);
  });

  test('a sharp or unknown fillet counts 2.2 (from memory), no step counts 1', () => {
    expect(shoulderFactor(10, 8, 0)).toBe(sharpFactor);
    expect(shoulderFactor(10, 8, null)).toBe(2.2);
    expect(shoulderFactor(10, 10, 0)).toBe(1);
    expect(shoulderFactor(8, 10, 0)).toBe(1);
  });
});

describe('torsion', () => {
  /** Own arithmetic: torque in N m that loads a root of bore less two depths with 345 MPa (50 000 psi), and 150 MPa. */
  test.each([
    [12, 3, 14.6, 6.4],
    [12, 3.5, 8.5, 3.7],
    [16, 3.5, 49.3, 21.5],
    [16, 4, 34.7, 15.1],
    [20, 4.5, 90.1, 39.2],
  ])('bore %s mm, depth %s mm', (bore, depth, hard, soft) => {
    const root = (bore - 2 * depth) * mm;
    const stress = (torque: number) => torsionStress(torque, root) / 1e6;
    expect(Math.abs(stress(hard) / 344.74 - 1)).toBeLessThan(0.01);
    expect(Math.abs(stress(soft) / 150 - 1)).toBeLessThan(0.012);
  });

  test('wind-up of a uniform shaft is T L/(G J); of a taper, the integral', () => {
    const shear = 200e9 / 2.6;
    const polar = (d: number) => (Math.PI * d ** 4) / 32;
    expect(twistOf(10, 200e9, [{ length: 0.16, start: 8 * mm, end: 8 * mm }])).toBeCloseTo(
      (10 * 0.16) / (shear * polar(8 * mm)),
      12,
    );
    const slices = 20_000;
    let sum = 0;
    for (let i = 0; i < slices; i++) {
      const d = (6 + (4 * (i + 0.5)) / slices) * mm;
      sum += 0.16 / slices / polar(d);
    }
    const taper = twistOf(10, 200e9, [{ length: 0.16, start: 6 * mm, end: 10 * mm }]);
    expect(Math.abs(taper / ((10 * sum) / shear) - 1)).toBeLessThan(1e-6);
  });
});

describe('thrust', () => {
  /** Own arithmetic, pressure on the full bore. */
  test.each([
    [5, 16, 1005],
    [5, 20, 1571],
    [10, 20, 3142],
    [20, 16, 4021],
    [20, 20, 6283],
  ])('%s MPa on %s mm', (pressure, bore, force) => {
    expect(Math.abs(thrustOf(pressure * 1e6, bore * mm) - force)).toBeLessThan(0.6);
  });

  /** Form: Engineering Plastics Handbook, p. 66; exponents 3 and 10/3 and these ratios from memory and own arithmetic. */
  test('twice the load leaves 0.099 of a roller bearing’s life, 1.5 times 0.259; 1/8 of a ball bearing’s', () => {
    const left = (load: number, kind: 'ball' | 'roller') => ratedTurns(1, load, kind) / ratedTurns(1, 1, kind);
    expect(left(2, 'roller')).toBeCloseTo(0.0992, 4);
    expect(left(1.5, 'roller')).toBeCloseTo(0.2588, 4);
    expect(left(2, 'ball')).toBe(0.125);
  });

  test('at the dynamic rating nine in ten outlast a million turns; margins are rating over thrust', () => {
    expect(ratedTurns(5000, 5000, 'ball')).toBe(1e6);
    const load = bearingLoad({ kind: 'ball', staticLoad: 8000, dynamicLoad: 5000 }, 1000, 4000, 0.5);
    expect(load).toMatchObject({ staticMargin: 8, staticMarginBlocked: 2, lifeTurns: 125e6, lifeTime: 250e6 });
    const unknown = bearingLoad({ kind: 'roller', staticLoad: 8000, dynamicLoad: null }, 0, 0, 0);
    expect(unknown).toEqual({ staticMargin: null, staticMarginBlocked: null, lifeTurns: null, lifeTime: null });
  });

  /** Own arithmetic: root 8 mm, 160 mm, 200 GPa. */
  test('a root of 8 mm bows at 3876 N held at one end, 15 504 N held at both', () => {
    expect(bucklingLoad(200e9, 8 * mm, 0.16, bowing.free)).toBeCloseTo(3876, 0);
    expect(bucklingLoad(200e9, 8 * mm, 0.16, bowing.held)).toBeCloseTo(15_503, 0);
    expect(bucklingLoad(200e9, 8 * mm, 0.16, bowing.free) / thrustOf(10e6, 16 * mm)).toBeCloseTo(1.93, 2);
  });
});

describe('walls', () => {
  test('a thin wall tends to p r/t, and a very thick one to p', () => {
    expect(thickHoop(1, 1, 1.0002) / thinHoop(1, 1, 1.0002)).toBeCloseTo(1, 3);
    expect(thickHoop(1, 1, 1e6)).toBeCloseTo(1, 9);
    expect(wallEquivalent(1, 1, 1e6)).toBeCloseTo(2, 9);
  });

  test('20 MPa push a 10 mm nozzle with 1571 N (own arithmetic)', () => {
    expect(thrustOf(20e6, 10 * mm)).toBeCloseTo(1570.8, 1);
  });
});
