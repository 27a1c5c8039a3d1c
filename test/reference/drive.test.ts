/** Stepping, gearing and power of drives against published numbers. */

import { describe, expect, test } from 'vitest';
import { pulloutTorque, steppingRate, stepsPerScrewTurn, torqueOfPower } from '../../core/drive/motor.ts';

const drive = {
  gearRatio: 1,
  gearEfficiency: 1,
  usableTorqueShare: 1,
  fullStepsPerTurn: 200,
  microsteps: 1,
  bearing: null,
};

describe('stepper', () => {
  test('a pull-out curve of 0.4 N m to 200 and 0.2 N m to 500 steps/s is read as such (Acarnley, chapter 4)', () => {
    const curve = [
      { speed: 200 / 200, torque: 0.4 },
      { speed: 500 / 200, torque: 0.2 },
    ];
    expect(pulloutTorque({ ...drive, motorCurve: curve }, 1)).toBeCloseTo(0.4, 12);
    expect(pulloutTorque({ ...drive, motorCurve: curve }, 2.5)).toBeCloseTo(0.2, 12);
    expect(pulloutTorque({ ...drive, motorCurve: curve }, 2.51)).toBe(0);
    expect(steppingRate(drive, 2.5).fullSteps).toBe(500);
  });
});

describe('gear and power', () => {
  test('55 kW at 100 rpm less 5 % of the gear give 5000 N m (trade article), 4990 to three digits', () => {
    expect(Math.abs((0.95 * torqueOfPower(55e3, 100 / 60)) / 5000 - 1)).toBeLessThan(0.003);
  });

  test('1 kW at 1 rpm is 9549 N m; 1 hp at 1 rpm 63 025 in lb', () => {
    expect(torqueOfPower(1000, 1 / 60)).toBeCloseTo(9549.3, 1);
    expect(torqueOfPower(745.699872, 1 / 60) / (4.4482216152605 * 0.0254)).toBeCloseTo(63025.4, 0);
  });

  /** Own arithmetic: 15 mm³/s at 120 mm³ a turn through 1:5.18. */
  test('7.5 rpm of the screw are 38.9 rpm of the motor and 2072 microsteps a second', () => {
    const geared = { ...drive, gearRatio: 5.18, microsteps: 16 };
    const screw = 15 / 120;
    expect(screw * 60).toBeCloseTo(7.5, 12);
    expect(screw * 60 * geared.gearRatio).toBeCloseTo(38.85, 9);
    expect(steppingRate(geared, screw).microsteps).toBeCloseTo(2072, 6);
    expect(stepsPerScrewTurn(geared)).toBeCloseTo(16576, 6);
  });
});
