/** What motor and gear give at a screw speed, and how finely they step. */

import type { Drive } from '../design/types.ts';
import { interpolateLinear } from '../math/interpolate.ts';
import type { SteppingRate } from './types.ts';

/** Highest screw speed of the motor's curve, rev/s. */
export function highestScrewSpeed(drive: Drive): number {
  return drive.motorCurve[drive.motorCurve.length - 1].speed / drive.gearRatio;
}

/**
 * Torque at the screw that the motor may give continuously.
 * @param screwSpeed rev/s
 * @returns N m; the curve's torque x gear ratio x efficiency x usable share; 0 beyond the curve's last speed
 */
export function usableTorque(drive: Drive, screwSpeed: number): number {
  return pulloutTorque(drive, screwSpeed) * drive.usableTorqueShare;
}

/** Torque at the screw at which the motor stalls, N m; 0 beyond the curve's last speed. */
export function pulloutTorque(drive: Drive, screwSpeed: number): number {
  const speeds = drive.motorCurve.map((point) => point.speed);
  const motorSpeed = screwSpeed * drive.gearRatio;
  if (motorSpeed > speeds[speeds.length - 1] * (1 + 1e-9)) return 0;
  const torques = drive.motorCurve.map((point) => point.torque);
  return interpolateLinear(speeds, torques, motorSpeed) * drive.gearRatio * drive.gearEfficiency;
}

/** The most the motor can put on the screw at any speed, N m (a cold start can apply all of it). */
export function fullTorque(drive: Drive): number {
  return Math.max(...drive.motorCurve.map((point) => point.torque)) * drive.gearRatio * drive.gearEfficiency;
}

/** Motor microsteps in one turn of the screw. */
export function stepsPerScrewTurn(drive: Pick<Drive, 'fullStepsPerTurn' | 'microsteps' | 'gearRatio'>): number {
  return drive.fullStepsPerTurn * drive.microsteps * drive.gearRatio;
}

/**
 * Steps that the motor must make at a screw speed.
 * @param screwSpeed rev/s
 * @returns full steps and microsteps, 1/s. Hybrid motors shake at some rates, often tens of full steps per second
 * (Acarnley, Stepping Motors, chapter 4, shows 20 and 40); where, depends on load and mounting.
 */
export function steppingRate(
  drive: Pick<Drive, 'fullStepsPerTurn' | 'microsteps' | 'gearRatio'>,
  screwSpeed: number,
): SteppingRate {
  const fullSteps = screwSpeed * drive.gearRatio * drive.fullStepsPerTurn;
  return { fullSteps, microsteps: fullSteps * drive.microsteps };
}

/**
 * Torque of a power at a speed, N m.
 * @param power W; @param speed rev/s, > 0
 */
export const torqueOfPower = (power: number, speed: number): number => power / (2 * Math.PI * speed);
