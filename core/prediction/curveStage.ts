/** Output, pressure and torque over the drive's whole range of speed. */

import { highestScrewSpeed, usableTorque } from '../drive/motor.ts';
import { lineArea } from '../print/bead.ts';
import { machineOverSpeed } from './curveWalls.ts';
import { torqueOf } from './drivenPoint.ts';
import { headPressureOf } from './driveStage.ts';
import type { Machine } from './machine.ts';
import { type WorkingPoint, workingPoint } from './operating.ts';
import type { CapacityKind, OutputCurve } from './types.ts';

/** A curve with the convergence of its worst point. */
export interface CurveResult {
  readonly curve: OutputCurve;
  readonly converged: boolean;
}

/**
 * Runs the working point over speed.
 * @param points number of speeds, evenly up to the drive's highest; 0 gives empty arrays
 * @param now working point at the set speed
 * Walls are those of each speed. Torque does not hold the output down here: where it exceeds what the drive has, the
 * drive stalls, and torque is named as the limit.
 */
export function curveStage(machine: Machine, points: number, now: WorkingPoint): CurveResult {
  const { drive, print } = machine.design;
  const { memory } = now;
  const highest = highestScrewSpeed(drive);
  const machineAt = points > 0 ? machineOverSpeed(machine, now, highest) : () => machine;
  const demand = lineArea(print.lineWidth, print.layerHeight) * print.speed;
  const arrays = () => new Float64Array(points);
  const curve = {
    screwSpeed: arrays(),
    volumeFlow: arrays(),
    pumping: arrays(),
    feed: arrays(),
    melting: arrays(),
    heater: arrays(),
    torqueBound: arrays(),
    limit: new Array<CapacityKind>(points),
    works: new Uint8Array(points),
    headPressure: arrays(),
    torque: arrays(),
    torqueAvailable: arrays(),
  };
  let converged = true;
  let known = memory;
  for (const i of outward(points, memory.screwSpeed / highest)) {
    const speed = (highest * (i + 1)) / points;
    const there = machineAt(speed);
    const point = workingPoint(there, speed, known);
    known = point.memory.volumeFlow > 0 ? point.memory : memory;
    converged &&= point.converged;
    curve.screwSpeed[i] = speed;
    curve.volumeFlow[i] = point.volumeFlow;
    curve.pumping[i] = point.limits.pumping;
    curve.feed[i] = Math.min(point.limits.feed, point.limits.starved);
    curve.melting[i] = point.limits.melting;
    curve.heater[i] = point.limits.heater;
    curve.headPressure[i] = headPressureOf(there, point);
    const [asked, available] = [torqueOf(point), usableTorque(drive, speed)];
    curve.torque[i] = asked;
    curve.torqueAvailable[i] = available;
    curve.torqueBound[i] = asked > 0 ? (point.volumeFlow * available) / asked : Number.POSITIVE_INFINITY;
    const turns = asked <= available;
    curve.limit[i] = turns || !(point.volumeFlow > 0) ? point.limit : 'torque';
    curve.works[i] = turns && !failing.has(point.limit) && point.volumeFlow >= demand ? 1 : 0;
  }
  return { curve, converged };
}

/** Limits at which what comes out is lumpy or cold, or nothing comes out: the screw must turn slower. */
const failing: ReadonlySet<CapacityKind> = new Set(['melting', 'heater', 'grainFit'] as const);

/** Indices from the known speed upwards, then from it downwards is not needed: small steps up from the nearest one. */
function outward(points: number, share: number): number[] {
  const first = Math.min(Math.max(Math.round(share * points) - 1, 0), Math.max(points - 1, 0));
  const up = Array.from({ length: Math.max(points - first, 0) }, (_, i) => first + i);
  const down = Array.from({ length: first }, (_, i) => first - 1 - i);
  return points > 0 ? [...up, ...down] : [];
}
