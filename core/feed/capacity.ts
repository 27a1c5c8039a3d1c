/** How much granulate the feed section can take and carry. */

import type { Design } from '../design/types.ts';
import type { Stations } from '../geometry/types.ts';
import { troughFilling } from './conveyor.ts';
import { hopperState } from './hopper.ts';
import { type PlugShape, plugConveying, plugShapeAt } from './plug.ts';

/** Feeding at a screw speed. */
export interface FeedCapacity {
  /** kg/s with nominal friction, and at the ends of the friction range */
  readonly massFlow: number;
  readonly massFlowLow: number;
  readonly massFlowHigh: number;
  /** axial advance per turn over the lead, nominal, 0 to 1 */
  readonly efficiency: number;
  /** true where friction carries no plug and trough filling was taken instead */
  readonly trough: boolean;
  /** kg/s that the screw would take in, nominal, were the hopper fast enough; above massFlow where it is not */
  readonly intake: number;
}

/** Feed geometry where the feed opening ends: all that limits the granules. */
export interface FeedPlace {
  readonly station: number;
  /** deepest square a granule may meet: channel depth and gap between flights, m */
  readonly depth: number;
  readonly gap: number;
  /** free volume per turn, m³ */
  readonly volumePerTurn: number;
  readonly plug: PlugShape;
}

/**
 * The narrowest place under the feed opening.
 * @returns null where no flight runs under the opening
 */
export function feedPlace(design: Design, stations: Stations): FeedPlace | null {
  const { start, length } = design.barrel.feedOpening;
  let at = -1;
  for (let i = 0; i < stations.count; i++) {
    if (stations.z[i] < start - 1e-9 || stations.z[i] > start + length + 1e-9 || !stations.flighted[i]) continue;
    if (at < 0 || stations.depth[i] < stations.depth[at]) at = i;
  }
  if (at < 0) at = nearestFlight(stations, start + length / 2);
  if (at < 0) return null;
  return {
    station: at,
    depth: stations.depth[at],
    gap: stations.widthMean[at] / Math.cos(stations.helixMean[at]),
    volumePerTurn: stations.freeArea[at] * stations.lead[at],
    plug: plugShapeAt(stations, at),
  };
}

/** A flighted station within one lead of the opening's middle, for openings shorter than the station spacing. */
function nearestFlight(stations: Stations, z: number): number {
  let best = -1;
  for (let i = 0; i < stations.count; i++) {
    const distance = Math.abs(stations.z[i] - z);
    if (!stations.flighted[i] || distance > stations.lead[i]) continue;
    if (best < 0 || distance < Math.abs(stations.z[best] - z)) best = i;
  }
  return best;
}

/**
 * Feed capacity of a flooded hopper.
 * @param place from feedPlace; null feeds nothing
 * @param screwSpeed rev/s
 * Free volume per turn x bulk density x speed x conveying efficiency, the latter from the plug model within
 * [trough filling, 1], and at most what hopper and feed opening let through by gravity. Nothing is said of arching: that is a
 * finding.
 */
export function feedCapacity(design: Design, place: FeedPlace | null, screwSpeed: number): FeedCapacity {
  if (!place) return { massFlow: 0, massFlowLow: 0, massFlowHigh: 0, efficiency: 0, trough: false, intake: 0 };
  const { frictionOnBarrel, frictionOnScrew, bulkDensity } = design.material;
  const efficiency = (onBarrel: number, onScrew: number) =>
    plugConveying(place.plug, Math.max(onBarrel, 1e-3), onScrew).efficiency;
  const nominal = efficiency(frictionOnBarrel.value, frictionOnScrew.value);
  // what weighed trials say of this machine's intake, where they were applied
  const factor = design.calibration?.feed.value ?? 1;
  const full = factor * place.volumePerTurn * bulkDensity * screwSpeed;
  const { discharge } = hopperState(design);
  const intake = (share: number) => full * Math.min(1, Math.max(troughFilling, share));
  const bound = (share: number) => Math.min(discharge, intake(share));
  return {
    intake: intake(nominal),
    massFlow: bound(nominal),
    massFlowLow: bound(efficiency(frictionOnBarrel.low, frictionOnScrew.high)),
    massFlowHigh: bound(efficiency(frictionOnBarrel.high, frictionOnScrew.low)),
    efficiency: Math.min(1, Math.max(troughFilling, nominal)),
    trough: nominal < troughFilling,
  };
}
