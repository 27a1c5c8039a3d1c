/** The working point that the drive can hold: the set speed, or the fastest below it. */

import { highestScrewSpeed, usableTorque } from '../drive/motor.ts';
import { bracketedRoot } from '../math/roots.ts';
import type { Machine } from './machine.ts';
import { type WorkingPoint, workingPoint } from './operating.ts';
import { freshMemory, type PumpingMemory } from './pumping.ts';

/** Working point with what holds the speed down, if anything does. */
export interface DrivenPoint {
  readonly point: WorkingPoint;
  readonly heldBy: 'torque' | 'motorSpeed' | null;
  /** torque the set speed would ask for, N m at the screw */
  readonly torqueAtSetSpeed: number;
}

/** Slowest speed that is tried, as a share of the wanted one. */
const slowest = 0.02;

/** Torque of the melt on the screw, N m. */
export const torqueOf = (point: WorkingPoint): number => point.torqueChannel + point.torqueClearance;

/**
 * Finds the working point at the set speed, or slower where motor speed or torque do not reach.
 * @param memory from a neighbouring working point, where there is one
 * Where even a fiftieth of the speed asks for too much torque, that point is given.
 */
export function drivenPoint(machine: Machine, memory: PumpingMemory = freshMemory(machine)): DrivenPoint {
  const { drive, process } = machine.design;
  const highest = highestScrewSpeed(drive);
  const wanted = Math.min(process.screwSpeed, highest);
  const top = workingPoint(machine, wanted, memory);
  const torqueAtSetSpeed = torqueOf(top);
  if (torqueAtSetSpeed <= usableTorque(drive, wanted)) {
    return { point: top, heldBy: wanted < process.screwSpeed ? 'motorSpeed' : null, torqueAtSetSpeed };
  }
  let last = top;
  const excess = (speed: number) => {
    last = workingPoint(machine, speed, last.memory);
    return torqueOf(last) - usableTorque(drive, speed);
  };
  const root = bracketedRoot(excess, slowest * wanted, wanted, { tolerance: 1e-3 * wanted, maxEvaluations: 20 });
  // a hair below the root, so that the torque fits
  const speed = root.converged ? Math.max(slowest * wanted, root.x - 1e-3 * wanted) : slowest * wanted;
  return { point: workingPoint(machine, speed, last.memory), heldBy: 'torque', torqueAtSetSpeed };
}
