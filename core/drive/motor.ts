/** What motor and gear give at a screw speed, and how finely they step. */

import type { Drive } from '../design/types.ts';
import { interpolateLinear } from '../math/interpolate.ts';

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
 * Corner speed of a stepper: where the winding's current no longer builds up within a step.
 * @param supply V; @param inductance per phase, H; @param current per phase, A; @param stepsPerTurn full steps
 * @returns rev/s, optimistic: V/(2 L I steps), without back-EMF and resistance (engineering calculators)
 */
export function stepperCornerSpeed(supply: number, inductance: number, current: number, stepsPerTurn: number): number {
  return supply / (2 * inductance * current * stepsPerTurn);
}
