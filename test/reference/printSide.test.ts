/** Print demand, drive, strength and heat against published and exact numbers. */

import { describe, expect, test } from 'vitest';
import {
  fullTorque,
  highestScrewSpeed,
  pulloutTorque,
  stepperCornerSpeed,
  stepsPerScrewTurn,
  usableTorque,
} from '../../core/drive/motor.ts';
import { thrustOf, torsionStress } from '../../core/drive/strength.ts';
import { enthalpyBetween } from '../../core/heat/enthalpy.ts';
import { lineArea, lineSpacing, passesPerWall, stepsPerFilamentLength } from '../../core/print/bead.ts';
import { heldHead } from '../../core/print/drip.ts';
import { pressureTime } from '../../core/print/ooze.ts';
import { pinchTime } from '../../core/print/strand.ts';

const mm = 1e-3;

describe('bead', () => {
  /** mm³/s; the first is printed on a flow-rate page (16.07), the others computed. */
  test.each([
    [0.6, 0.3, 100, 16.069],
    [0.45, 0.2, 100, 8.14],
    [1.2, 0.6, 30, 19.28],
    [2, 1, 20, 35.71],
  ])('%s x %s mm at %s mm/s', (width, height, speed, flow) => {
    expect(Math.abs(lineArea(width * mm, height * mm) * speed * mm * 1e9 - flow)).toBeLessThan(0.006);
  });

  test('over its rectangle it is 1 - (h/w)(1 - pi/4): 0.893 at one half', () => {
    expect(lineArea(1, 0.5) / 0.5).toBeCloseTo(0.893, 3);
  });

  test('neighbours at the spacing w - h (1 - pi/4) fill the rectangle between them exactly', () => {
    expect(lineSpacing(0.6, 0.3) * 0.3).toBeCloseTo(lineArea(0.6, 0.3), 12);
  });

  test('is continuous where the line is as wide as high', () => {
    expect(lineArea(0.5, 0.5)).toBeCloseTo(lineArea(0.4999999, 0.5), 6);
  });

  test('passes per wall: one for a single line, three for three lines at their spacing', () => {
    expect(passesPerWall(0.6, 0.6, 0.3)).toBe(1);
    expect(passesPerWall(0.2, 0.6, 0.3)).toBe(1);
    expect(passesPerWall(0.6 + 2 * lineSpacing(0.6, 0.3), 0.6, 0.3)).toBe(3);
  });
});

describe('steps', () => {
  const drive = { fullStepsPerTurn: 200, microsteps: 16, gearRatio: 5.18 };

  test('200 x 16 x 5.18 is 16 576 a turn, 138.1 per mm³ at 120 mm³ a turn (computed)', () => {
    expect(stepsPerScrewTurn(drive)).toBeCloseTo(16_576, 6);
    expect(stepsPerScrewTurn(drive) / 120).toBeCloseTo(138.13, 2);
  });

  test('per mm of a 1.75 mm virtual filament 332.25; of 1.12838 mm the same as per mm³', () => {
    expect(stepsPerFilamentLength(stepsPerScrewTurn(drive) / 120, 1.75)).toBeCloseTo(332.26, 1);
    expect(stepsPerFilamentLength(100, 1.128379)).toBeCloseTo(100, 3);
  });

  test('corner speed 24 V, 2 A, 5 mH, 200 steps: 6 rev/s (calculator page)', () => {
    expect(stepperCornerSpeed(24, 5e-3, 2, 200)).toBeCloseTo(6, 9);
  });
});

describe('motor', () => {
  const drive = {
    motorCurve: [
      { speed: 0, torque: 2 },
      { speed: 10, torque: 1 },
    ],
    gearRatio: 5,
    gearEfficiency: 0.9,
    usableTorqueShare: 0.6,
    fullStepsPerTurn: 200,
    microsteps: 16,
  };

  test('torque at the screw is curve x ratio x efficiency, share of it usable, nothing beyond the curve', () => {
    expect(highestScrewSpeed(drive)).toBe(2);
    expect(pulloutTorque(drive, 1)).toBeCloseTo(1.5 * 5 * 0.9, 12);
    expect(usableTorque(drive, 1)).toBeCloseTo(1.5 * 5 * 0.9 * 0.6, 12);
    expect(usableTorque(drive, 2.01)).toBe(0);
    expect(fullTorque(drive)).toBeCloseTo(9, 12);
  });
});

describe('strength', () => {
  /** Root torsion in MPa at 5, 10, 20 N m on 6, 8, 9 mm (computed from 16 T/(pi d³)). */
  test.each([
    [5, [118, 50, 35]],
    [10, [236, 99, 70]],
    [20, [472, 199, 140]],
  ])('%s N m', (torque, stresses) => {
    [6, 8, 9].forEach((diameter, i) => {
      expect(Math.abs(torsionStress(torque, diameter * mm) / 1e6 - stresses[i])).toBeLessThan(0.6);
    });
  });

  test('a 3 mm bore in an 8 mm root raises 99.5 to 101.5 MPa', () => {
    expect(torsionStress(10, 8 * mm) / 1e6).toBeCloseTo(99.5, 1);
    expect(torsionStress(10, 8 * mm, 3 * mm) / 1e6).toBeCloseTo(101.5, 1);
  });

  /** Gere, Mechanics of Materials, problem 3.11-3: 500 lb in, factors 1.20, 1.29, 1.41 give 8900, 6400, 4900 psi. */
  test.each([
    [0.7, 1.2, 8900],
    [0.8, 1.29, 6400],
    [0.9, 1.41, 4900],
  ])('stepped shaft of %s in', (diameter, factor, stress) => {
    const torque = 500 * 4.4482216152605 * 0.0254;
    const psi = torsionStress(torque, diameter * 0.0254) / (4.4482216152605 / 0.0254 ** 2);
    expect(Math.abs((factor * psi) / stress - 1)).toBeLessThan(0.006);
  });

  test('thrust of 10 MPa on 16 mm is 2011 N', () => {
    expect(thrustOf(10e6, 16 * mm)).toBeCloseTo(2010.6, 0);
  });
});

describe('heat', () => {
  test('EN1: HDPE 1000 lb/h over 350 °F at 0.55 BTU/(lb °F) takes 192 500 BTU/h, 75.65 hp (article; its 74.86 is a slip)', () => {
    const capacity = (0.55 * 1055.05585262) / 0.45359237 / (5 / 9);
    const content = { heatCapacitySolid: capacity, heatCapacityMelt: capacity, heatOfFusion: 0, melting: 400 };
    const perHour = enthalpyBetween(content, 300, 300 + (350 * 5) / 9) * 1000 * 0.45359237;
    expect(perHour / 1055.05585262).toBeCloseTo(192_500, 3);
    expect(perHour / 3600 / 745.699872).toBeCloseTo(75.655, 2);
  });

  test('PLA at 15 mm³/s over 180 K: 6.0 W, 6.6 W with 30 kJ/kg of fusion (computed, 1240 kg/m³, 1.8 kJ/(kg K))', () => {
    const content = { heatCapacitySolid: 1800, heatCapacityMelt: 1800, heatOfFusion: 0, melting: 430 };
    const mass = 15e-9 * 1240;
    expect(mass * enthalpyBetween(content, 295, 475)).toBeCloseTo(6.0, 1);
    expect(mass * enthalpyBetween({ ...content, heatOfFusion: 30e3 }, 295, 475)).toBeCloseTo(6.6, 1);
  });
});

describe('ooze', () => {
  test('5 cm³ behind 500 Pa s, 0.8 x 2 mm lets go in 0.50 s; 8.0 s through 0.4 mm (computed)', () => {
    const resistance = (diameter: number) => (128 * 500 * 2 * mm) / (Math.PI * (diameter * mm) ** 4);
    expect(pressureTime(5e-6, resistance(0.8))).toBeCloseTo(0.5, 2);
    expect(pressureTime(5e-6, resistance(0.4))).toBeCloseTo(8, 1);
  });

  test('a meniscus of R = 0.1, 0.2, 0.4 mm holds 57, 28, 14 mm of melt (25 mN/m, 900 kg/m³; computed)', () => {
    [57, 28, 14].forEach((head, i) => {
      expect(Math.abs(heldHead(0.025, 0.1 * mm * 2 ** i, 900) * 1000 - head)).toBeLessThan(0.6);
    });
  });

  test('threads pinch off in 56 s (500 Pa s, 0.2 mm) and 0.02 s (0.1 Pa s, 0.4 mm)', () => {
    expect(pinchTime(500, 0.2 * mm, 0.025)).toBeCloseTo(56.4, 0);
    expect(pinchTime(0.1, 0.4 * mm, 0.025)).toBeCloseTo(0.0226, 3);
  });
});
