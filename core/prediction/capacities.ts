/** Every capacity as its own line: what it alone would allow, and how much of it is in reserve. */

import { highestScrewSpeed, usableTorque } from '../drive/motor.ts';
import { largestGrain } from '../feed/arching.ts';
import {
  feedBasis,
  grainBasis,
  heatBasis,
  speedLimitBasis,
  starvedBasis,
  torqueLimitBasis,
  withDoubt,
} from './bases.ts';
import { meltingReportBasis } from './contentBases.ts';
import { type DrivenPoint, torqueOf } from './drivenPoint.ts';
import type { Machine } from './machine.ts';
import type { Basis, Capacity, CapacityKind } from './types.ts';

/**
 * The capacities at the working point, in the order in which the material meets them, and the one that limits.
 * @param pumping what the pumping flow rests on
 */
export function capacitiesOf(
  machine: Machine,
  driven: DrivenPoint,
  pumping: Basis,
): { readonly capacities: readonly Capacity[]; readonly limit: CapacityKind } {
  const { point, heldBy } = driven;
  const output = point.volumeFlow;
  const entry = (kind: CapacityKind, volumeFlow: number, basis: Basis): Capacity => ({
    kind,
    volumeFlow,
    reserve: output > 0 ? volumeFlow / output : volumeFlow > 0 ? Number.POSITIVE_INFINITY : 1,
    basis,
  });
  const { limits, feed } = point;
  const capacities = [
    entry('grainFit', limits.grainFit, withDoubt(grainBasis)),
    entry('feed', limits.feed, withDoubt(feedBasis, feedDoubts(machine, feed.trough))),
    entry('starved', limits.starved, withDoubt(starvedBasis)),
    entry('melting', limits.melting, withDoubt(meltingReportBasis)),
    entry('heater', limits.heater, withDoubt(heatBasis)),
    entry('pumping', limits.pumping, pumping),
    entry('torque', torqueCapacity(machine, driven), withDoubt(torqueLimitBasis, driveDoubts(driven))),
    entry('motorSpeed', speedCapacity(machine, driven), withDoubt(speedLimitBasis, driveDoubts(driven))),
  ];
  // where nothing flows at any speed, that is named and not the drive
  return { capacities, limit: limits[point.limit] > 0 ? (heldBy ?? point.limit) : point.limit };
}

/** Whether something else than the drive lets nothing flow. */
const idle = ({ point }: DrivenPoint): boolean => !(point.limits[point.limit] > 0);

/** What the drive would allow hangs on what flows. */
const driveDoubts = (driven: DrivenPoint): (string | false)[] => [
  idle(driven) && 'Nothing flows for another reason, so it is not known what the drive would allow.',
];

/**
 * Output scaled by the torque in reserve; the output itself where torque holds the speed down; Infinity where nothing
 * flows for another reason.
 */
function torqueCapacity(machine: Machine, driven: DrivenPoint): number {
  const { point, heldBy } = driven;
  if (idle(driven)) return Number.POSITIVE_INFINITY;
  if (heldBy === 'torque') return point.volumeFlow;
  const torque = torqueOf(point);
  const usable = usableTorque(machine.design.drive, point.screwSpeed);
  return torque > 1e-9 ? (point.volumeFlow * usable) / torque : Number.POSITIVE_INFINITY;
}

function speedCapacity(machine: Machine, driven: DrivenPoint): number {
  const { point, heldBy } = driven;
  // where torque stalls the screw, nothing is known of speed
  if (idle(driven) || driven.stalled) return Number.POSITIVE_INFINITY;
  if (heldBy === 'motorSpeed') return point.volumeFlow;
  return (point.volumeFlow * highestScrewSpeed(machine.design.drive)) / point.screwSpeed;
}

/** Doubts about the pumping model in this geometry. */
export function pumpingDoubts(machine: Machine): (string | false)[] {
  const { stations } = machine;
  let deepest = 0;
  let flared = 0;
  for (let i = 0; i < stations.count; i++) {
    if (!stations.flighted[i]) continue;
    deepest = Math.max(deepest, stations.depth[i] / stations.barrelRadius[i]);
    flared = Math.max(flared, stations.flankAngle[i]);
  }
  return [
    deepest > 0.65 && 'The channel is deeper than 0.65 of the bore radius; unrolling it is coarse.',
    flared > 0.35 && 'The flanks lean more than 20 degrees; the section is taken as a rectangle of the mean width.',
  ];
}

function feedDoubts(machine: Machine, trough: boolean): (string | false)[] {
  const { feed, design } = machine;
  return [
    trough &&
      'Friction would carry no plug, or less of one: granules tumble loose, 30 % of a turn, as in a conveyor trough.',
    feed !== null &&
      feed.depth < 1.3 * design.material.grain.d90 &&
      'Granules nearly as large as the channel feed worse than a plug.',
    feed !== null &&
      largestGrain(design.material) > feed.depth &&
      'The longest granules are longer than the channel is deep: they must lie along it.',
  ];
}
