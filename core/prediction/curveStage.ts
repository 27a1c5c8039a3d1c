/** Output, pressure and torque over the drive's whole range of speed. */

import { highestScrewSpeed, usableTorque } from '../drive/motor.ts';
import { lineArea } from '../print/bead.ts';
import { wallWalk } from './curveWalls.ts';
import { torqueOf } from './drivenPoint.ts';
import { headPressureOf } from './driveStage.ts';
import type { Machine } from './machine.ts';
import { type WorkingPoint, withMelting, workingPoint } from './operating.ts';
import type { PumpingMemory } from './pumping.ts';
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
 * @param onStep called before each speed; may wait, or throw to give the run up
 * Walls are those of each speed. Torque does not hold the output down here: where it exceeds what the drive has, the
 * drive stalls, and torque is named as the limit.
 */
export function curveStage(machine: Machine, points: number, now: WorkingPoint, onStep?: () => void): CurveResult {
  const { drive, print } = machine.design;
  const highest = highestScrewSpeed(drive);
  const demand = lineArea(print.lineWidth, print.layerHeight) * print.speed;
  const curve = emptyCurve(points);
  let converged = true;
  for (const side of sidesOf(points, now.screwSpeed / highest)) {
    const walk = wallWalk(machine, now);
    const known: PumpingMemory[] = [now.memory];
    side.forEach((i, step) => {
      onStep?.();
      const speed = (highest * (i + 1)) / points;
      let point = now;
      // only one speed's walls are known at first: the first step is taken twice
      for (let pass = step === 0 ? 0 : 1; pass < 2; pass++) {
        const there = walk.ahead(speed);
        point = withMelting(there, workingPoint(there, speed, foreseen(known, speed)), point.limits.melting);
        walk.learn(point);
      }
      if (point.memory.volumeFlow > 0) known.push(point.memory);
      converged &&= point.converged;
      note(curve, i, machine, point, demand);
    });
  }
  return { curve, converged };
}

/** Balance to start from at a speed: straight on from the last two, or the last one where there is no other near by. */
function foreseen(known: readonly PumpingMemory[], screwSpeed: number): PumpingMemory {
  const last = known[known.length - 1];
  const before = known[known.length - 2];
  if (!before || before.screwSpeed === last.screwSpeed) return last;
  const share = (screwSpeed - last.screwSpeed) / (last.screwSpeed - before.screwSpeed);
  const volumeFlow = last.volumeFlow + share * (last.volumeFlow - before.volumeFlow);
  if (!(share > 0 && share < 3 && volumeFlow > 0.3 * last.volumeFlow)) return last;
  const dissipation = last.dissipation.map((value, i) => Math.max(0, value + share * (value - before.dissipation[i])));
  return { ...last, screwSpeed, volumeFlow, dissipation };
}

/** Writes one speed into the curve. */
function note(curve: Filled, i: number, machine: Machine, point: WorkingPoint, demand: number): void {
  const { limits, screwSpeed, volumeFlow } = point;
  const [asked, available] = [torqueOf(point), usableTorque(machine.design.drive, screwSpeed)];
  const turns = asked <= available;
  curve.screwSpeed[i] = screwSpeed;
  curve.volumeFlow[i] = volumeFlow;
  curve.pumping[i] = limits.pumping;
  curve.feed[i] = Math.min(limits.feed, limits.starved);
  curve.melting[i] = limits.melting;
  curve.heater[i] = limits.heater;
  curve.headPressure[i] = headPressureOf(machine, point);
  curve.torque[i] = asked;
  curve.torqueAvailable[i] = available;
  curve.torqueBound[i] = asked > 0 ? (volumeFlow * available) / asked : Number.POSITIVE_INFINITY;
  curve.limit[i] = turns || !(volumeFlow > 0) ? point.limit : 'torque';
  curve.works[i] = turns && !failing.has(point.limit) && volumeFlow >= demand ? 1 : 0;
}

/** A curve while it is filled. */
type Filled = Omit<OutputCurve, 'limit'> & { readonly limit: CapacityKind[] };

function emptyCurve(points: number): Filled {
  const array = () => new Float64Array(points);
  return {
    screwSpeed: array(),
    volumeFlow: array(),
    pumping: array(),
    feed: array(),
    melting: array(),
    heater: array(),
    torqueBound: array(),
    limit: new Array<CapacityKind>(points),
    works: new Uint8Array(points),
    headPressure: array(),
    torque: array(),
    torqueAvailable: array(),
  };
}

/** Limits at which what comes out is lumpy or cold, or nothing comes out: the screw must turn slower. */
const failing: ReadonlySet<CapacityKind> = new Set(['melting', 'heater', 'grainFit'] as const);

/** Indices from the one nearest to the known speed (its share of the highest) upwards, and from below it downwards. */
function sidesOf(points: number, share: number): readonly number[][] {
  if (points === 0) return [];
  const first = Math.min(Math.max(Math.round(share * points) - 1, 0), points - 1);
  return [
    Array.from({ length: points - first }, (_, i) => first + i),
    Array.from({ length: first }, (_, i) => first - 1 - i),
  ];
}
