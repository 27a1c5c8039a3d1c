/** The working point that the drive can hold: the set speed, or the fastest below it. */

import { highestScrewSpeed, usableTorque } from '../drive/motor.ts';
import { bracketedRoot } from '../math/roots.ts';
import type { Machine } from './machine.ts';
import { stalledPoint, type WorkingPoint, workingPoint } from './operating.ts';
import { freshMemory, type PumpingMemory } from './pumping.ts';

/** Working point with what holds the speed down, if anything does. */
export interface DrivenPoint {
  readonly point: WorkingPoint;
  readonly heldBy: 'torque' | 'motorSpeed' | null;
  /** torque the set speed would ask for, N m at the screw */
  readonly torqueAtSetSpeed: number;
  /** the drive cannot turn the screw: nothing flows, and `point` tells of the slowest speed that was tried */
  readonly stalled: boolean;
}

/** Slowest speed that is tried, as a share of the wanted one and of the drive's highest. */
const slowest = { ofWanted: 0.02, ofHighest: 0.005 } as const;

/** Speed is found to this share of itself, and then held this share lower, so that the torque fits. */
const speedTolerance = 1e-3;

/** Torque of granules and melt on the screw, N m. */
export const torqueOf = (point: WorkingPoint): number =>
  point.torqueChannel + point.torqueClearance + point.torqueSolids;

/**
 * Finds the working point at the set speed, or slower where motor speed or torque do not reach.
 * @param memory from a neighbouring working point, where there is one
 * Where even the slowest speed that is tried asks for too much torque, the drive is stalled.
 */
export function drivenPoint(machine: Machine, memory: PumpingMemory = freshMemory(machine)): DrivenPoint {
  const { drive, process } = machine.design;
  const highest = highestScrewSpeed(drive);
  const wanted = Math.min(process.screwSpeed, highest);
  const top = workingPoint(machine, wanted, memory);
  const torqueAtSetSpeed = torqueOf(top);
  if (torqueAtSetSpeed <= usableTorque(drive, wanted)) {
    const heldBy = wanted < process.screwSpeed ? 'motorSpeed' : null;
    return { point: top, heldBy, torqueAtSetSpeed, stalled: false };
  }
  let last = top;
  const excess = (logSpeed: number) => {
    const speed = Math.exp(logSpeed);
    last = workingPoint(machine, speed, last.memory);
    return torqueOf(last) - usableTorque(drive, speed);
  };
  const least = Math.min(slowest.ofWanted * wanted, slowest.ofHighest * highest);
  if (excess(Math.log(least)) > 0) {
    return { point: stalledPoint(machine, last), heldBy: 'torque', torqueAtSetSpeed, stalled: true };
  }
  const root = bracketedRoot(excess, Math.log(least), Math.log(wanted), {
    tolerance: speedTolerance,
    maxEvaluations: 30,
  });
  const point = workingPoint(machine, Math.max(least, (1 - speedTolerance) * Math.exp(root.x)), last.memory);
  const converged = point.converged && root.converged;
  return { point: { ...point, converged }, heldBy: 'torque', torqueAtSetSpeed, stalled: false };
}
