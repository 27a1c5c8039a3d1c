/** Output, pressure and torque over the drive's whole range of speed. */

import { highestScrewSpeed, usableTorque } from '../drive/motor.ts';
import { torqueOf } from './drivenPoint.ts';
import { headPressureOf } from './driveStage.ts';
import type { Machine } from './machine.ts';
import { workingPoint } from './operating.ts';
import type { PumpingMemory } from './pumping.ts';
import type { OutputCurve } from './types.ts';

/** A curve with the convergence of its worst point. */
export interface CurveResult {
  readonly curve: OutputCurve;
  readonly converged: boolean;
}

/**
 * Runs the working point over speed.
 * @param points number of speeds, evenly up to the drive's highest; 0 gives empty arrays
 * @param memory of the working point at the set speed
 * Torque does not hold the output down here: where it exceeds what the drive has, the drive stalls.
 */
export function curveStage(machine: Machine, points: number, memory: PumpingMemory): CurveResult {
  const { drive } = machine.design;
  const highest = highestScrewSpeed(drive);
  const arrays = () => new Float64Array(points);
  const curve = {
    screwSpeed: arrays(),
    volumeFlow: arrays(),
    pumping: arrays(),
    feed: arrays(),
    headPressure: arrays(),
    torque: arrays(),
    torqueAvailable: arrays(),
  };
  let converged = true;
  let known = memory;
  for (const i of outward(points, memory.screwSpeed / highest)) {
    const speed = (highest * (i + 1)) / points;
    const point = workingPoint(machine, speed, known);
    known = point.memory.volumeFlow > 0 ? point.memory : memory;
    converged &&= point.converged;
    curve.screwSpeed[i] = speed;
    curve.volumeFlow[i] = point.volumeFlow;
    curve.pumping[i] = point.limits.pumping;
    curve.feed[i] = Math.min(point.limits.feed, point.limits.starved);
    curve.headPressure[i] = headPressureOf(machine, point);
    curve.torque[i] = torqueOf(point);
    curve.torqueAvailable[i] = usableTorque(drive, speed);
  }
  return { curve, converged };
}

/** Indices from the known speed upwards, then from it downwards is not needed: small steps up from the nearest one. */
function outward(points: number, share: number): number[] {
  const first = Math.min(Math.max(Math.round(share * points) - 1, 0), Math.max(points - 1, 0));
  const up = Array.from({ length: Math.max(points - first, 0) }, (_, i) => first + i);
  const down = Array.from({ length: first }, (_, i) => first - 1 - i);
  return points > 0 ? [...up, ...down] : [];
}
